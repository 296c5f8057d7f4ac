import { choiceIn, queryWith } from './choice-text.ts';
import { keepText, keptText } from './kept-text.ts';
import type { Choice, Machines } from './machines.ts';

/** The choice that the address asks for, else the one that this device has kept for the manual. */
export function choiceAtStart(key: string, machines: Machines): Choice {
  const asked = choiceIn(location.search, machines) ?? choiceIn(keptText(key) ?? '', machines);
  return machines.allowed(asked ?? new Map());
}

/** Keeps a choice on the device, in the address, and in the links of a page that has no other way to hand it on. */
export function keepChoice(key: string, machines: Machines, choice: Choice): void {
  const isKept = keepText(key, queryWith('', machines, choice));
  try {
    history.replaceState(
      history.state,
      '',
      `${queryWith(location.search, machines, choice) || location.pathname}${location.hash}`,
    );
  } catch {
    // Some browsers let no page from disk change its address; its links still hand the choice on.
  }
  if (isKept && location.protocol !== 'file:') return;
  for (const link of document.querySelectorAll<HTMLAnchorElement>('a[href]')) {
    const isHere = link.getAttribute('href')?.startsWith('#') ?? true;
    if (isHere || link.protocol !== location.protocol || link.host !== location.host) continue;
    if (link.pathname.endsWith('.html')) link.search = queryWith(link.search, machines, choice);
  }
}
