import type { Definition, Nodes, Root } from 'mdast';
import type { Place } from '../../schemas/finding.ts';
import type { CatalogueFact } from '../catalogue/index.ts';
import type { Locator, SourceFact } from '../source/index.ts';
import type { Span } from './directive-tokens.ts';
import type { SyntaxFact } from './facts.ts';
import type { Link, Waiver } from './model.ts';

export type ReadingFact = SourceFact | SyntaxFact | CatalogueFact;

/** What is gathered while one file is read. */
export class Reading {
  readonly facts: ReadingFact[] = [];
  readonly links: Link[] = [];
  readonly waivers: Waiver[] = [];
  readonly text: string;
  readonly #locator: Locator;
  readonly #definitions: ReadonlyMap<string, Definition>;

  constructor(locator: Locator, root: Root) {
    this.text = locator.text;
    this.#locator = locator;
    this.#definitions = definitionsIn(root);
  }

  place({ start, end }: Span): Place {
    return this.#locator.place(start, end);
  }

  placeOf(node: Nodes): Place {
    return this.place(spanOf(node));
  }

  source({ start, end }: Span): string {
    return this.text.slice(start, end);
  }

  /** What `[words][name]` refers to. */
  definition(identifier: string): Definition | undefined {
    return this.#definitions.get(identifier);
  }
}

export function spanOf(node: Nodes): Span {
  const start = node.position?.start.offset;
  const end = node.position?.end.offset;
  if (start === undefined || end === undefined) throw new Error(`a ${node.type} has no position`);
  return { start, end };
}

/** As CommonMark has it, the first definition of a name counts. */
function definitionsIn(root: Root): Map<string, Definition> {
  const definitions = new Map<string, Definition>();
  const open: Nodes[] = [root];
  for (let node = open.pop(); node !== undefined; node = open.pop()) {
    if (node.type === 'definition' && !definitions.has(node.identifier)) {
      definitions.set(node.identifier, node);
    }
    if (!('children' in node)) continue;
    for (let i = node.children.length - 1; i >= 0; i--) {
      const child = node.children[i];
      if (child !== undefined) open.push(child);
    }
  }
  return definitions;
}
