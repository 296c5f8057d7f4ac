import type { Draft, Rule } from '../rule.ts';
import { type Ending, endingDraft, endingsIn } from '../telling/end-of-job.ts';
import { directive } from '../wording/directive.ts';
import { countIn } from '../wording/spread.ts';
import { someAre } from '../wording/thing.ts';

export const rule: Rule = {
  id: 'left-loose',
  family: 'balance',
  level: 'error',
  *check(examined): Generator<Draft> {
    const loose = endingsIn(examined, ['fastener'], ['loose'], ({ hasTorque }) => hasTorque);
    const notTight = endingsIn(
      examined,
      ['fastener'],
      ['loose', 'snug'],
      ({ hasTorque }) => !hasTorque,
    );
    for (const ending of [...loose, ...notTight]) {
      yield endingDraft(examined, ending, { message: message(ending), write: write(ending) });
    }
  },
};

function message({ fact, thing, count }: Ending): string {
  const how = countIn(fact.state, ['loose']) > 0 ? 'still loose' : 'put in but not tightened';
  return `${someAre(thing, count)} ${how} at the end`;
}

function write({ fact, thing, count }: Ending): string {
  return `Add ${directive(fact.hasTorque ? 'torque' : 'tighten', thing, { count })}`;
}
