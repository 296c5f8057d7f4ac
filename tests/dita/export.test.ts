import { parseXml, XmlElement } from '@rgrove/parse-xml';
import { describe, expect, test } from 'vitest';
import { type DitaFile, ditaFiles } from '../../src/dita/index.ts';
import { makeBook } from '../../src/render/index.ts';
import type { Inspection } from '../../src/report/index.ts';
import { checked, type ManualName, manualFrom } from '../manuals/manual-from.ts';
import { elementsOf, ownText, withClass } from '../render/html-tree.ts';
import { check, onePage } from '../support/manual.ts';
import { faultsOf } from './content-model.ts';

function exported({ linked, report }: Inspection, draft = false) {
  const book = makeBook(linked, report, { draft });
  return { book, files: ditaFiles(linked, book) };
}

function rootOf({ path, content }: DitaFile): XmlElement {
  const { root } = parseXml(content);
  if (root === null) throw new Error(`${path} has no root`);
  return root;
}

function* elementsIn(element: XmlElement): Generator<XmlElement> {
  yield element;
  for (const child of element.children) if (child instanceof XmlElement) yield* elementsIn(child);
}

const named = (root: XmlElement, name: string): XmlElement[] =>
  [...elementsIn(root)].filter((element) => element.name === name);

const flat = (element: XmlElement): string => element.text.replace(/\s+/g, ' ').trim();

const names: readonly ManualName[] = ['demo', 'lathe', 'hand-pump'];

describe.each(names)('the manual %s', async (name) => {
  const { book, files } = exported(checked(await manualFrom(name)));
  const roots = new Map(files.map((file) => [file.path, rootOf(file)]));

  test('is well-formed, and keeps to the content models of DITA 1.3', () => {
    expect(files.length).toBeGreaterThan(3);
    const faults = [...roots].flatMap(([path, root]) =>
      faultsOf(root).map((fault) => `${path}: ${fault}`),
    );
    expect(faults).toEqual([]);
  });

  test('has every procedure in its map, once, and nothing that is not there', () => {
    const map = roots.get('manual.ditamap');
    const listed =
      map === undefined ? [] : named(map, 'topicref').map((ref) => ref.attributes.href);
    const topics = files.map(({ path }) => path).filter((path) => path !== 'manual.ditamap');
    expect(listed.toSorted()).toEqual(topics.toSorted());
    for (const { id } of book.sheets) expect(listed).toContain(`procedures/${id}.dita`);
  });

  test('has ids that are unique in their topics, and links that lead to one', () => {
    const ids = new Map<string, string[]>();
    for (const [path, root] of roots)
      ids.set(
        path,
        [...elementsIn(root)].flatMap(({ attributes }) => attributes.id ?? []),
      );
    for (const [path, all] of ids) expect(new Set(all).size, path).toBe(all.length);
    const pictures = new Set(book.figures.map(({ to }) => to));
    const broken = [...roots].flatMap(([path, root]) =>
      [...named(root, 'xref'), ...named(root, 'image')]
        .filter(({ attributes }) => attributes.scope !== 'external')
        .map(({ attributes }) => attributes.href ?? '')
        .filter((href) => !leads(href, path, ids, pictures))
        .map((href) => `${path}: ${href}`),
    );
    expect(broken).toEqual([]);
  });

  test('has the steps of its sheets with their numbers, and every hazard panel of them', () => {
    for (const { id, bodyHtml } of book.sheets) {
      const root = roots.get(`procedures/${id}.dita`);
      if (root === undefined) throw new Error(`no ${id}`);
      const steps = [...elementsIn(root)].flatMap(({ attributes }) => attributes.id ?? []);
      const own = ownText(elementsOf(bodyHtml));
      const shown = own.flatMap(({ attributes }) =>
        attributes['data-step'] === undefined ? [] : [attributes.id],
      );
      expect(
        steps.filter((step) => step.startsWith('step-')),
        id,
      ).toEqual(shown);
      const panels = withClass(own, 'hazard').length;
      expect(named(root, 'hazardstatement').length, id).toBe(panels);
      const list = named(root, 'steps')[0]?.children ?? [];
      const ranks = list.flatMap((step) =>
        step instanceof XmlElement && step.name === 'step' ? [step.attributes.id] : [],
      );
      expect(ranks, id).toEqual(ranks.map((_, i) => `step-${i + 1}`));
    }
  });

  test('has every torque that its sheets print', () => {
    for (const { id, torques } of book.sheets) {
      const root = roots.get(`procedures/${id}.dita`);
      const said = root === undefined ? '' : flat(root);
      const performed = book.sheets.find((sheet) => sheet.id === id)?.performs.length ?? 0;
      if (performed > 0) continue;
      for (const stage of torques.flatMap(({ stages }) => stages))
        expect(said, id).toContain(stage.replace(/\s+/g, ' '));
    }
  });
});

test('the same manual gives the same bytes, in whatever order its files come', async () => {
  const files = await manualFrom('lathe');
  const turned = { ...files, texts: files.texts.toReversed(), others: files.others.toReversed() };
  expect(exported(checked(turned)).files).toEqual(exported(checked(files)).files);
});

const items = 'parts:\n  belt: { name: belt }\n  cover: { name: cover }';

function taskOf(body: string, draft = false, manual = 'title: T\n'): XmlElement {
  const texts = { 'manual.yaml': manual, 'procedures/example.md': onePage(items, body) };
  const { files } = exported(check(texts), draft);
  const file = files.find(({ path }) => path === 'procedures/example.dita');
  if (file === undefined) throw new Error('no task');
  expect(faultsOf(rootOf(file))).toEqual([]);
  return rootOf(file);
}

describe('a task', () => {
  test('counts its steps through conditions, which are told before and ended after', () => {
    const root = taskOf(
      [
        '1. First.\n\n:::if[the belt is cracked]\n1. :replace{item=belt}.\n:::\n',
        '1. Third.\n\n:::when[winch]\n1. Fourth.\n:::\n\nThe end.\n',
      ].join('\n'),
      false,
      'title: T\nvariants: { winch: [no, yes] }\n',
    );
    const [steps] = named(root, 'steps');
    const parts = (steps?.children ?? []).filter((child) => child instanceof XmlElement);
    expect(parts.map((child) => [child.name, flat(child)])).toEqual([
      ['step', 'First.'],
      ['stepsection', 'If the belt is cracked:'],
      ['step', expect.stringMatching(/^Replace the belt\./)],
      ['stepsection', 'In any case:'],
      ['step', 'Third.'],
      ['stepsection', 'Only for winch:'],
      ['step', 'Fourth.'],
    ]);
    expect(parts.map(({ attributes }) => attributes.product)).toEqual([
      ...Array(6).fill(undefined),
      'winch(yes)',
    ]);
    expect(named(root, 'result').map(flat)).toEqual(['In any case: The end.']);
  });

  test('has substeps, choices in a step, and steps in a choice as a list', () => {
    const root = taskOf(
      [
        '1. Look at the belt.',
        '   1. Turn it.',
        '   2. Feel it.',
        '',
        '   :::either[it is cracked]',
        '   1. :remove{item=cover}.',
        '   :::',
        '   :::or[it is sound]',
        '   Leave it.',
        '   :::',
      ].join('\n'),
    );
    const [step] = named(root, 'step');
    const inside = (step?.children ?? []).filter((child) => child instanceof XmlElement);
    expect(inside.map((child) => child.name)).toEqual(['cmd', 'substeps', 'choices']);
    expect(named(root, 'substep').map(({ attributes }) => attributes.id)).toEqual([
      'step-1.1',
      'step-1.2',
    ]);
    expect(named(root, 'choice').map(flat)).toEqual([
      'Either, if it is cracked: Remove the cover.',
      'Or, if it is sound: Leave it.',
    ]);
  });

  test('has a safety message in the three parts of ANSI Z535.6, right before its command', () => {
    const root = taskOf(
      ':::danger{hazard="The belt can start" harm="Lost fingers"}\nLock it out:\n\n* the key\n* the *valve*\n:::\n\n1. Go.\n',
    );
    const [statement] = named(root, 'hazardstatement');
    expect(statement?.attributes.type).toBe('danger');
    expect(statement?.parent).toBe(named(root, 'step')[0]);
    expect(named(root, 'typeofhazard').map(flat)).toEqual(['The belt can start']);
    expect(named(root, 'consequence').map(flat)).toEqual(['Lost fingers']);
    expect(named(root, 'howtoavoid').map(flat)).toEqual(['Lock it out:the keythe valve']);
    expect(named(root, 'sli').map(flat)).toEqual(['the key', 'the valve']);
  });

  test('has what Markdown has: emphasis, code, quotations, tables, lists, links', () => {
    const root = taskOf(
      [
        '1. Do *this* and **that**, not ~~those~~, at `P1`.',
        '',
        '   > Once\n   >\n   > > twice',
        '',
        '   | a | b |\n   |---|---|\n   | 1 | [2](https://x.example/) |',
        '',
        '   ```\n   x  <  y\n   ```',
      ].join('\n'),
    );
    expect(named(root, 'cmd').map(flat)).toEqual(['Do this and that, not those, at P1.']);
    for (const name of ['i', 'b', 'line-through', 'codeph', 'lq', 'thead', 'pre', 'xref'])
      expect(named(root, name).length, name).toBeGreaterThan(0);
    expect(named(root, 'pre')[0]?.text).toBe('x  <  y\n');
    expect(named(root, 'xref').at(-1)?.attributes).toMatchObject({
      href: 'https://x.example/',
      scope: 'external',
    });
  });

  test('of a draft says so before anything else', () => {
    const [prereq] = named(taskOf('1. Go.\n', true), 'prereq');
    const first = prereq?.children.find((child) => child instanceof XmlElement);
    expect(first instanceof XmlElement && flat(first)).toBe('Draft, not for work.');
  });
});

describe('a condition as an attribute', () => {
  const manual = 'title: T\nvariants: { feed: [hydraulic, manual, none], winch: [no, yes] }\n';
  // OASIS DITA 1.3, "Conditional processing values and groups": values of a group are alternatives, all groups must hold.
  test.each([
    ['winch', 'winch(yes)'],
    ['!winch', 'winch(no)'],
    ['feed = hydraulic & winch', 'feed(hydraulic) winch(yes)'],
    ['feed != none', 'feed(hydraulic manual)'],
    ['feed = manual | feed = none', 'feed(manual none)'],
    // No attribute can say this, so the step stays, with its words.
    ['feed = manual | winch', undefined],
  ])('%s is %s', (when, product) => {
    const root = taskOf(`1. Go.\n   ::step{when="${when}"}\n`, false, manual);
    const [step] = named(root, 'step');
    expect(step?.attributes.product).toBe(product);
    expect(named(root, 'cmd').map(flat)[0]).toMatch(/^Only for .*: Go\.$/);
  });
});

describe('text that means harm', () => {
  const attack = '</cmd>]]><!-- <script>&x; "\' \u202eabc 🔧 \u0001\u001b\ufffe';
  const safe = '</cmd>]]><!-- <script>&x; "\' \u202eabc 🔧 \ufffd\ufffd\ufffd';

  test('stays text, and what XML cannot have becomes the sign for that', () => {
    const quoted = JSON.stringify(attack);
    const page = `---\nprocedure: p\ntitle: ${quoted}\nsummary: ${quoted}\nitems:\n  parts:\n    pad: { name: ${quoted}, part-number: ${quoted}, single-use: true }\n---\n\n1. Say \`${attack}\`. :install{item=pad new}.\n`;
    const files = exported(
      check({
        'manual.yaml': `title: ${quoted}\npublisher: ${quoted}\nsafety: ${quoted}\n`,
        'procedures/p.md': page,
      }),
    ).files;
    for (const file of files) expect(faultsOf(rootOf(file)), file.path).toEqual([]);
    const texts = files.flatMap((file) => [
      ...named(rootOf(file), 'title'),
      ...named(rootOf(file), 'shortdesc'),
      ...named(rootOf(file), 'publisher'),
    ]);
    expect(texts.filter((one) => one.text === safe).length).toBeGreaterThanOrEqual(4);
    const code = files.flatMap((file) => named(rootOf(file), 'codeph').map(({ text }) => text));
    expect(code).toEqual([safe]);
  });
});

/** Whether a link of a topic leads to a topic, an element with that id, or a picture. */
function leads(
  href: string,
  from: string,
  ids: ReadonlyMap<string, readonly string[]>,
  pictures: ReadonlySet<string>,
): boolean {
  const { pathname, hash } = new URL(href, `https://x.example/${from}`);
  const path = decodeURIComponent(pathname.slice(1));
  const found = ids.get(path);
  if (found === undefined) return pictures.has(path);
  const [topic, element] = decodeURIComponent(hash.slice(1)).split('/');
  if (!topic) return true;
  return found[0] === topic && (element === undefined || found.includes(element));
}

test('the check of the content models finds what DITA does not have', () => {
  const wrong = parseXml(
    '<task><title>x</title><taskbody><steps><step><info/><cmd><p/></cmd></step>x</steps><prereq/></taskbody></task>',
  ).root;
  expect(wrong === null ? [] : faultsOf(wrong)).toEqual([
    'taskbody may not hold steps prereq',
    'steps may not hold text',
    'step may not hold info cmd',
    'cmd may not hold p',
  ]);
});
