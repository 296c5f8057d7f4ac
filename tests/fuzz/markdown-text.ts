import fc from 'fast-check';
import { signals, verbSchema } from '../../schemas/directives.ts';
import { oddCharacters, valueText } from './pieces.ts';

const ids = [
  'bolt',
  'cover',
  'cup',
  'oil',
  'pin',
  'cock',
  'ghost',
  'step-1',
  'removal',
  'a',
  '__proto__',
];
const attributes = [
  'item',
  'qty',
  'when',
  'new',
  'to',
  'amount',
  'value',
  'limit',
  'each',
  'with',
  'angle',
  'of',
  'procedure',
  'part',
  'step',
  'needs',
  'people',
  'time',
  'wait',
  'tools',
  'consumables',
  'changed',
  'hazard',
  'harm',
  'src',
  'alt',
  'at',
  'id',
  'rule',
  'until',
  'except',
  'in-place',
  'record',
];
const blocks = [
  ...signals,
  'torque',
  'fluid',
  'needs',
  'when',
  'if',
  'either',
  'or',
  'figure',
  'callout',
  'step',
  'hazard',
  'perform',
  'reverse',
  'waive',
  'repeat',
  'nothing',
];

const attribute = fc
  .tuple(
    fc.constantFrom(...attributes),
    fc.oneof(
      { weight: 3, arbitrary: fc.constantFrom(...ids, '1', '4', '999999') },
      { weight: 1, arbitrary: valueText },
    ),
    fc.constantFrom('', '"', "'"),
  )
  .map(([name, value, quote]) => `${name}=${quote}${value}${quote}`);
const braces = fc.oneof(
  fc.constant(''),
  fc
    .array(fc.oneof(attribute, fc.constantFrom('#a', '.b', 'new')), { maxLength: 4 })
    .map((all) => `{${all.join(' ')}}`),
  attribute.map((one) => `{${one}`),
);
const words = fc.oneof(
  fc.constantFrom(
    'Remove the four bolts and the cover.',
    'Torque the bolts to 45 N·m (33 lbf·ft), then to 90°.',
    'Assemble in reverse order.',
    'Repeat steps 1 to 5 for the other side.',
    'If the belt is cracked, go to step 9.',
    'Drain 38 L of oil.',
    'Tighten securely.',
    '**bold** _it_ ~~gone~~ `code` [link](../x.md#a) ![alt](figures/a.svg)',
    '<script>alert(1)</script>',
    '[^1] https://x.example www.example.org a@b.example',
  ),
  valueText,
);
const label = fc.oneof(
  fc.constant(''),
  words.map((text) => `[${text}]`),
  words.map((text) => `[${text}`),
);
const verbs = fc.constantFrom(...verbSchema.options);
const action = fc
  .tuple(fc.constantFrom(':', ':', ':', '::', ''), verbs, label, braces)
  .map((parts) => parts.join(''));
const leaf = fc
  .tuple(fc.constantFrom('::', '::', ':'), fc.constantFrom(...blocks), label, braces)
  .map((parts) => parts.join(''));
const container = fc
  .tuple(
    fc.constantFrom(':::', ':::', '::::', '::'),
    fc.constantFrom(...blocks),
    label,
    braces,
    fc.constantFrom('\n:::\n', '\n::::\n', '\n'),
  )
  .chain(([colons, name, said, given, end]) =>
    fc.oneof(words, action, leaf).map((inner) => `${colons}${name}${said}${given}\n${inner}${end}`),
  );

const line = fc
  .tuple(
    fc.constantFrom(
      '',
      '',
      '',
      '1. ',
      '1. ',
      '2. ',
      '3) ',
      '- ',
      '   ',
      '   1. ',
      '> ',
      '## ',
      '# ',
      '| a | ',
      '    ',
      '\t',
      '```',
      '~~~',
      '---',
      '***',
      '[^1]: ',
      '- [ ] ',
    ),
    fc.oneof(
      { weight: 4, arbitrary: action },
      { weight: 3, arbitrary: leaf },
      { weight: 3, arbitrary: container },
      { weight: 3, arbitrary: words },
      {
        weight: 1,
        arbitrary: fc.constantFrom(
          '## Removal',
          '## Reassembly',
          '::reverse{of=removal}',
          '|---|---|',
          ...oddCharacters,
        ),
      },
    ),
    fc.constantFrom('\n', '\n', '\n\n', '', '\r\n', '\r'),
  )
  .map((parts) => parts.join(''));

/** The body of a procedure: lists, headings, blocks and actions as they come. */
export const markdownText: fc.Arbitrary<string> = fc
  .array(line, { maxLength: 14 })
  .map((lines) => lines.join(''));
