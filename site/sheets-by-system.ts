import { type CollectionEntry, getCollection } from 'astro:content';
import { frame } from 'tallybolt:book';

export interface SystemSheets {
  readonly name: string;
  readonly sheets: readonly CollectionEntry<'sheets'>['data'][];
}

/** The sheets under their systems, in the order of the contents page. */
export async function sheetsBySystem(): Promise<readonly SystemSheets[]> {
  const sheets = new Map((await getCollection('sheets')).map(({ id, data }) => [id, data]));
  return frame.systems.map(({ name, sheets: ids }) => ({
    name,
    sheets: ids.flatMap((id) => sheets.get(id) ?? []),
  }));
}
