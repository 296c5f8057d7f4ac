import type { Place } from '../../../schemas/finding.ts';
import type { WrenchFault } from '../../joint/index.ts';
import { allActions, wrenchOf } from '../../link/index.ts';
import type { Action } from '../../syntax/index.ts';
import type { Draft, Rule } from '../rule.ts';
import { factsOf } from '../telling/json.ts';
import { sentence } from '../wording/lists.ts';
import { the, thing } from '../wording/thing.ts';

export const rule: Rule = {
  id: 'wrench-setting-unknown',
  family: 'values',
  level: 'warning',
  *check(examined): Generator<Draft> {
    for (const { id: procedure, one } of examined.subjects) {
      for (const action of allActions(one.procedure)) {
        const { fault } = wrenchOf(action, one);
        if (fault === undefined) continue;
        const place = placeOf(fault, action);
        const named = (id: string) => the(thing(id, one.item(id)));
        yield {
          place,
          procedure,
          item: action.item.id,
          ...words(fault, action, named),
          data: factsOf(fault),
        };
      }
    }
  },
};

/** The extension or the angle, where the author wrote it. */
function placeOf(fault: WrenchFault, action: Action): Place {
  switch (fault.code) {
    case 'angle-out-of-range':
    case 'angle-without-extension':
      return action.angle?.place ?? action.place;
    case 'several-wrenches':
      return tool(fault.wrenches.at(-1), action)?.place ?? action.place;
    case 'several-extensions':
      return tool(fault.extensions.at(-1), action)?.place ?? action.place;
    default:
      return tool(fault.extension, action)?.place ?? action.place;
  }
}

const tool = (id: string | undefined, action: Action) => action.with.find((ref) => ref.id === id);

function words(
  fault: WrenchFault,
  { angle }: Action,
  named: (id: string) => string,
): { message: string; help: string } {
  switch (fault.code) {
    case 'wrench-length-missing':
      return {
        message: sentence(
          `${named(fault.extension)} changes what the torque wrench shows, but no torque wrench with a length is named here`,
        ),
        help: 'Name the wrench in with=, and give it its length in the catalogue: from its drive to the middle of its grip.',
      };
    case 'several-wrenches':
      return {
        message: sentence(
          `${fault.wrenches.map(named).join(' and ')} are named with ${named(fault.extension)}, and the setting is worked out for one wrench`,
        ),
        help: 'Name only the torque wrench that the extension is put on.',
      };
    case 'several-extensions':
      return {
        message: sentence(
          `${fault.extensions.map(named).join(' and ')} lengthen the torque wrench, and the setting is worked out for one`,
        ),
        help: 'Name one of them, or make an entry of the two together with its extension.',
      };
    case 'angle-without-extension':
      return {
        message: `The angle ${angle?.text ?? ''} is that of an extension to the torque wrench, but no tool with an extension is named here`,
        help: 'Name the extension in with=, or take the angle out.',
      };
    case 'angle-out-of-range':
      return {
        message: `The angle between extension and wrench is “${angle?.text ?? ''}”; one angle from 0° to 180° is expected`,
        help: 'Write 0° for in line, 90° for to the side, 180° for back towards the grip.',
      };
    case 'reaches-grip':
      return {
        message: sentence(
          `${named(fault.extension)} points back and is as long as ${named(fault.wrench)} or longer, so that no setting gives the torque`,
        ),
        help: 'Correct the lengths in the catalogue, or the angle.',
      };
  }
}
