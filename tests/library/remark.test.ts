import rehypeStringify from 'rehype-stringify';
import remarkFrontmatter from 'remark-frontmatter';
import remarkParse from 'remark-parse';
import remarkRehype from 'remark-rehype';
import { unified } from 'unified';
import { VFile } from 'vfile';
import { reporter } from 'vfile-reporter';
import { describe, expect, test } from 'vitest';
import { inspect } from '../../src/library/index.ts';
import procedure, { type ProcedureOptions } from '../../src/library/remark.ts';

const text = `---
procedure: oil-hinge
title: Oil the hinge
items:
  parts:
    pin: { name: hinge pin }
  fasteners:
    screw: { name: plate screw, count: 4, thread: M6, torque: 9 N·m }
---

## Removal

1. :loosen[Loosen the plate screws]{item=screw}.
2. :remove[Push the pin out]{item=pin}.

## Installation

1. :install[Push the pin in]{item=pin}.
2. :torque{item=screw}.
`;
const withoutPin = text.replace('1. :install[Push the pin in]{item=pin}.\n', '');

/** A file that has gone through the pipeline, with its HTML. */
async function processed(value: string, options: ProcedureOptions = {}): Promise<VFile> {
  return unified()
    .use(remarkParse)
    .use(remarkFrontmatter)
    .use(procedure, options)
    .use(remarkRehype)
    .use(rehypeStringify)
    .process(new VFile({ path: 'procedures/oil-hinge.md', value }));
}

describe('messages', () => {
  test('stand where the finding stands, and say what to do and what else matters', async () => {
    const { messages } = await processed(withoutPin);
    expect(messages).toHaveLength(1);
    const [message] = messages;
    const start = withoutPin.indexOf(':remove[');
    expect(message).toMatchObject({
      source: 'tallybolt',
      ruleId: 'left-out',
      fatal: true,
      reason: 'The hinge pin is still out at the end',
      place: { start: { line: 14, column: 4, offset: start } },
    });
    expect(message?.note).toContain('Add `:install{item=pin}`');
  });

  test('are those of the report, for programs too', async () => {
    const path = 'procedures/oil-hinge.md';
    const { data } = await processed(withoutPin);
    const { findings } = inspect({
      texts: [
        { path: 'manual.yaml', text: 'title: Procedures' },
        { path, text: withoutPin },
      ],
    });
    expect(findings).not.toEqual([]);
    expect(data.tallybolt?.findings).toEqual(findings);
  });

  test('are errors, warnings and notes to a reporter as they are to us', async () => {
    const loud = withoutPin.replace('Push the pin out', 'Push the pin out securely');
    const manual = {
      texts: [{ path: 'manual.yaml', text: 'title: T\nrules: { left-out: warning }\n' }],
    };
    const { messages } = await processed(loud, { manual });
    expect(
      messages.filter(({ ruleId }) => ruleId === 'left-out').map(({ fatal }) => fatal),
    ).toEqual([false]);
    expect(reporter(await processed(withoutPin))).toMatch(
      /14:4-14:\d+ +error .*left-out +tallybolt/,
    );
  });

  test('there are none on a procedure that balances', async () => {
    expect((await processed(text)).messages).toEqual([]);
  });

  test('a file that is no procedure is told so and keeps its text', async () => {
    const file = await processed('# Hinges\n\nThey creak.\n');
    expect(file.messages.map(({ ruleId }) => ruleId)).toContain('front-matter-missing');
    expect(String(file)).toContain('<p>They creak.</p>');
  });
});

describe('the sheet', () => {
  test('has the safety text, the steps with their numbers and the torques', async () => {
    const html = String(await processed(text));
    expect(html).toContain('<section class="standing" aria-label="Safety instructions">');
    expect(html.match(/<li class="step" id="step-\d"/g)).toHaveLength(4);
    expect(html).toMatch(/9\sN·m/);
    expect(html).not.toContain('draft-line');
  });

  test('says of an error that it is a draft', async () => {
    expect(String(await processed(withoutPin))).toContain('Draft, not for work.');
  });

  test('leaves the text alone where only the check is wanted', async () => {
    const file = await processed(withoutPin, { sheet: false });
    expect(file.messages).toHaveLength(1);
    expect(String(file)).toContain('<h2>Removal</h2>');
    expect(String(file)).not.toContain('class="step"');
  });

  describe('of a machine', () => {
    const manual = {
      texts: [
        { path: 'manual.yaml', text: 'title: Doors\n' },
        {
          path: 'machines/door.yaml',
          text: 'machine: door\nname: Door\nparts:\n  pin: { name: hinge pin }\n',
        },
      ],
    };
    const ofDoor = `---
procedure: oil-hinge
title: Oil the hinge
machine: door
---

1. :remove{item=pin}.
2. :install{item=pin}.
`;

    test('links to the published manual', async () => {
      const file = await processed(ofDoor, { manual, published: '/manual' });
      expect(file.messages).toEqual([]);
      expect(String(file)).toContain('href="/manual/machines/door/index.html#pin"');
    });

    test('has words without links where nothing is published', async () => {
      const html = String(await processed(ofDoor, { manual }));
      expect(html).toContain('hinge pin');
      expect(html).not.toMatch(/<a |unpublished:/);
    });
  });

  test('text never becomes markup', async () => {
    const hostile = text.replace('hinge pin', '"<img src=x onerror=alert(1)>"');
    expect(String(await processed(hostile))).not.toContain('<img');
  });
});
