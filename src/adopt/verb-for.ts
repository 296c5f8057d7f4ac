import type { Verb } from '../../schemas/directives.ts';
import type { Item } from '../catalogue/index.ts';
import { verbsFor } from '../ledger/index.ts';
import type { Sighting } from './sighting.ts';

/** The verb that says the words of an entry; undefined where none of those meant can be done to it. */
export function verbFor(
  { work, object }: Sighting,
  item: Item,
  isAside: (item: Item) => boolean,
): Verb | undefined {
  const { said, words } = work.found;
  const meant = isOld(object) && said.verbs[0] === 'install' ? ['discard' as const] : said.verbs;
  const can = meant.filter(
    (verb) => verbsFor(item.kind).includes(verb) && (verb !== 'return' || isAside(item)),
  );
  const [first] = can;
  if (can.includes('torque') && can.includes('tighten')) {
    return 'torque' in item && item.torque !== undefined ? 'torque' : 'tighten';
  }
  if (
    item.kind === 'aid' &&
    /\b(?:back|away|off)\b/i.test(words + object) &&
    !can.includes('withdraw')
  )
    return 'withdraw';
  const isBack = said.verbs.includes('install') || said.verbs.includes('return');
  return isBack && item.kind === 'part' && isAside(item) ? 'return' : first;
}

/** "Put the old battery into the tray" puts nothing in. */
const isOld = (object: string): boolean =>
  /^\s*(?:(?:the|all|both|an?|\d+)\s+)*(?:old|used|worn)\s/i.test(object);
