import type { Torque } from '../../catalogue/index.ts';
import { mainUnit, type Quantity } from '../../quantity/index.ts';
import { oddUnitsInProse } from '../reading/odd-units.ts';
import { figuresOf } from '../reading/torque-figures.ts';
import type { Draft, Examined, Rule } from '../rule.ts';
import { allOf } from '../wording/lists.ts';

export const rule: Rule = {
  id: 'units-mixed',
  family: 'values',
  level: 'warning',
  *check(examined): Generator<Draft> {
    for (const { id: procedure, one } of examined.subjects) {
      for (const { place, unit, kind, usual } of oddUnitsInProse(one, examined.linked.manual)) {
        yield {
          place,
          procedure,
          message: `This is in ${unit}, but the manual gives ${kind} in ${allOf(usual)}`,
          data: { unit, kind, usual: [...usual] },
          help: `Write the value in ${usual[0] ?? 'one unit'}.`,
        };
      }
    }
    yield* oddTorques(examined);
  },
};

/** Torques of a machine's catalogue in another system of units than most of them. */
function* oddTorques({ machines }: Examined): Generator<Draft> {
  for (const machine of machines) {
    const torques = [...machine.items.values()].flatMap((item) => {
      const torque =
        item.kind === 'fastener' || item.kind === 'connection' ? item.torque : undefined;
      const system = torque === undefined || torque.byDefault ? undefined : systemOf(torque);
      return torque === undefined || system === undefined ? [] : [{ item, torque, system }];
    });
    const usual = mostCommon(torques.map(({ system }) => system));
    if (usual === undefined) continue;
    for (const { item, torque, system } of torques) {
      if (system === usual) continue;
      yield {
        place: torque.place,
        item: item.id,
        message: `The torque of ${item.kind === 'fastener' ? 'these fasteners' : 'this connection'} is in ${system}, but most torques of this machine are in ${usual}`,
        data: { system, usual },
        help: `Give it in ${usual}, from the drawing and not by conversion.`,
      };
    }
  }
}

/** "newton metres", "pounds-force" or "kilograms-force" by the first figure that is a torque. */
function systemOf(torque: Torque): string | undefined {
  const unit = figuresOf(torque)
    .map((figure: Quantity) => mainUnit(figure))
    .find((one) => /f·|N·/.test(one));
  if (unit === undefined) return undefined;
  if (unit.startsWith('lbf')) return 'pounds-force';
  return unit.startsWith('kgf') ? 'kilograms-force' : 'newton metres';
}

/** The system that more than half have, where at least three have any. */
function mostCommon(systems: readonly string[]): string | undefined {
  if (systems.length < 3) return undefined;
  return systems.find(
    (one) => systems.filter((other) => other === one).length * 2 > systems.length,
  );
}
