import fc from 'fast-check';
import {
  type Attribute,
  type Condition,
  createSpace,
  type Space,
  type VariantSet,
} from '../../src/applicability/index.ts';

/** The plain model that sets are checked against: every machine listed, each as values by attribute id. */
export type Machine = ReadonlyMap<string, string>;

export function machinesOf(attributes: readonly Attribute[]): readonly Machine[] {
  let machines: readonly Machine[] = [new Map()];
  for (const { id, values } of attributes) {
    machines = machines.flatMap((machine) =>
      values.map((value) => new Map([...machine, [id, value]])),
    );
  }
  return machines;
}

export function holds(condition: Condition, machine: Machine): boolean {
  switch (condition.kind) {
    case 'test': {
      const value = machine.get(condition.attribute.text);
      return condition.values.some(({ text }) => text === value) !== condition.negated;
    }
    case 'bare':
      return machine.get(condition.attribute.text) === 'yes';
    case 'found':
      return machine.get(condition.way?.attribute ?? '') === condition.way?.value;
    case 'never':
      return false;
    case 'not':
      return !holds(condition.of, machine);
    case 'all':
      return condition.of.every((part) => holds(part, machine));
    case 'any':
      return condition.of.some((part) => holds(part, machine));
  }
}

/** Whether one machine is in a set, asked through the set's own operations. */
export function contains(space: Space, set: VariantSet, machine: Machine): boolean {
  let only = space.all;
  for (const [id, value] of machine) only = space.and(only, space.is(id, value));
  return only !== space.none && space.covers(set, only);
}

export const at = { start: 0, end: 0 } as const;

export const attributesArbitrary: fc.Arbitrary<readonly Attribute[]> = fc
  .array(fc.oneof(fc.constant(0), fc.integer({ min: 2, max: 4 })), { minLength: 1, maxLength: 6 })
  .map((widths) =>
    widths.map((width, index): Attribute => {
      if (width === 0) return { id: `a${index}`, values: ['yes', 'no'] };
      const rest = Array.from({ length: width - 1 }, (_, value) => `v${value + 1}`);
      return { id: `a${index}`, values: ['v0', ...rest] };
    }),
  );

/** Any condition over the attributes. */
export function conditionArbitrary(attributes: readonly Attribute[]): fc.Arbitrary<Condition> {
  const test = fc.constantFrom(...attributes).chain((attribute) => {
    const value = fc.constantFrom(...attribute.values).map((text) => ({ text, ...at }));
    return fc.record({
      kind: fc.constant('test' as const),
      attribute: fc.constant({ text: attribute.id, ...at }),
      negated: fc.boolean(),
      values: fc
        .tuple(value, fc.array(value, { maxLength: 2 }))
        .map(([first, rest]) => [first, ...rest] as const),
      start: fc.constant(0),
      end: fc.constant(0),
    });
  });
  const { condition } = fc.letrec<{ condition: Condition }>((tie) => ({
    condition: fc.oneof(
      { maxDepth: 4, depthSize: 'medium' },
      test,
      tie('condition').map((of) => ({ kind: 'not', of, ...at }) as const),
      fc
        .tuple(
          fc.constantFrom('all' as const, 'any' as const),
          tie('condition'),
          tie('condition'),
          fc.array(tie('condition'), { maxLength: 1 }),
        )
        .map(
          ([kind, first, second, rest]) => ({ kind, of: [first, second, ...rest], ...at }) as const,
        ),
    ),
  }));
  return condition;
}

export interface Case {
  readonly attributes: readonly Attribute[];
  readonly constraints: readonly Condition[];
  readonly space: Space;
  /** the machines that the constraints leave */
  readonly machines: readonly Machine[];
}

/** A space with constraints that leave a machine, and its machines listed. */
export const caseArbitrary: fc.Arbitrary<Case> = attributesArbitrary.chain((attributes) =>
  fc
    .array(conditionArbitrary(attributes), { maxLength: 2 })
    .map((constraints) => caseOf(attributes, constraints))
    .filter(({ machines }) => machines.length > 0),
);

export function caseOf(attributes: readonly Attribute[], constraints: readonly Condition[]): Case {
  const machines = machinesOf(attributes).filter(
    (machine) => !constraints.some((constraint) => holds(constraint, machine)),
  );
  return { attributes, constraints, space: createSpace(attributes, constraints).space, machines };
}

/** A case with so many conditions over its attributes. */
export function caseWith(count: number): fc.Arbitrary<{
  readonly given: Case;
  readonly conditions: readonly Condition[];
}> {
  return caseArbitrary.chain((given) =>
    fc
      .array(conditionArbitrary(given.attributes), { minLength: count, maxLength: count })
      .map((conditions) => ({ given, conditions })),
  );
}
