import fc from 'fast-check';
import { expect, test } from 'vitest';
import { always, Machines } from '../../site/scripts/machines.ts';
import { renumber } from '../../site/scripts/renumber.ts';
import type { MachineCondition } from '../../src/applicability/index.ts';
import { type Element, elementsOf } from '../render/html-tree.ts';
import { bookOf, sheetIn } from '../render/linked-manual.ts';

type Whom = 'all' | 'yes' | 'no';

/** A step with its own condition, an action that is all of its words and has one, and steps inside it. */
interface StepPlan {
  readonly whom: Whom;
  readonly acts: Whom;
  readonly inner: readonly StepPlan[];
}
type Plan =
  | { readonly kind: 'steps'; readonly steps: readonly StepPlan[] }
  | { readonly kind: 'guarded'; readonly whom: Whom; readonly steps: readonly StepPlan[] }
  | { readonly kind: 'job' | 'placed' | 'placed in step'; readonly whom: Whom };

const whom = fc.constantFrom<Whom>('all', 'all', 'yes', 'no');
const innerStep = fc.record({ whom, acts: whom, inner: fc.constant([]) });
const step = fc.record({ whom, acts: whom, inner: fc.array(innerStep, { maxLength: 3 }) });
const steps = fc.array(step, { minLength: 1, maxLength: 4 });
const plans: fc.Arbitrary<readonly Plan[]> = fc.array(
  fc.oneof(
    fc.record({ kind: fc.constant('steps' as const), steps }),
    fc.record({ kind: fc.constant('guarded' as const), whom, steps }),
    fc.record({ kind: fc.constantFrom('job', 'placed', 'placed in step'), whom }),
  ),
  { minLength: 1, maxLength: 5 },
);

const settings = 'title: T\nvariants:\n  winch: [no, yes]\n';
/** A job with a step for some machines only, in the middle, and one inside another. */
const other = (machine: Whom): string =>
  [
    '---\nprocedure: other\ntitle: Other\n---\n',
    '1. Look.',
    ...(machine === 'no' ? [] : ['2. Turn it.\n', onlyYes(machine)]),
    '3. Stop it.\n\n   1. Wait.',
    ...(machine === 'no' ? [] : ['   2. Wait on.\n', `   ${onlyYes(machine)}`]),
    '   3. Look again.\n',
  ].join('\n');
const onlyYes = (machine: Whom): string =>
  `   ::step{time="1 min"${machine === 'all' ? ' when="winch = yes"' : ''}}`;
const front = `---
procedure: p
title: P
items:
  parts:
    lamp: { name: lamp }
---
`;

/** The procedure as Markdown: for all machines with their conditions, or only what one of them has, without. */
function markdown(plans: readonly Plan[], machine: Whom): string {
  let part = 0;
  const isIn = (one: Whom): boolean => machine === 'all' || one === 'all' || one === machine;
  const when = (one: Whom): string =>
    machine === 'all' && one !== 'all' ? ` when="winch = ${one}"` : '';
  const stepLines = (all: readonly StepPlan[], indent: string, isKept: boolean): string[] =>
    all.flatMap((one) => {
      part += 1;
      const words = `:check[Look at part ${part}]{item=lamp${when(one.acts)}}.`;
      const isStep = isKept && isIn(one.whom) && (one.inner.length > 0 || isIn(one.acts));
      const own = isIn(one.acts) ? words : '';
      const inner = stepLines(one.inner, `${indent}   `, isStep);
      const kept = one.inner.length > 0 && inner.length === 0 && own === '' ? false : isStep;
      if (!kept) return [];
      const mark = `${indent}   ::step{time="1 min"${when(one.whom)}}`;
      return [`${indent}1. ${own === '' ? 'Part none.' : own}`, mark, '', ...inner];
    });
  return [
    front,
    ...plans.flatMap((plan) => {
      if (!('steps' in plan)) {
        if (!isIn(plan.whom)) return [];
        const flag = plan.kind === 'job' ? '' : ' in-place';
        const perform = `::perform{procedure=other${flag}${when(plan.whom)}}`;
        return plan.kind === 'placed in step' ? [`1. ${perform}`, ''] : [perform, ''];
      }
      const isGuarded = plan.kind === 'guarded' && plan.whom !== 'all';
      const lines = stepLines(plan.steps, '', plan.kind === 'steps' || isIn(plan.whom));
      return isGuarded && machine === 'all' && plan.kind === 'guarded'
        ? [`:::when[winch = ${plan.whom}]`, ...lines, ':::', '']
        : [...lines, ''];
    }),
  ].join('\n');
}

const sheetOf = (text: string, machine: Whom) =>
  sheetIn(bookOf({ 'manual.yaml': settings, 'p.md': text, 'o.md': other(machine) }), 'p');

/** Number and part of each step of a page. */
const stepsIn = (body: readonly Element[]) =>
  body
    .filter(({ attributes }) => attributes['data-step'] !== undefined)
    .map((element) => ({ element, number: element.attributes['data-step'] ?? '' }));
const partOf = ({ text }: Element): string => /part (\d+)|Do Other/.exec(text)?.[0] ?? '';

const machines = new Machines({
  attributes: [{ id: 'winch', name: 'winch', values: ['no', 'yes'] }],
  never: [],
});

test.each(['yes', 'no'] as const)(
  'closed-up numbers are those of a sheet with nothing but what a machine with winch = %s has',
  (value) => {
    fc.assert(
      fc.property(plans, (plan) => {
        const choice = new Map([['winch', value]]);
        const whole = sheetOf(markdown(plan, 'all'), 'all');
        const body = elementsOf(whole.bodyHtml);
        const gone = new Set<Element>();
        for (const element of body) {
          const condition: MachineCondition = JSON.parse(
            element.attributes['data-when'] ?? JSON.stringify(always),
          );
          if (!machines.isPossible(condition, choice))
            for (const inner of [element, ...element.inner]) gone.add(inner);
        }
        const rows = stepsIn(body);
        const numbers = renumber(
          rows.map(({ element, number }) => ({ number, isShown: !gone.has(element) })),
        );
        const shown = rows.flatMap(({ element, number }) => {
          const now = numbers.get(number);
          return now === undefined ? [] : [`${now} ${partOf(element)}`];
        });
        const alone = sheetOf(markdown(plan, value), value);
        const expected = stepsIn(elementsOf(alone.bodyHtml)).map(
          ({ element, number }) => `${number} ${partOf(element)}`,
        );
        expect(shown.map((one) => one.split(' ')[0])).toEqual(
          expected.map((one) => one.split(' ')[0]),
        );
        const [count, ...some] = whole.stepCount;
        expect(count + some.filter((one) => machines.isPossible(one, choice)).length).toBe(
          alone.steps,
        );
      }),
      { numRuns: 60 },
    );
  },
);
