/** Something that changes how full a circuit is, volumes in one unit. */
export interface Flow {
  /** `lose` is what runs out where a line is opened. */
  readonly does: 'drain' | 'lose' | 'fill';
  /** All of it, or to the mark, where there is none. `slack` is how far off a written amount may be. */
  readonly amount: { readonly volume: number; readonly slack: number } | undefined;
  /** Whether it is done on every machine and way through; `often` is once or more. */
  readonly sureness: 'sure' | 'maybe' | 'often';
}

export type LevelFault =
  /** More goes in, or out, at once than the circuit holds. */
  | { readonly fault: 'over-capacity'; readonly flow: number; readonly by: number }
  /** More goes in than went out. */
  | { readonly fault: 'over-out'; readonly flow: number; readonly out: number }
  /** At the end, less went in than went out; `flow` is the last that went in or out. */
  | { readonly fault: 'short'; readonly flow: number; readonly missing: number };

export interface LevelStory {
  readonly faults: readonly LevelFault[];
  /** The most that all flows together let out; undefined where that hangs on how often something is repeated. */
  readonly collected: number | undefined;
}

/**
 * Follows the level of one circuit through a job. What is not known for certain is kept as the least and the most that
 * can be missing from the mark, and only what is wrong for all of it is told. `missing` is what is missing at the
 * start, undefined where that cannot be known.
 */
export function followLevel(
  flows: readonly Flow[],
  capacity: { readonly low: number; readonly high: number; readonly slack: number },
  missing: number | undefined,
): LevelStory {
  const faults: LevelFault[] = [];
  let least = missing ?? 0;
  let most = missing ?? capacity.high;
  let slack = missing === 0 ? 0 : capacity.slack;
  let collected: number | undefined = 0;
  const refills = flows.some(({ does, sureness }) => does === 'fill' && sureness === 'often');
  /** The most that may be in the circuit. */
  let held = capacity.high - (missing ?? 0);
  for (const [flow, { does, amount, sureness }] of flows.entries()) {
    const volume = amount?.volume ?? capacity.high;
    const own = (amount?.slack ?? 0) + capacity.slack;
    if (amount !== undefined && volume > capacity.high + own) {
      faults.push({ fault: 'over-capacity', flow, by: volume - capacity.high });
    } else if (
      does === 'fill' &&
      amount !== undefined &&
      volume > most + slack + amount.slack + tiny
    ) {
      faults.push({ fault: 'over-out', flow, out: most });
    }
    if (does === 'fill') {
      const left = (before: number): number =>
        amount === undefined ? 0 : Math.max(0, before - volume);
      // Of a fill that is only sometimes done, or more than once, the other case stays open.
      if (sureness !== 'maybe') most = left(most);
      least = sureness === 'often' ? 0 : left(least);
      held = Math.min(capacity.high, held + volume);
    } else {
      const out = Math.min(volume, held);
      // A circuit that is emptied, and not filled again in between, is empty after the first round.
      const isBounded = sureness !== 'often' || out === 0 || (amount === undefined && !refills);
      collected = collected === undefined || !isBounded ? undefined : collected + out;
      held -= out;
      if (sureness !== 'maybe')
        least = amount === undefined ? capacity.low : Math.min(capacity.low, least + volume);
      most = sureness === 'often' ? capacity.high : Math.min(capacity.high, most + volume);
    }
    if (amount !== undefined) slack += amount.slack;
    else if (sureness !== 'maybe') slack = does === 'fill' ? 0 : capacity.slack;
  }
  if (least > slack + tiny && flows.length > 0)
    faults.push({ fault: 'short', flow: flows.length - 1, missing: least });
  return { faults, collected };
}

/** What adding doubles may leave over. */
const tiny = 1e-9;
