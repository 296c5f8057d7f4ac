import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type MachineCondition, readMachineCondition } from '../../src/applicability/index.ts';

const { condition } = fc.letrec<{ condition: MachineCondition }>((tie) => ({
  condition: fc.oneof(
    { maxDepth: 4, withCrossShrink: true },
    fc.constant<MachineCondition>(['?']),
    fc
      .tuple(fc.string(), fc.array(fc.string(), { maxLength: 3 }))
      .map(([attribute, values]): MachineCondition => ['=', attribute, ...values]),
    tie('condition').map((inner): MachineCondition => ['!', inner]),
    fc
      .tuple(fc.constantFrom('&', '|'), fc.array(tie('condition'), { maxLength: 3 }))
      .map(([kind, parts]): MachineCondition => [kind, ...parts]),
  ),
}));

test('law: a condition that went through JSON is the same again', () => {
  fc.assert(
    fc.property(condition, (one) => {
      expect(readMachineCondition(JSON.parse(JSON.stringify(one)))).toEqual(one);
    }),
  );
});

describe('what is no condition is not read', () => {
  test.each([
    undefined,
    null,
    'winch',
    {},
    [],
    ['='],
    ['=', 1],
    ['=', 'winch', 2],
    ['!'],
    ['!', 'winch'],
    ['&', ['=', 'winch', 'yes'], 'winch'],
    ['|', ['!', []]],
    ['<', 'winch', 'yes'],
  ])('%j', (data: unknown) => {
    expect(readMachineCondition(data)).toBeUndefined();
  });
});
