import type { PullListData } from '../../schemas/pull-list.ts';
import {
  documentNumber,
  itemName,
  ownerOf,
  type PullLine,
  type PullList,
} from '../derive/index.ts';
import type { LinkedManual } from '../link/index.ts';
import { type Single, unitRow } from '../quantity/index.ts';
import { pullNote, pullPartNumber, pullSpecification } from './pull-words.ts';

type Line = PullListData['lines'][number];

/** A pull list as data for programs; amounts with UCUM codes. */
export function pullData(list: PullList, manual: LinkedManual): PullListData {
  const { title, edition } = manual.manual.settings;
  return {
    manual: { title, ...(edition === undefined ? {} : { edition: String(edition) }) },
    ...(list.for === undefined ? {} : { for: list.for }),
    procedures: list.procedures.map((one) => {
      const { id, front } = one.procedure;
      const revision = front.revision === undefined ? {} : { revision: front.revision };
      return { id, title: front.title, document: documentNumber(manual, one), ...revision };
    }),
    lines: list.lines.map((line) => lineData(line, manual)),
  };
}

function lineData(line: PullLine, manual: LinkedManual): Line {
  const { kind, item, one, named, count, quantity, containers = [], isMost, when } = line;
  const partNumber = pullPartNumber(line);
  const specification = pullSpecification(line, manual.manual.policy);
  const note = pullNote(line);
  return {
    kind,
    item: item.id,
    of: ownerOf(manual, one, item),
    name: named ?? itemName(item),
    ...(named === undefined ? {} : { goesWith: itemName(item) }),
    ...(partNumber === undefined ? {} : { partNumber }),
    ...(specification === undefined ? {} : { specification }),
    ...(note === undefined ? {} : { note }),
    ...(count === undefined ? {} : { count }),
    ...(quantity === undefined ? {} : { quantity: amountData(quantity) }),
    ...(isMost ? { upTo: true } : {}),
    ...(containers.length === 0
      ? {}
      : { containers: containers.map(({ count, size }) => ({ count, size: amountData(size) })) }),
    ...(when === undefined ? {} : { when: caseData(when) }),
    procedures: line.procedures.map(({ procedure }) => procedure.id),
  };
}

function caseData({ condition, words }: NonNullable<PullLine['when']>): NonNullable<Line['when']> {
  return { ...(condition === undefined ? {} : { condition }), words };
}

function amountData(single: Single): { value: number; unit: string } {
  const { amount, unit } = single;
  return { value: amount.value, unit: unitRow(unit).ucum };
}
