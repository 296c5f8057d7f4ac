import type { LinkedManual } from '../link/index.ts';
import { type Book, manualContext, sheetContext, standingMarkup, xml } from '../render/index.ts';
import { chartTopic, machineTopic } from './address.ts';
import { blocks } from './blocks.ts';
import { fluidTable, torqueTable } from './charts.ts';
import { machine } from './machine.ts';
import { map } from './map.ts';
import { reference } from './reference.ts';
import { draftNote, task } from './task.ts';
import type { Topic } from './topic.ts';
import { written } from './write-topic.ts';

export interface DitaFile {
  /** From the root of the export. */
  readonly path: string;
  readonly content: string;
}

/**
 * A whole manual in OASIS DITA 1.3: a map, a task topic a procedure, reference topics for machines, torques,
 * fluids and the standing safety text. The pictures of the Book go beside them at the same places as on the
 * site. Same input, same bytes.
 */
export function ditaFiles(manual: LinkedManual, book: Book): readonly DitaFile[] {
  const { space, settings, policy, placeOf } = manual.manual;
  const { language, draft: isDraft } = book;
  const valuesOf = (attribute: string) => space.attribute(attribute)?.values ?? [];
  const shared = manualContext(manual, '');
  const inFolder = (id: string): Topic => ({ id, up: '../', valuesOf });
  const atRoot = (name: Parameters<typeof chartTopic>[0]): Topic => ({
    id: chartTopic(name),
    up: '',
    valuesOf,
  });
  const tasks = book.sheets.flatMap((sheet) => {
    const one = manual.procedures.get(sheet.id);
    if (one === undefined) return [];
    const topic = { ...inFolder(sheet.id), context: sheetContext(one, shared) };
    const content = written(task(sheet, topic, { language, isDraft }), 'task');
    return [{ path: `procedures/${sheet.id}.dita`, content }];
  });
  const machines = book.machines.map((page) => ({
    path: `machines/${page.id}.dita`,
    content: written(machine(page, inFolder(machineTopic(page.id)), language), 'reference'),
  }));
  const chart = (
    name: Parameters<typeof chartTopic>[0],
    title: string,
    body: Parameters<typeof reference>[2],
  ): DitaFile[] => {
    if (body.length === 0) return [];
    const noted = isDraft ? [xml('section', {}, [draftNote]), ...body] : body;
    const root = reference(chartTopic(name), title, noted, language);
    return [{ path: `${name}.dita`, content: written(root, 'reference') }];
  };
  const safety = blocks(
    standingMarkup(settings.safety, placeOf('safety'), policy),
    atRoot('safety'),
  );
  return [
    {
      path: 'manual.ditamap',
      content: written(map(book, { hasSafety: safety.length > 0 }), 'map'),
    },
    ...chart('safety', 'Safety', safety.length === 0 ? [] : [xml('section', {}, safety)]),
    ...tasks,
    ...chart('torque-chart', 'Torque chart', torqueTable(book.torques, atRoot('torque-chart'))),
    ...chart('fluids', 'Fluids and capacities', fluidTable(book.fluids, atRoot('fluids'))),
    ...machines,
  ];
}
