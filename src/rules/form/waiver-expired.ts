import type { Draft, LateRule } from '../rule.ts';
import { factsOf } from '../telling/json.ts';
import { code } from '../wording/lists.ts';

export const rule: LateRule = {
  id: 'waiver-expired',
  family: 'form',
  level: 'error',
  *check(told): Generator<Draft> {
    for (const fact of told.facts('waiver-expired')) {
      const { place, procedure, rule, until, comeBack } = fact;
      yield {
        place,
        procedure,
        message: `This waiver of ${code(rule)} held until ${until}; ${backAgain(comeBack)}`,
        data: factsOf(fact, ['kind', 'procedure']),
        help:
          comeBack === 0
            ? 'Take the waiver out.'
            : 'Put right what it let pass, or have it looked at again and give it a later date.',
      };
    }
  },
};

function backAgain(count: number): string {
  if (count === 0) return 'nothing here needs it any more';
  return count === 1 ? 'its finding is told again' : `its ${count} findings are told again`;
}
