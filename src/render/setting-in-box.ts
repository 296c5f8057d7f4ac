import type { Element } from 'hast';
import { h } from 'hastscript';
import { itemName, type TorqueFact, wrenchSettings } from '../derive/index.ts';
import { itemMarkup } from './action-markup.ts';
import type { SheetContext } from './sheet-context.ts';
import { twoUnits } from './two-units.ts';

/** In a torque box: what to set the wrench to, where an extension on it changes what it shows. */
export function settingInBox({ item, wrench }: TorqueFact, context: SheetContext): Element[] {
  if (wrench === undefined) return [];
  const settings = wrenchSettings(item.torque, wrench, context.policy);
  const [only, ...others] = settings;
  if (only === undefined) return [];
  const { extension, angle } = wrench;
  const name = itemMarkup(extension, itemName(extension), context);
  return [
    h('div.setting', [
      h('p.check', 'Set the wrench to'),
      others.length === 0
        ? h('p.value', twoUnits(only))
        : h(
            settings.length === item.torque.spec.stages.length ? 'ol.stages' : 'ul',
            settings.map((setting) => h('li.value', twoUnits(setting))),
          ),
      h('p', ['with the ', name, ` ${towards(angle)}`]),
    ]),
  ];
}

/** How the extension stands to the wrench. */
function towards(angle: number): string {
  if (angle === 0) return 'in line';
  return angle === 180 ? 'pointing back' : `at ${Math.round(angle)}° to it`;
}
