import type { Change, Redline } from '../../schemas/redline.ts';
import { counted } from '../report/index.ts';
import { compareText } from '../source/index.ts';
import { type RiskClass, riskClasses } from './risks.ts';

export interface Home {
  /** The machine whose catalogue it is, the procedure, or manual.yaml. */
  readonly kind: 'manual' | 'machine' | 'procedure';
  readonly id: string;
  readonly changes: readonly Change[];
}

/** A redline as it is read: what can hurt by class, the rest by where it stands, words last. */
export interface Grouped {
  readonly risks: readonly (RiskClass & { readonly changes: readonly Change[] })[];
  readonly others: readonly Home[];
  readonly words: readonly Home[];
}

export function grouped({ changes }: Redline): Grouped {
  const risks = riskClasses
    .filter(({ isRisk }) => isRisk)
    .map((one) => ({ ...one, changes: changes.filter(({ risk }) => risk === one.id) }))
    .filter((one) => one.changes.length > 0);
  const told = new Set(risks.flatMap((one) => one.changes));
  const rest = changes.filter((change) => !told.has(change));
  return {
    risks,
    others: homesOf(rest.filter(({ risk }) => risk !== 'words')),
    words: homesOf(rest.filter(({ risk }) => risk === 'words')),
  };
}

const kinds: readonly Home['kind'][] = ['manual', 'machine', 'procedure'];

/** By manual, machine, procedure, and id. */
function homesOf(changes: readonly Change[]): readonly Home[] {
  const groups = Map.groupBy(changes, (change) => {
    const { kind, id } = homeOf(change);
    return `${kinds.indexOf(kind)} ${id}`;
  });
  return [...groups]
    .sort(([a], [b]) => compareText(a, b))
    .flatMap(([, inside]) => {
      const [first] = inside;
      return first === undefined ? [] : [{ ...homeOf(first), changes: inside }];
    });
}

export function homeOf({ procedure, machine }: Change): Pick<Home, 'kind' | 'id'> {
  if (procedure !== undefined) return { kind: 'procedure', id: procedure };
  return machine === undefined ? { kind: 'manual', id: '' } : { kind: 'machine', id: machine };
}

/** "16 changes, 10 of them to look at first". */
export function countsWords(redline: Redline): string {
  const { risks } = grouped(redline);
  const first = risks.reduce((sum, one) => sum + one.changes.length, 0);
  const { length } = redline.changes;
  if (length === 0) return 'Nothing changed in meaning.';
  const look = first === 0 ? 'none of them with risk' : `${first} of them to look at first`;
  return `${counted(length, 'change')}, ${look}.`;
}
