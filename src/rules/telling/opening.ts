import { directive } from '../wording/directive.ts';
import { type Thing, the, theyAre } from '../wording/thing.ts';

/** The line that opens a drain or fill point. */
export function openingOf(point: Thing): string {
  const { item } = point;
  if (item?.kind === 'connection') return directive('disconnect', point);
  if (item?.kind !== 'control') return directive('remove', point);
  const open = item.positions.find((position) => position !== item.home) ?? '';
  return directive('set', point, { to: open });
}

/** The line that shuts it again. */
export function shuttingOf(point: Thing): string {
  const { item } = point;
  if (item?.kind === 'connection') return directive('connect', point);
  if (item?.kind === 'control') return directive('set', point, { to: item.home });
  return directive('install', point);
}

/** "the drain plug is shut", "neither the drain plug nor the drain cock is open" */
export function noneOpen(points: readonly Thing[]): string {
  const [only, ...others] = points;
  if (only !== undefined && others.length === 0) return `${theyAre(only)} shut`;
  return `neither ${points.map((point) => the(point)).join(' nor ')} is open`;
}
