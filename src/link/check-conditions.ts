import { resolveCondition, type Space } from '../applicability/index.ts';
import type { CatalogueFact } from '../catalogue/index.ts';
import { locator, placeWithin } from '../source/index.ts';
import type { Block, Procedure, When } from '../syntax/index.ts';
import { allActions, allBlocks } from './walk.ts';

/** Conditions that name what the manual does not have, or that hold for no machine or for every one. */
export function checkConditions(procedure: Procedure, space: Space): readonly CatalogueFact[] {
  const text = locator(procedure.file, procedure.text);
  const labels = labelsIn(procedure);
  return conditionsOf(procedure).flatMap(({ condition, written, place }) =>
    resolveCondition(space, condition)
      .problems.filter((problem) => problem.code !== 'unknown-branch' || !labels.has(problem.label))
      .map(
        (problem): CatalogueFact => ({
          kind: 'condition-wrong',
          place: placeWithin(text, place, written, problem),
          written,
          problem,
        }),
      ),
  );
}

/** What the technician may find: a condition may name it. */
function labelsIn(procedure: Procedure): ReadonlySet<string> {
  const blocks = [...allBlocks(procedure)];
  const ways = blocks.flatMap((block) => (block.type === 'branch' ? block.ways : []));
  return new Set(ways.map((way) => way.label));
}

function conditionsOf(procedure: Procedure): readonly When[] {
  const whens: (When | undefined)[] = [procedure.when];
  for (const block of allBlocks(procedure)) whens.push(...ofBlock(block));
  for (const action of allActions(procedure)) whens.push(action.when);
  return whens.filter((when) => when !== undefined);
}

function ofBlock(block: Block): readonly (When | undefined)[] {
  switch (block.type) {
    case 'steps':
      return block.steps.map((step) => step.when);
    case 'hazard':
    case 'torque':
    case 'fluid':
    case 'guarded':
    case 'perform':
    case 'reverse':
      return [block.when];
    default:
      return [];
  }
}
