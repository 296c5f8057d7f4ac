import { judgedTorques } from '../reading/judged-torques.ts';
import type { Draft, Rule } from '../rule.ts';
import { torqueDraft } from '../telling/torque-draft.ts';

export const rule: Rule = {
  id: 'torque-implausible',
  family: 'values',
  level: 'warning',
  *check(examined): Generator<Draft> {
    const { policy } = examined.linked.manual;
    for (const one of judgedTorques(examined)) {
      if (one.found.is !== 'too-high') continue;
      const { share } = one.found;
      const much =
        share < 2 ? `${Math.max(101, Math.round(share * 100))} % of` : `${share.toFixed(1)} times`;
      yield torqueDraft(rule.id, one, policy, much);
    }
  },
};
