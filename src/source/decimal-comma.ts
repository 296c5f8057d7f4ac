import type { Span, YamlNode } from './yaml-node.ts';

/** A value in braces that its decimal comma has cut in pieces: `{ gap: 0,10..0,25 mm }` has the keys gap, 10..0 and 25 mm. */
export interface CommaValue extends Span {
  readonly path: string;
  /** The whole, as it was meant to be read. */
  readonly written: string;
}

/** Those below a node; of a key that begins with a digit and follows the comma without a space, nothing else can be meant. */
export function commaValues(node: YamlNode, path: readonly string[] = []): readonly CommaValue[] {
  if (node.type === 'scalar') return [];
  if (node.type === 'list')
    return node.items.flatMap((item, i) => commaValues(item, [...path, String(i)]));
  const found: CommaValue[] = [];
  let last: CommaValue | undefined;
  for (const [key, value] of node.entries) {
    const isRest =
      node.isFlow && last !== undefined && /^\d/.test(key) && value.key?.start === last.end + 1;
    if (isRest && last !== undefined && isEmpty(value)) {
      if (found.at(-1) === last) found.pop();
      last = { ...last, end: value.key?.end ?? last.end, written: `${last.written},${key}` };
      found.push(last);
      continue;
    }
    last =
      value.type === 'scalar' && /\d$/.test(value.source)
        ? { ...value.span, path: [...path, key].join('.'), written: value.source }
        : undefined;
    found.push(...commaValues(value, [...path, key]));
  }
  return found;
}

const isEmpty = (node: YamlNode): boolean => node.type === 'scalar' && node.source === '';
