import { manualSchema } from '../../schemas/manual.ts';
import { type Catalogue, type Item, type ManualModel, referencesOf } from '../catalogue/index.ts';
import { locator, readYaml } from '../source/index.ts';
import type { MentionList } from './mention-list.ts';

/** Entries of one file, what each of them names, and for which machines it is. */
export function itemMentions(
  list: MentionList,
  items: readonly Item[],
  { items: known }: Pick<Catalogue, 'items'>,
): void {
  for (const item of items) {
    list.id({ kind: 'item', id: item.id, item }, item.place, true);
    for (const { id, path } of referencesOf(item)) {
      const named = known.get(id);
      if (named !== undefined) list.id({ kind: 'item', id, item: named }, item.placeOf(path));
    }
    list.condition(item.when, item.placeOf('when'));
  }
}

/** `machines/<id>.yaml`. */
export function machineMentions(list: MentionList, machine: Catalogue, text: string): void {
  const at = locator(machine.file, text);
  const written = /^machine:[ \t]*(["']?)([a-z0-9-]+)\1/m.exec(text);
  if (written?.[2] === machine.id) {
    const start = written.index + written[0].length - machine.id.length - (written[1]?.length ?? 0);
    list.id({ kind: 'machine', id: machine.id }, at.place(start, start + machine.id.length), true);
  }
  itemMentions(list, [...machine.items.values()], machine);
}

/** `manual.yaml`: the variants and their values, and where conditions name them. */
export function manualMentions(
  list: MentionList,
  { space, settings, placeOf }: ManualModel,
  text: string,
): void {
  const at = locator('manual.yaml', text);
  const { keyPlaceOf } = readYaml(at, 0, text.length, manualSchema, ['*', 'variants.*']);
  for (const { id, values } of space.attributes) {
    const path = `variants.${id}`;
    list.id({ kind: 'variant', id }, keyPlaceOf(path), true);
    const members = Array.isArray(settings.variants[id]) ? path : `${path}.values`;
    for (const [i, value] of values.entries())
      list.id({ kind: 'value', id: value, variant: id }, placeOf(`${members}.${i}`), true);
  }
  for (const [i, condition] of settings.never.entries())
    list.written(condition, placeOf(`never.${i}`));
  for (const id of Object.keys(settings.rules))
    list.id({ kind: 'rule', id }, keyPlaceOf(`rules.${id}`));
}
