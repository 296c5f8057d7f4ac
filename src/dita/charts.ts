import type { FluidRow, TorqueRow, XmlElement, XmlNode } from '../render/index.ts';
import { xml } from '../render/index.ts';
import { linksTo, linkTo } from './link-to.ts';
import { productOf } from './product.ts';
import { type Row, table } from './table.ts';
import type { Topic } from './topic.ts';

const head = (...words: readonly string[]): Row[] => [{ cells: words.map((word) => [word]) }];

const lines = (texts: readonly (string | undefined)[]): XmlNode[] =>
  texts.flatMap((text) => (text ? [xml('p', {}, [text])] : []));

/** All torques of the manual; the ids of the rows are those of the published chart. */
export function torqueTable(rows: readonly TorqueRow[], topic: Topic): XmlElement[] {
  if (rows.length === 0) return [];
  return table(
    head('Fastener', 'Pieces', 'Thread', 'Torque', 'Only for', 'Used in'),
    rows.map((row) => {
      const { anchor, item, count, instances, thread, strength, threads, stages, when } = row;
      const pieces =
        instances.length === 0 ? `${count}` : `${count} on each: ${instances.join(', ')}`;
      const cells = [
        [linkTo(item, topic)],
        [pieces],
        [[thread, strength, threads].filter(Boolean).join(', ')],
        stages.length === 1
          ? [...stages]
          : [
              xml(
                'ol',
                {},
                stages.map((stage) => xml('li', {}, [stage])),
              ),
            ],
        [when ?? ''],
        linksTo(row.usedIn, topic),
      ];
      return { id: anchor, product: productOf(row.condition, topic), cells };
    }),
  );
}

/** All fluids of the manual, with what must be known when one is poured in. */
export function fluidTable(rows: readonly FluidRow[], topic: Topic): XmlElement[] {
  if (rows.length === 0) return [];
  return table(
    head('Circuit', 'Fluid', 'Capacity', 'Mix', 'Notes', 'Only for', 'Used in'),
    rows.map((row) => {
      const mix = row.mix.map(({ name, share, volume }) =>
        [`${name}: ${share}`, volume].filter(Boolean).join(', '),
      );
      const corrections = row.corrections.map(
        ({ measured, freezes, replace, by }) =>
          `${[`Measured ${measured}`, freezes].filter(Boolean).join(', ')}: replace ${replace} by ${by}`,
      );
      const notes = [
        row.freezing && `${row.freezing.point} (${row.freezing.source})`,
        ...corrections,
        row.neverWith.length === 0 ? undefined : `Never mix with ${row.neverWith.join(' or ')}`,
        row.bleed,
        row.dispose && `Old fluid: ${row.dispose}`,
      ];
      const cells = [
        [linkTo(row.item, topic)],
        [row.fluid],
        [row.capacity],
        lines(mix),
        lines(notes),
        [row.when ?? ''],
        linksTo(row.usedIn, topic),
      ];
      return { id: row.anchor, product: productOf(row.condition, topic), cells };
    }),
  );
}
