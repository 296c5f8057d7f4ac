import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import {
  CompletionRequest,
  DefinitionRequest,
  type DocumentSymbol,
  DocumentSymbolRequest,
  FoldingRangeRequest,
  HoverRequest,
  InlayHintRequest,
  type Location,
  ReferencesRequest,
} from 'vscode-languageserver/node';
import { demoCopy, EditorClient, removeCopy } from './editor-client.ts';

const folder = demoCopy();
const client = new EditorClient();
let anvil = '';
let catalogue = '';
let manual = '';

beforeAll(async () => {
  await client.start();
  anvil = await client.open(join(folder, 'procedures/cutting/replace-anvil.md'));
  catalogue = await client.open(join(folder, 'machines/brush-chipper.yaml'));
  manual = await client.open(join(folder, 'manual.yaml'));
});
afterAll(async () => {
  expect(client.logged).toEqual([]);
  await client.stop();
  removeCopy(folder);
});

async function hover(uri: string, found: string, behind: number): Promise<string> {
  const answer = await client.connection.sendRequest(HoverRequest.type, {
    textDocument: { uri },
    position: client.at(uri, found, behind),
  });
  const contents = answer?.contents ?? '';
  return typeof contents === 'object' && 'value' in contents ? contents.value : '';
}

async function completions(uri: string, found: string, behind: number) {
  const answer = await client.connection.sendRequest(CompletionRequest.type, {
    textDocument: { uri },
    position: client.at(uri, found, behind),
  });
  const items = Array.isArray(answer) ? answer : (answer?.items ?? []);
  return items.toSorted((a, b) => ((a.sortText ?? '') < (b.sortText ?? '') ? -1 : 1));
}

/** What is proposed for a line that is typed at the end of the removal, and taken out again. */
async function typed(line: string) {
  const before = '\n## Inspection';
  await client.replace(anvil, before, `\n10. ${line}\n${before}`);
  const found = await completions(anvil, `10. ${line}`, 4 + line.length);
  await client.replace(anvil, `\n10. ${line}\n${before}`, before);
  return found;
}
const labels = (found: readonly { label: string }[]): string[] => found.map(({ label }) => label);

async function definition(
  uri: string,
  found: string,
  behind: number,
): Promise<readonly Location[]> {
  const answer = await client.connection.sendRequest(DefinitionRequest.type, {
    textDocument: { uri },
    position: client.at(uri, found, behind),
  });
  if (!Array.isArray(answer)) return [];
  return answer.flatMap((one) => ('uri' in one ? [one] : []));
}

const references = async (uri: string, found: string, behind: number, includeDeclaration = true) =>
  (await client.connection.sendRequest(ReferencesRequest.type, {
    textDocument: { uri },
    position: client.at(uri, found, behind),
    context: { includeDeclaration },
  })) ?? [];

describe('hover', () => {
  test('an item: what the catalogue has, both units, where it stands before and after, where used', async () => {
    const text = await hover(anvil, 'anvil-bolt qty=6', 2);
    expect(text).toContain('**anvil bolt**');
    expect(text).toContain('8 pieces · M16 · class 10.9 · part number 26-3120');
    // 220 N·m × 0.737562 lbf·ft/N·m = 162.3 lbf·ft (NIST SP 811, appendix B.8).
    expect(text.replaceAll('\u00a0', ' ')).toContain('220 N·m (162 lbf·ft)');
    expect(text).toContain('Before this: all 8 tight');
    expect(text).toContain('After it: 2 of 8 tight, 6 of 8 out');
    expect(text).toContain('Replace the anvil (remove, install, torque)');
  });

  test('an entry of the catalogue', async () => {
    expect(await hover(catalogue, '  anvil-bolt:', 4)).toContain('Used in Replace the anvil');
  });

  test('a directive, a step, a procedure, a section, a variant', async () => {
    expect(await hover(anvil, ':withdraw', 3)).toMatch(/takes the aid away.*After it: both away/s);
    const step = await hover(anvil, '8. ::hazard', 1);
    expect(step).toMatch(/Before this step:.*anvil bolt: all 8 out.*After it:.*anvil: out/s);
    expect(await hover(anvil, 'procedure=make-safe', 12)).toContain('(procedure `make-safe`)');
    expect(await hover(anvil, '## Inspection', 5)).toContain('section `inspection`');
    expect(await hover(manual, 'winch & brakes', 2)).toContain('**infeed winch**');
  });

  test('a condition: for how many machines it holds', async () => {
    await client.replace(anvil, 'needs=studs-in time', 'needs=studs-in when="winch" time');
    const text = await hover(anvil, 'when="winch"', 7);
    // 2 × 2 × 2 combinations without the 2 that have a winch and no brakes; 2 of the 6 have the winch.
    expect(text).toContain('2 of 6 machines');
    await client.replace(anvil, ' when="winch"', '');
  });

  test('a rule', async () => {
    const waiver = '\n:::waive{rule=left-out}\nBecause.\n:::\n';
    await client.replace(anvil, '\n## Inspection', `${waiver}\n## Inspection`);
    expect(await hover(anvil, 'rule=left-out', 8)).toContain('## Bad');
    await client.replace(anvil, waiver, '');
  });
});

describe('completion', () => {
  test('names of directives by their colons', async () => {
    expect(labels(await typed(':rem'))).toEqual(
      expect.arrayContaining(['remove', 'torque', 'set-aside']),
    );
    expect(labels(await typed(':rem'))).not.toContain('perform');
    const lines = labels(await typed('::per'));
    expect(lines).toContain('perform');
    expect(lines).not.toContain('remove');
    expect(labels(await typed(':::'))).toEqual(
      expect.arrayContaining(['danger', 'when', 'either']),
    );
  });

  test('attributes that are not there yet, the needed ones first', async () => {
    const found = labels(await typed(':remove{qty=2 '));
    expect(found[0]).toBe('item');
    expect(found).not.toContain('qty');
    expect(labels(await typed('::step{'))).toEqual(
      expect.arrayContaining(['id', 'people', 'needs']),
    );
  });

  test('items that the verb can be said of, with their state here, those that can move first', async () => {
    const found = await typed(':install{item=anv');
    const bolt = found.find(({ label }) => label === 'anvil-bolt');
    expect(bolt?.detail).toBe('anvil bolt: all 8 out');
    const tight = found.findIndex(({ detail }) => detail?.endsWith('all 6 tight'));
    expect(labels(found).indexOf('anvil-bolt')).toBeLessThan(tight);
    expect(labels(found)).not.toContain('torque-wrench-large');
    const partly = await completions(anvil, 'anvil-bolt qty=1}.\n5.', 0);
    expect(partly.find(({ label }) => label === 'anvil-bolt')?.detail).toBe(
      'anvil bolt: 2 of 8 tight, 6 of 8 out',
    );
  });

  test('procedures, their sections, steps, tools, rules, units, variants', async () => {
    expect(labels(await typed('::perform{procedure='))).toContain('open-drum-hood');
    expect(labels(await typed('::perform{procedure=replace-anvil part='))).toContain(
      'installation',
    );
    expect(labels(await typed('::reverse{of='))).toContain('removal');
    expect(labels(await typed('::step{needs='))).toEqual(['studs-in']);
    expect(labels(await typed(':measure{item=anvil-seat with="straightedge f'))).toContain(
      'feeler-gauge',
    );
    expect(labels(await typed(':::waive{rule='))).toContain('left-out');
    expect((await typed(':torque{item=anvil-bolt value="220 '))[0]?.label).toBe('N·m');
    expect(labels(await typed(':drain{item=coolant amount="2 '))[0]).toBe('L');
    expect(labels(await typed(':remove{item=anvil when="'))).toEqual(
      expect.arrayContaining(['winch', 'brakes', 'air-cleaner']),
    );
    expect(labels(await typed(':remove{item=anvil when="brakes = '))).toEqual(['overrun', 'none']);
    expect(labels(await typed(':::when[brakes != '))).toEqual(['overrun', 'none']);
  });

  test('a value that needs quotation marks gets them', async () => {
    const [first] = await typed(':torque{item=anvil-bolt value=220');
    expect(first?.textEdit && 'newText' in first.textEdit && first.textEdit.newText).toBe(
      '"220 N·m"',
    );
  });

  test('front matter: keys, machines, procedures; states of an item', async () => {
    expect(labels(await completions(anvil, 'machine: brush', 9))).toContain('brush-chipper');
    expect(labels(await completions(anvil, '[set-anvil-gap]', 3))).toContain('open-drum-hood');
    await client.replace(anvil, 'people: 2\n', 'people: 2\nleaves:\n  anvil-bolt: \nint\n');
    expect(labels(await completions(anvil, 'anvil-bolt: \n', 12))).toEqual(
      expect.arrayContaining(['tight', 'out']),
    );
    const keys = labels(await completions(anvil, '\nint\n', 4));
    expect(keys).toContain('interval');
    expect(keys).not.toContain('people');
    await client.replace(anvil, 'leaves:\n  anvil-bolt: \nint\n', '');
  });

  test('the catalogue: keys of an entry, listed values, ids of entries', async () => {
    await client.replace(
      catalogue,
      '  anvil-bolt:\n',
      '  new-bolt:\n    ti\n    tightness: \n    holds: \n  anvil-bolt:\n',
    );
    const keys = labels(await completions(catalogue, '    ti\n', 6));
    expect(keys).toEqual(expect.arrayContaining(['thread', 'torque', 'name']));
    expect(keys).not.toContain('tightness');
    expect(labels(await completions(catalogue, 'tightness: \n    holds', 11))).toEqual([
      'hand-tight',
      'snug',
      'until-drag',
    ]);
    expect(labels(await completions(catalogue, '    holds: \n  anvil', 11))).toContain('anvil');
    await client.replace(catalogue, '  new-bolt:\n    ti\n    tightness: \n    holds: \n', '');
  });
});

describe('definition and references', () => {
  test('an item: from Markdown to YAML, and every place back', async () => {
    const [found, ...others] = await definition(anvil, 'anvil-bolt qty=6', 3);
    expect(others).toEqual([]);
    expect(found?.uri).toBe(catalogue);
    expect(found && client.slice(catalogue, found.range)).toBe('anvil-bolt');
    const all = await references(catalogue, '  anvil-bolt:', 4);
    const files = new Set(all.map(({ uri }) => uri.replace(/.*\//, '')));
    expect([...files]).toEqual(['brush-chipper.yaml', 'replace-anvil.md', 'set-anvil-gap.md']);
    expect(await references(catalogue, '  anvil-bolt:', 4, false)).toHaveLength(all.length - 1);
  });

  test('procedures by id, in front matter and by link; steps; hazards; machines; variants', async () => {
    const name = async (found: string, behind: number) =>
      (await definition(anvil, found, behind)).map(({ uri }) => uri.replace(/.*\//, ''));
    expect(await name('procedure=make-safe', 12)).toEqual(['make-safe.md']);
    expect(await name('[set-anvil-gap]', 3)).toEqual(['set-anvil-gap.md']);
    expect(await name('(set-anvil-gap.md)', 3)).toEqual(['set-anvil-gap.md']);
    const [step] = await definition(anvil, 'needs=studs-in', 8);
    expect(step && client.slice(anvil, step.range)).toBe('studs-in');
    expect(await name('of=anvil-drops', 5)).toEqual(['brush-chipper.yaml']);
    expect(await name('machine: brush', 10)).toEqual(['brush-chipper.yaml']);
    const [variant] = await definition(manual, 'winch & brakes', 1);
    expect(variant && client.slice(manual, variant.range)).toBe('winch');
    expect(variant?.range.start).toEqual(client.at(manual, 'winch: {'));
    const [value] = await definition(manual, 'brakes = none', 10);
    expect(value?.range.start).toEqual(client.at(manual, 'none]'));
  });
});

test('document symbols: sections with their steps; entries of the catalogue', async () => {
  const symbols = async (uri: string): Promise<DocumentSymbol[]> => {
    const found = await client.connection.sendRequest(DocumentSymbolRequest.type, {
      textDocument: { uri },
    });
    return (found ?? []).flatMap((one) => ('selectionRange' in one ? [one] : []));
  };
  const sections = await symbols(anvil);
  expect(sections.map(({ name }) => name)).toEqual([
    'start',
    'Preparation',
    'Removal',
    'Inspection',
    'Installation',
    'Completion',
  ]);
  const removal = sections[2]?.children?.map(({ name }) => name) ?? [];
  expect(removal).toHaveLength(9);
  expect(removal[1]).toBe('2. Take off the access cover.');
  expect(removal[7]).toMatch(/^8\. Turn both hand nuts down/);
  const kinds = await symbols(catalogue);
  expect(kinds.map(({ name }) => name)).toContain('fastener');
  expect(kinds.flatMap(({ children }) => children ?? []).map(({ name }) => name)).toContain(
    'anvil-bolt',
  );
});

test('folding: front matter, sections, steps, blocks', async () => {
  const found =
    (await client.connection.sendRequest(FoldingRangeRequest.type, {
      textDocument: { uri: anvil },
    })) ?? [];
  const line = (text: string): number => client.at(anvil, text).line;
  const folds = found.map(({ startLine, endLine }) => [startLine, endLine]);
  expect(folds).toContainEqual([0, line('\nThe anvil leaves') - 1 + 0]);
  expect(folds).toContainEqual([line('## Removal'), line('9. :discard')]);
  expect(folds).toContainEqual([line('8. ::hazard'), line('::step{people=2 needs')]);
  expect(folds).toContainEqual([line(':::torque{'), line(':::torque{') + 1]);
});

test('inlay hints: what is still out at the end of each section', async () => {
  const found =
    (await client.connection.sendRequest(InlayHintRequest.type, {
      textDocument: { uri: anvil },
      range: { start: { line: 0, character: 0 }, end: { line: 10_000, character: 0 } },
    })) ?? [];
  expect(found.map(({ position }) => position.line)).toEqual([
    client.at(anvil, '2. ::perform{procedure=open').line,
    client.at(anvil, '9. :discard').line,
    client.at(anvil, '3. :measure').line,
    client.at(anvil, '9. :torque').line,
    client.at(anvil, '3. Before the machine').line,
  ]);
  const [, removal, , , completion] = found.map(({ label }) => label);
  expect(removal).toMatch(/^still .*8 anvil bolts/);
  expect(completion).toBe('everything home');
});
