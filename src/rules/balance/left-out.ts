import type { Draft, Rule } from '../rule.ts';
import { type Ending, endingDraft, endingsIn } from '../telling/end-of-job.ts';
import { directive } from '../wording/directive.ts';
import { countIn } from '../wording/spread.ts';
import { isMany, someAre, the } from '../wording/thing.ts';

export const rule: Rule = {
  id: 'left-out',
  family: 'balance',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const ending of endingsIn(examined, ['fastener', 'part'], ['out', 'gone'])) {
      yield endingDraft(examined, ending, { message: message(ending), write: write(ending) });
    }
  },
};

function message({ fact, thing, count }: Ending): string {
  const gone = countIn(fact.state, ['gone']);
  if (gone === 0) return `${someAre(thing, count)} still out at the end`;
  const noNew = gone === 1 ? 'no new one goes in' : 'no new ones go in';
  if (gone === count) return `${someAre(thing, gone)} thrown away and ${noNew}`;
  return `${someAre(thing, count)} still out at the end, and for ${gone} thrown away ${noNew}`;
}

function write({ fact, thing, count }: Ending): string {
  const isNew = countIn(fact.state, ['gone']) > 0;
  const lines = [directive('install', thing, { count, isNew })];
  if (fact.hasTorque) lines.push(directive('torque', thing));
  else if (needsTightening(thing.item)) lines.push(directive('tighten', thing));
  return `Add ${lines.join(' and ')} where ${the(thing, count)} ${isMany(thing, count) ? 'go' : 'goes'} back`;
}

const needsTightening = (item: Ending['thing']['item']): boolean =>
  item?.kind === 'fastener' && item.tightness !== 'hand-tight';
