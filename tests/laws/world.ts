import fc from 'fast-check';
import {
  type Attribute,
  type Condition,
  createSpace,
  printCondition,
  type Space,
} from '../../src/applicability/index.ts';
import {
  at,
  conditionArbitrary,
  holds,
  type Machine,
  machinesOf,
} from '../applicability/enumeration.ts';
import { sometimes } from './sometimes.ts';

/** A small made-up machine in all its variants: the catalogue as data, and every machine listed. */
export interface World {
  readonly attributes: readonly Attribute[];
  readonly never: readonly Condition[];
  readonly machines: readonly Machine[];
  readonly entries: readonly Entry[];
}

export interface Entry {
  readonly family: Family;
  readonly id: string;
  readonly data: Readonly<Record<string, unknown>>;
  readonly when: Condition | undefined;
  readonly each: boolean;
}

export type Family =
  | 'fasteners'
  | 'parts'
  | 'connections'
  | 'circuits'
  | 'energy'
  | 'controls'
  | 'aids';

/** More machines than this are not gone through one by one. */
const mostMachines = 64;

export const attributesArbitrary: fc.Arbitrary<readonly Attribute[]> = fc
  .array(fc.constantFrom(2, 2, 2, 3), { minLength: 1, maxLength: 6 })
  .map((widths) =>
    widths.map((width, i): Attribute => {
      const rest = Array.from({ length: width - 1 }, (_, v) => `v${v + 1}`);
      return width === 2 && i % 2 === 0
        ? { id: `a${i}`, values: ['yes', 'no'] }
        : { id: `a${i}`, values: ['v0', ...rest] };
    }),
  )
  .filter((attributes) => machinesOf(attributes).length <= mostMachines);

export const worldArbitrary: fc.Arbitrary<World> = attributesArbitrary.chain((attributes) =>
  fc
    .record({
      never: fc.array(conditionArbitrary(attributes), { maxLength: 1 }),
      entries: entriesArbitrary(attributes),
    })
    .map(({ never, entries }) => {
      const machines = machinesOf(attributes).filter(
        (machine) => !never.some((condition) => holds(condition, machine)),
      );
      return { attributes, never, machines, entries };
    })
    .filter(({ machines }) => machines.length > 0),
);

export function spaceOf({ attributes, never }: World): Space {
  return createSpace(attributes, never).space;
}

/** `manual.yaml` and the catalogue as texts. JSON is YAML. */
export function textsOf({ attributes, never, entries }: World): Record<string, string> {
  const variants = Object.fromEntries(attributes.map(({ id, values }) => [id, values]));
  const manual = { title: 'Law', variants, never: never.map(printCondition) };
  const families: Record<string, Record<string, unknown>> = {};
  for (const { family, id, data, when, each } of entries) {
    families[family] = {
      ...families[family],
      [id]: {
        name: id,
        ...data,
        ...(when !== undefined && { when: printCondition(when) }),
        ...(each && { each: ['left', 'right'] }),
      },
    };
  }
  return {
    'manual.yaml': JSON.stringify(manual),
    'machines/m.yaml': JSON.stringify({ machine: 'm', name: 'M', ...families }),
  };
}

const rarely = fc.integer({ min: 0, max: 5 }).map((n) => n === 0);

function entriesArbitrary(attributes: readonly Attribute[]): fc.Arbitrary<readonly Entry[]> {
  const when = sometimes(simpleCondition(attributes), 2);
  const entry = (
    family: Family,
    id: string,
    data: fc.Arbitrary<Readonly<Record<string, unknown>>>,
  ): fc.Arbitrary<Entry> =>
    fc
      .record({ data, when, each: rarely })
      .map((one) => ({ family, id, ...one, data: defined(one.data) }));
  const parts = ['p0', 'p1', 'p2'];
  const part = fc.constantFrom(...parts);
  const list = (...ids: string[]) => fc.subarray(ids, { maxLength: Math.min(2, ids.length) });
  const several = (ids: string[]) =>
    list(...ids).map((some) => (some.length === 0 ? undefined : some));
  const count = fc.integer({ min: 1, max: 4 });
  const fastener = (id: string) =>
    entry(
      'fasteners',
      id,
      fc.record({
        count,
        torque: sometimes(fc.constant('20 N·m'), 4),
        tightness: sometimes(fc.constantFrom('hand-tight', 'snug'), 4),
        'single-use': rarely,
        holds: sometimes(part, 5),
        'lets-go-when': fc.constantFrom('out', 'loose'),
        behind: sometimes(part, 4),
      }),
    );
  // Nothing stands in front of a filler, so that it can be opened whatever else is off.
  const filler = (id: string) =>
    entry('fasteners', id, fc.record({ torque: sometimes(fc.constant('20 N·m'), 2) }));
  const connection = (id: string) =>
    entry(
      'connections',
      id,
      fc.record({
        type: fc.constant('hose'),
        on: sometimes(part, 5),
        circuit: sometimes(fc.constantFrom('o0', 'o1'), 5),
        'cap-when-open': fc.boolean(),
        torque: sometimes(fc.constant('20 N·m'), 3),
      }),
    );
  const circuit = (id: string, filler: string) =>
    entry(
      'circuits',
      id,
      fc.record({
        fluid: fc.constant('oil'),
        capacity: fc.constant('2 L'),
        drain: several(['f0', 'k0', 'c1']),
        fill: several([filler]),
        bleed: sometimes(fc.constant('at the nipple'), 4),
        pressure: sometimes(fc.constant(true), 4),
      }),
    );
  return fc
    .tuple(
      entry('parts', 'p0', fc.record({ 'single-use': rarely })),
      entry('parts', 'p1', fc.record({ behind: several(['p0', 'f0']), 'single-use': rarely })),
      entry(
        'parts',
        'p2',
        fc.record({ behind: several(['p0', 'p1']), in: sometimes(fc.constant('p1'), 4) }),
      ),
      fastener('f0').map(withoutBehind),
      fastener('f1'),
      fastener('f2'),
      filler('f3'),
      filler('f4'),
      connection('c0'),
      connection('c1'),
      circuit('o0', 'f3').map(onlyOnce),
      circuit('o1', 'f4').map(onlyOnce),
      entry(
        'energy',
        'e0',
        fc.record({
          type: fc.constant('electrical'),
          'isolate-before': several(['p2', 'f1', 'c0']),
        }),
      ).map(onlyOnce),
      entry(
        'controls',
        'k0',
        fc.record({ positions: fc.constant(['rest', 'up', 'down']), home: fc.constant('rest') }),
      ).map(onlyOnce),
      entry(
        'aids',
        'd0',
        fc.record({ count: fc.integer({ min: 1, max: 2 }), blocks: sometimes(part, 5) }),
      ),
    )
    .map((entries) => entries);
}

/** `f0` may stand in front of a part, so nothing may stand in front of it. */
const withoutBehind = (one: Entry): Entry => {
  const { behind: _, ...data } = one.data;
  return { ...one, data };
};
const onlyOnce = (one: Entry): Entry => ({ ...one, each: false });

const defined = (data: Readonly<Record<string, unknown>>): Record<string, unknown> =>
  Object.fromEntries(Object.entries(data).filter(([, value]) => value !== undefined));

/** One test of one attribute: holds for some machines and not for others, unless constraints intervene. */
function simpleCondition(attributes: readonly Attribute[]): fc.Arbitrary<Condition> {
  return fc.constantFrom(...attributes).chain((attribute) =>
    fc.record({
      kind: fc.constant('test' as const),
      attribute: fc.constant({ text: attribute.id, ...at }),
      negated: fc.boolean(),
      values: fc.constantFrom(...attribute.values).map((text) => [{ text, ...at }] as const),
      start: fc.constant(0),
      end: fc.constant(0),
    }),
  );
}
