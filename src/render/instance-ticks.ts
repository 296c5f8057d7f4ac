import type { Element } from 'hast';
import { h } from 'hastscript';

/** A small tick box for each place at which a step is done, beside the step's own: left, right. */
export function instanceTicks(number: string, instances: readonly string[]): Element[] {
  if (instances.length === 0) return [];
  const boxes = instances.map((instance) =>
    h('label.place', [
      h('input', {
        type: 'checkbox',
        ariaLabel: `Step ${number}, ${instance} done`,
        dataInstance: instance,
      }),
      instance,
    ]),
  );
  return [h('div.places', { role: 'group', ariaLabel: `Step ${number} at each place` }, boxes)];
}
