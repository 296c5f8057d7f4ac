import type { Root, Yaml as YamlNode } from 'mdast';
import { type FrontMatter, frontMatterSchema } from '../../schemas/front-matter.ts';
import { type Locator, readYaml, type Yaml } from '../source/index.ts';
import { spanOf } from './reading.ts';

/** Entries of the front matter that stand for themselves: a fault in one leaves the others. */
const parts = ['*', 'starts.*', 'leaves.*', 'items.*', 'items.*.*'];

/** The front matter of a procedure; undefined where the text does not begin with one. */
export function readFront(locator: Locator, root: Root): Yaml<FrontMatter> | undefined {
  const first = root.children[0];
  if (first?.type !== 'yaml') return undefined;
  const { start, end } = insideFences(locator.text, first);
  return readYaml(locator, start, end, frontMatterSchema, parts);
}

function insideFences(text: string, node: YamlNode): { start: number; end: number } {
  const { start, end } = spanOf(node);
  const firstLine = /^[^\r\n]*(?:\r\n|\r|\n)/.exec(text.slice(start, end))?.[0] ?? '';
  const closing = text.lastIndexOf('---', end);
  return { start: start + firstLine.length, end: Math.max(start + firstLine.length, closing) };
}
