/** States in the words of a message: "4 of 8 anvil bolts are out". Positions of controls speak for themselves. */
const stateWords: Readonly<Record<string, string>> = {
  tight: 'tight',
  snug: 'snug but not tight',
  joined: 'connected but not torqued',
  loose: 'loose',
  out: 'out',
  gone: 'thrown away',
  in: 'in',
  aside: 'set aside',
  made: 'connected',
  open: 'open',
  capped: 'capped',
  full: 'full',
  filled: 'filled but not bled',
  'part-drained': 'part drained',
  drained: 'drained',
  live: 'live',
  isolated: 'isolated',
  away: 'not fitted',
  fitted: 'fitted',
  pressurised: 'under pressure',
  relieved: 'relieved of pressure',
};

export function stateWord(state: string): string {
  return stateWords[state] ?? `at “${state}”`;
}
