import type { PhrasingContent, Text } from 'mdast';
import type { TextDirective } from 'mdast-util-directive';
import type {} from 'mdast-util-to-hast';
import { anyOf, type MachineCondition } from '../applicability/index.ts';

/** A sentence of a paragraph. */
export interface Sentence {
  readonly nodes: readonly PhrasingContent[];
  /** The machines for which it says anything: it is made of nothing but actions that hold for some of them. */
  readonly when: MachineCondition | undefined;
}

type WhenOf = (node: TextDirective) => MachineCondition | undefined;

/** The words that only join actions, in whatever punctuation. */
const onlyJoins = /^[\s\p{P}]*(?:(?:and|or|then|and then)[\s\p{P}]*)?$/u;
const joinBefore = /(?:\s*,)?\s+(?:and|or|then|and then)\s+$|\s*,\s+$/;
const joinAfter = /^(?:\s*,)?\s+(?:and|or|then|and then)\s+|^\s*,\s+/;

/**
 * The sentences of a paragraph that has actions for some machines only. `whenOf` says for which. Words that join
 * such an action to its neighbours become nodes of their own, with the name `join`, so that they can go with it.
 */
export function sentencesOf(
  children: readonly PhrasingContent[],
  whenOf: WhenOf,
): readonly Sentence[] {
  const isSometimes = (node: PhrasingContent): boolean =>
    node.type === 'textDirective' && whenOf(node) !== undefined;
  if (!children.some(isSometimes)) return [{ nodes: children, when: undefined }];
  return split(children).map((nodes) => {
    const conditions = nodes.flatMap((node) =>
      node.type === 'textDirective' ? [whenOf(node)] : [],
    );
    const isPlain = conditions.every((one) => one === undefined);
    const isBare = nodes.every(
      (node) =>
        node.type === 'textDirective' || (node.type === 'text' && onlyJoins.test(node.value)),
    );
    return {
      nodes: isPlain ? nodes : withJoins(nodes, whenOf),
      when: isBare && conditions.length > 0 ? anyOf(conditions) : undefined,
    };
  });
}

/** At the ends of sentences, which stay with the sentence that they end. */
function split(children: readonly PhrasingContent[]): PhrasingContent[][] {
  const sentences: PhrasingContent[][] = [[]];
  for (const node of children) {
    if (node.type !== 'text') {
      sentences.at(-1)?.push(node);
      continue;
    }
    const parts = node.value.split(/(?<=[.!?](?:\s+|$))(?=\S|$)/).filter((part) => part !== '');
    for (const value of parts) {
      sentences.at(-1)?.push({ ...node, value });
      if (/[.!?]\s*$/.test(value)) sentences.push([]);
    }
  }
  return sentences.filter((nodes) => nodes.length > 0);
}

function withJoins(nodes: readonly PhrasingContent[], whenOf: WhenOf): PhrasingContent[] {
  const isSometimes = (node: PhrasingContent | undefined): boolean =>
    node?.type === 'textDirective' && whenOf(node) !== undefined;
  return nodes.flatMap((node, i): PhrasingContent[] => {
    if (node.type !== 'text') return [node];
    const after = isSometimes(nodes[i - 1]) ? (joinAfter.exec(node.value)?.[0] ?? '') : '';
    const rest = node.value.slice(after.length);
    const before = isSometimes(nodes[i + 1]) ? (joinBefore.exec(rest)?.[0] ?? '') : '';
    const middle = rest.slice(0, rest.length - before.length);
    const words: Text[] = middle === '' ? [] : [{ type: 'text', value: middle }];
    return [...join(after), ...words, ...join(before)];
  });
}

const join = (value: string): Text[] =>
  value === ''
    ? []
    : [{ type: 'text', value, data: { hName: 'span', hProperties: { dataJoin: true } } }];
