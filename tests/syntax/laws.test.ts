import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Place } from '../../schemas/finding.ts';
import { parseProcedure } from '../../src/syntax/index.ts';
import { frontMatter } from './carets.ts';

const path = 'procedures/a.md';

/** Scraps of the language and of Markdown, put together in any way. */
const scrap = fc.constantFrom(
  ...[':remove', '[the bolts]', '{item=anvil-bolt}', '{item="a b" qty=2 new}', '{#id .class', '}'],
  ...[
    ':fit[*a*]{item=pin when="feed = x"}',
    ':foo[x]',
    '10:30',
    'a:b',
    '\\:',
    '&amp;',
    'é😀',
    '\t',
  ],
  ...['::step{#a}', '::perform{procedure=x}', '::torque{item=a}', '::hazard{of=b}', '::nope{a=b}'],
  ...[
    ':::danger{hazard="a" harm=b}',
    ':::',
    '::::',
    '::::when[feed = x]',
    ':::if[worn]',
    ':::either[a]',
  ],
  ...[':::or[b]', ':::torque{item=a}', ':::figure{src=a alt=b}', '::: danger', ':::nope'],
  ...[
    '\n',
    '\n\n',
    '\n   ',
    '\n\n   ',
    '\n> ',
    '\n- ',
    '\n1. ',
    '\n2. ',
    '\n## Removal\n',
    '\n---\n',
  ],
  ...[
    'a@b.com',
    'www.a.b',
    'http://a.b:1',
    '[r]',
    '\n\n[r]: x.md\n',
    '![p](a.png)',
    '<b>',
    '<!-- c -->',
  ],
  ...[
    '**',
    '_',
    '`',
    '| a | b |\n|---|---|\n| c | d |',
    '[^n]',
    '\n\n[^n]: note\n',
    ' ',
    'words',
    '\u0000',
  ],
);
const body = fc.array(scrap, { maxLength: 40 }).map((scraps) => scraps.join(''));
const text = fc.oneof(
  body.map((words) => `${frontMatter}${words}`),
  body,
  fc.string({ unit: 'binary' }),
  fc.string(),
);

function isPlace(value: object): value is Place {
  return 'file' in value && 'start' in value && 'end' in value && Object.keys(value).length === 3;
}

/** Every place in a value, except in the nodes of the Markdown tree. */
function* placesIn(value: unknown): Generator<Place> {
  if (typeof value !== 'object' || value === null) return;
  if (isPlace(value)) yield value;
  else
    for (const [key, member] of Object.entries(value)) if (key !== 'node') yield* placesIn(member);
}

/** What was written, each with what its place covers. */
function* writtenIn(value: unknown): Generator<{ said: string; place: Place }> {
  if (typeof value !== 'object' || value === null) return;
  if (
    'place' in value &&
    typeof value.place === 'object' &&
    value.place !== null &&
    isPlace(value.place)
  ) {
    const { place } = value;
    const keys = Object.keys(value).length;
    if ('id' in value && keys === 2) yield { said: String(value.id), place };
    if ('text' in value && keys === 2) yield { said: String(value.text), place };
    if ('written' in value) yield { said: String(value.written), place };
  }
  for (const [key, member] of Object.entries(value)) if (key !== 'node') yield* writtenIn(member);
}

/** A value without its places and positions, and with all line ends alike. */
function shapeOf(value: unknown): string {
  const dropped = new Set([
    'place',
    'first',
    'headingPlace',
    'position',
    'data',
    'text',
    'found',
    'problem',
  ]);
  return JSON.stringify(
    value,
    (key, member) => (dropped.has(key) ? undefined : member),
    1,
  ).replaceAll('\\r\\n', '\\n');
}

test('reading never throws, and every place lies in the text', () => {
  fc.assert(
    fc.property(text, (source) => {
      const { value, facts } = parseProcedure({ path, text: source });
      for (const place of placesIn([value, facts])) {
        expect(place.file).toBe(path);
        expect(place.start.offset).toBeGreaterThanOrEqual(0);
        expect(place.start.offset).toBeLessThanOrEqual(place.end.offset);
        expect(place.end.offset).toBeLessThanOrEqual(source.length);
      }
    }),
    { numRuns: 1500 },
  );
});

test('facts are in order of place', () => {
  fc.assert(
    fc.property(text, (source) => {
      const offsets = parseProcedure({ path, text: source }).facts.map(
        ({ place }) => place.start.offset,
      );
      expect(offsets).toEqual(offsets.toSorted((a, b) => a - b));
    }),
  );
});

test('the place of what was written covers the words that were written', () => {
  fc.assert(
    fc.property(body, (words) => {
      const source = `${frontMatter}${words}`;
      for (const { said, place } of writtenIn(
        parseProcedure({ path, text: source }).value?.sections,
      )) {
        expect(source.slice(place.start.offset, place.end.offset)).toBe(said);
      }
    }),
    { numRuns: 500 },
  );
});

test('a paragraph before moves places and changes nothing else', () => {
  fc.assert(
    fc.property(body, (words) => {
      const before = 'A paragraph of its own.\n\n## Heading\n\n';
      const one = parseProcedure({ path, text: `${frontMatter}## Zero\n\n${words}` });
      const other = parseProcedure({ path, text: `${frontMatter}${before}## Zero\n\n${words}` });
      expect(shapeOf(other.value?.sections.slice(2))).toBe(shapeOf(one.value?.sections));
      const kinds = ({ facts }: typeof one) =>
        facts.map(({ kind, place }) => [kind, place.end.offset - place.start.offset]);
      expect(kinds(other)).toEqual(kinds(one));
      const shift = before.length;
      const starts = ({ facts }: typeof one) => facts.map(({ place }) => place.start.offset);
      expect(starts(other)).toEqual(starts(one).map((start) => start + shift));
    }),
    { numRuns: 500 },
  );
});

test('line ends of two characters give the same structure', () => {
  fc.assert(
    fc.property(body, (words) => {
      const source = `${frontMatter}${words}`;
      const one = parseProcedure({ path, text: source });
      const other = parseProcedure({ path, text: source.replaceAll('\n', '\r\n') });
      expect(shapeOf(other.value?.sections)).toBe(shapeOf(one.value?.sections));
      expect(other.facts.map(({ kind }) => kind)).toEqual(one.facts.map(({ kind }) => kind));
    }),
    { numRuns: 500 },
  );
});

test('the same text gives the same result', () => {
  fc.assert(
    fc.property(text, (source) => {
      const result = () => JSON.stringify(parseProcedure({ path, text: source }));
      expect(result()).toBe(result());
    }),
  );
});
