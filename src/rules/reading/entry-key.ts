import type { Item } from '../../catalogue/index.ts';
import { onceFor } from './once-for.ts';

/** A text that is an entry's own in the whole manual. */
export const entryKey = onceFor(({ place, id }: Item): string => `${place.file}#${id}`);
