import { Composer, type CST, type Document, Lexer, Parser } from 'yaml';
import type { Locator } from './place.ts';
import { buildNode } from './yaml-build.ts';
import type { YamlNode } from './yaml-node.ts';
import { syntaxFaults, tabInIndent, tagFaults, type YamlFault } from './yaml-reason.ts';

/** Nothing that a person writes goes deeper; it keeps all later walks off the end of the stack. */
const deepest = 64;

export interface YamlTree {
  readonly root: YamlNode;
  /** By place. */
  readonly faults: readonly YamlFault[];
}

/** Reads the YAML between two offsets of a text. An empty document is an empty map. Never throws. */
export function yamlTree(locator: Locator, start: number, end: number): YamlTree {
  const source = locator.text.slice(start, end);
  const { tokens, openQuote, tooDeepAt } = tokensOf(source);
  if (tooDeepAt !== undefined) {
    const reason = `nested more than ${deepest} levels deep`;
    const at = start + tooDeepAt;
    return { root: emptyMap(start), faults: [{ start: at, end: at + 1, reason, isFatal: true }] };
  }
  const documents = compose(tokens, source);
  const [first, second] = documents;
  const built = buildNode(first?.contents ?? null, locator, start);
  const faults = [
    ...syntaxFaults(
      documents.flatMap((document) => document.errors),
      source,
      start,
      openQuote,
    ),
    ...tagFaults(
      documents.flatMap((document) => document.warnings),
      source,
      start,
    ),
    ...(second ? [secondDocument(second, start)] : []),
    ...built.faults,
  ];
  return {
    root: built.root.type === 'scalar' && built.root.value === null ? emptyMap(start) : built.root,
    faults: withoutFollowers(faults)
      // The library marks the first character that is missing, which at the end is outside.
      .map((fault) => ({
        ...fault,
        start: Math.min(fault.start, end),
        end: Math.min(fault.end, end),
      }))
      .sort((a, b) => a.start - b.start || a.end - b.end),
  };
}

/** Behind a tab nothing lines up: what is told there follows from it, mostly a tab in each line. */
function withoutFollowers(faults: readonly YamlFault[]): readonly YamlFault[] {
  const tabs = faults.filter(({ reason }) => reason === tabInIndent);
  const first = Math.min(...tabs.map(({ start }) => start));
  const more = tabs.length - 1;
  return faults
    .filter(({ start }) => start <= first)
    .map((fault) =>
      fault.start === first && more > 0
        ? {
            ...fault,
            reason: `tabs in the indentation, here and in ${more} more ${more === 1 ? 'line' : 'lines'}; use spaces`,
          }
        : fault,
    );
}

interface Tokens {
  readonly tokens: readonly CST.Token[];
  /** The last quote that nothing closes. The library tells only the end of the text for it. */
  readonly openQuote: number | undefined;
  readonly tooDeepAt: number | undefined;
}

function tokensOf(source: string): Tokens {
  const parser = new Parser();
  const tokens: CST.Token[] = [];
  let openQuote: number | undefined;
  for (const lexeme of new Lexer().lex(source)) {
    const { offset } = parser;
    for (const token of parser.next(lexeme)) tokens.push(token);
    if (parser.stack.length > deepest) return { tokens, openQuote, tooDeepAt: offset };
    const mark = lexeme[0];
    if ((mark === '"' || mark === "'") && (lexeme.length === 1 || !lexeme.endsWith(mark)))
      openQuote = offset;
  }
  for (const token of parser.end()) tokens.push(token);
  return { tokens, openQuote, tooDeepAt: undefined };
}

function compose(tokens: readonly CST.Token[], source: string): Document.Parsed[] {
  const composer = new Composer({
    schema: 'core',
    merge: false,
    resolveKnownTags: false,
    // Our own look is linear in the number of keys and keeps the place of the first.
    uniqueKeys: false,
  });
  return [...composer.compose(tokens, true, source.length)];
}

function secondDocument(document: Document.Parsed, start: number): YamlFault {
  const at = start + (document.contents?.range[0] ?? document.range[0]);
  const reason =
    'a second document begins here, and a file holds one; take out the line --- before it';
  return { start: at, end: at + 1, reason, isFatal: true };
}

function emptyMap(at: number): YamlNode {
  return {
    type: 'map',
    span: { start: at, end: at },
    key: undefined,
    isFlow: true,
    entries: new Map(),
  };
}
