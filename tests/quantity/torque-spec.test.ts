import { describe, expect, test } from 'vitest';
import { describeProblem, parseTorqueSpec } from '../../src/quantity/index.ts';

describe('a torque specification', () => {
  test('one value is one stage', () => {
    expect(parseTorqueSpec('22 ± 2 N·m')).toMatchObject({
      value: { stages: [{ does: 'tighten', to: { form: 'tolerance' } }] },
      problems: [],
    });
  });

  test('stages with a back-off, a torque with an angle, and an angle alone', () => {
    const { value, problems } = parseTorqueSpec([
      '20 N·m',
      'back off 1/4 turn',
      '60 N·m + 90°',
      '90°',
    ]);
    expect(problems).toEqual([]);
    expect(value?.stages).toMatchObject([
      { does: 'tighten', to: { unit: 'N·m', amount: { value: 20 } } },
      { does: 'back-off', by: { unit: 'turn', amount: { value: 0.25 } } },
      { does: 'tighten-and-turn', to: { amount: { value: 60 } }, by: { amount: { value: 90 } } },
      { does: 'turn', by: { unit: '°', amount: { value: 90 } } },
    ]);
  });

  test.each(['back off 90°', 'Back off by 90°', 'back-off 90°', 'loosen 90°'])('%s', (text) => {
    expect(parseTorqueSpec([text]).value?.stages).toMatchObject([
      { does: 'back-off', by: { amount: { value: 90 } } },
    ]);
  });

  test('a problem says its stage, and points into the text of that stage', () => {
    const stages = ['20 N·m', 'back off 1/4 trun', '5 L', 'back off 20 N·m', '-90°'];
    const { value, problems } = parseTorqueSpec(stages);
    expect(value).toBeUndefined();
    const told = problems.map((problem) =>
      'stage' in problem
        ? `${problem.stage} ${problem.code} <${stages[problem.stage]?.slice(problem.start, problem.end)}>`
        : problem.code,
    );
    expect(told).toEqual([
      '1 unit-unknown <trun>',
      '2 stage-of-other-kind <5 L>',
      '3 stage-of-other-kind <20 N·m>',
      '4 negative <-90°>',
    ]);
    expect(problems.map(describeProblem)).toEqual([
      'Stage 2: The unit “trun” is not known. Did you mean “turn”?',
      'Stage 3: This is a volume; a stage needs a torque, an angle, or both, for example “20 N·m”, “60 N·m + 90°” or “back off 1/4 turn”.',
      'Stage 4: This is a torque; a stage needs an angle to back off by, for example “20 N·m”, “60 N·m + 90°” or “back off 1/4 turn”.',
      'Stage 5: “-90°” goes below zero, and an angle cannot. Write a value of zero or more.',
    ]);
  });

  test('a spelling is told and the stages still stand', () => {
    const { value, problems } = parseTorqueSpec(['20 Nm', '60 N·m']);
    expect(value?.stages).toHaveLength(2);
    expect(problems).toMatchObject([{ code: 'unit-spelling', stage: 0 }]);
  });

  test('no stage at all', () => {
    expect(parseTorqueSpec([])).toEqual({ problems: [{ code: 'no-stage' }] });
  });
});
