import { judgedTorques } from '../reading/judged-torques.ts';
import type { Draft, Rule } from '../rule.ts';
import { torqueDraft } from '../telling/torque-draft.ts';

export const rule: Rule = {
  id: 'torque-low',
  family: 'values',
  level: 'note',
  *check(examined): Generator<Draft> {
    const { policy } = examined.linked.manual;
    for (const one of judgedTorques(examined)) {
      if (one.found.is !== 'too-low') continue;
      const percent = Number((one.found.share * 100).toPrecision(1));
      yield torqueDraft(rule.id, one, policy, `only ${percent} % of`);
    }
  },
};
