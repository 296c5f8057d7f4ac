import type { Signal } from '../../../schemas/catalogue.ts';
import type { Place } from '../../../schemas/finding.ts';
import { allBlocks } from '../../link/index.ts';
import type { Draft, Examined, Rule } from '../rule.ts';
import { graveWord, injuryWord, isOnlyDamage } from '../wording/harm.ts';
import { sentence } from '../wording/lists.ts';

export const rule: Rule = {
  id: 'signal-word',
  family: 'safety',
  level: 'warning',
  *check(examined): Generator<Draft> {
    for (const stated of statedHarms(examined)) {
      const fault = faultOf(stated.signal, stated.harm);
      if (fault === undefined) continue;
      yield {
        place: stated.place,
        procedure: stated.procedure,
        item: stated.item,
        message: sentence(
          `${fault.why}, so ${stated.signal.toUpperCase()} is the wrong signal word`,
        ),
        data: { signal: stated.signal, harm: stated.harm, expected: [...fault.expected] },
        help: `Write ${fault.expected.map((signal) => signal.toUpperCase()).join(' or ')}: the word goes by the worst harm to people that can be expected.`,
      };
    }
  },
};

interface Stated {
  readonly signal: Signal;
  readonly harm: string;
  readonly place: Place;
  readonly procedure: string | undefined;
  readonly item: string | undefined;
}

/** Signal words with their harm: of the catalogue's hazards, each once, and of panels that say it themselves. */
function* statedHarms({ entries, subjects }: Examined): Generator<Stated> {
  for (const item of entries) {
    if (item.kind !== 'hazard') continue;
    yield {
      signal: item.signal,
      harm: item.harm,
      place: item.placeOf('harm'),
      procedure: undefined,
      item: item.id,
    };
  }
  for (const { id: procedure, one } of subjects) {
    for (const block of allBlocks(one.procedure)) {
      if (block.type !== 'hazard' || block.signal === undefined || block.harm === undefined)
        continue;
      yield {
        signal: block.signal,
        harm: block.harm.text,
        place: block.harm.place,
        procedure,
        item: undefined,
      };
    }
  }
}

interface Fault {
  readonly why: string;
  readonly expected: readonly Signal[];
}

function faultOf(signal: Signal, harm: string): Fault | undefined {
  const grave = graveWord(harm);
  if (signal === 'danger' || signal === 'warning') {
    return isOnlyDamage(harm) ? { why: `“${harm}” hurts nobody`, expected: ['notice'] } : undefined;
  }
  if (grave !== undefined)
    return { why: `“${grave}” is death or serious injury`, expected: ['warning', 'danger'] };
  const injury = signal === 'notice' ? injuryWord(harm) : undefined;
  return injury === undefined
    ? undefined
    : { why: `“${injury}” is an injury`, expected: ['caution', 'warning', 'danger'] };
}
