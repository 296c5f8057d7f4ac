import fc from 'fast-check';
import type { Condition } from '../../src/applicability/index.ts';
import { conditionArbitrary } from '../applicability/enumeration.ts';
import type { Act, Piece } from './script.ts';
import { sometimes } from './sometimes.ts';
import type { Entry, World } from './world.ts';

/** Some entries taken away, the last ones brought back first; some stay away. */
export interface Balanced {
  readonly away: readonly Piece[];
  readonly back: readonly Piece[];
}

/** Mostly sensible work: what goes away in a few steps comes back in as many, in reverse. */
export function balancedArbitrary(
  world: World,
  { mayStayAway }: { mayStayAway: boolean },
): fc.Arbitrary<Balanced> {
  const when = sometimes(conditionArbitrary(world.attributes), 4);
  const choice = fc.record({
    when,
    way: fc.boolean(),
    comesBack: mayStayAway ? fc.integer({ min: 0, max: 3 }).map((n) => n > 0) : fc.constant(true),
  });
  return fc.shuffledSubarray([...world.entries], { minLength: 1, maxLength: 4 }).chain((entries) =>
    fc.array(choice, { minLength: entries.length, maxLength: entries.length }).map((choices) => {
      const chosen = entries.flatMap((entry, i) => {
        const one = choices[i];
        return one === undefined ? [] : [{ entry, ...one }];
      });
      return {
        away: chosen.map(({ entry, way, when: own, comesBack }) =>
          step(entry, away(entry, way), comesBack ? own : undefined),
        ),
        back: chosen
          .filter(({ comesBack }) => comesBack)
          .toReversed()
          .map(({ entry, way, when: own }) => step(entry, back(entry, way), own)),
      };
    }),
  );
}

type Verbs = readonly (readonly [verb: string, attributes?: string])[];

function away({ family, data }: Entry, way: boolean): Verbs {
  switch (family) {
    case 'fasteners':
      return way ? [['remove']] : [['loosen']];
    case 'parts':
      return way ? [['remove']] : [['set-aside']];
    case 'connections':
      return data['cap-when-open'] === true ? [['disconnect'], ['cap']] : [['disconnect']];
    case 'circuits':
      return data.pressure === true ? [['relieve'], ['drain']] : [['drain']];
    case 'energy':
      return [['isolate']];
    case 'controls':
      return [['set', way ? 'to=up' : 'to=down']];
    case 'aids':
      return [['fit']];
  }
}

function back({ family, data }: Entry, way: boolean): Verbs {
  const isNew = data['single-use'] === true ? 'new' : undefined;
  switch (family) {
    case 'fasteners': {
      const tightening = data.torque === undefined ? 'tighten' : 'torque';
      if (!way) return [[tightening]];
      return data.tightness === 'hand-tight' && data.torque === undefined
        ? [['install', isNew]]
        : [['install', isNew], [tightening]];
    }
    case 'parts':
      return way ? [['install', isNew]] : [['return']];
    case 'connections':
      return [
        ...(data['cap-when-open'] === true ? [['uncap'] as const] : []),
        ['connect'],
        ...(data.torque === undefined ? [] : [['torque'] as const]),
      ];
    case 'circuits':
      return data.bleed === undefined ? [['fill']] : [['fill'], ['bleed']];
    case 'energy':
      return [['restore']];
    case 'controls':
      return [['set', 'to=rest']];
    case 'aids':
      return [['withdraw']];
  }
}

function step({ id }: Entry, verbs: Verbs, when: Condition | undefined): Piece {
  const acts = verbs.map(
    ([verb, attributes = '']): Act => ({ verb, item: id, attributes, when: undefined }),
  );
  return { is: 'step', when, acts };
}
