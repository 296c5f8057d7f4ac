import type { CaseData } from '../../schemas/procedure-parts.ts';
import { type Condition, printCondition } from '../applicability/index.ts';
import { onlyWords } from '../derive/index.ts';
import type { LinkedManual } from '../link/index.ts';

type Holds = { readonly condition: Condition } | undefined;

/** When something holds, for programs: where all of some conditions do. Undefined is always. */
export function caseData(
  conditions: readonly Holds[],
  { manual }: LinkedManual,
): CaseData | undefined {
  const condition = together(
    conditions.flatMap((one) => (one === undefined ? [] : [one.condition])),
  );
  if (condition === undefined) return undefined;
  const words = onlyWords(condition, manual.settings.variants).replace(/^Only /, '');
  return isOfMachines(condition) ? { condition: printCondition(condition), words } : { words };
}

function together(parts: readonly Condition[]): Condition | undefined {
  const [first, second, ...others] = parts;
  if (first === undefined || second === undefined) return first;
  return { kind: 'all', of: [first, second, ...others], start: 0, end: 0 };
}

/** False where a part of it is what a technician finds: a program that knows the machine cannot tell. */
function isOfMachines(condition: Condition): boolean {
  switch (condition.kind) {
    case 'found':
      return false;
    case 'not':
      return isOfMachines(condition.of);
    case 'all':
    case 'any':
      return condition.of.every(isOfMachines);
    default:
      return true;
  }
}
