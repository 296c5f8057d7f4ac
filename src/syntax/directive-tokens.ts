import type { Nodes } from 'mdast';
import { type Directives, directiveFromMarkdown } from 'mdast-util-directive';
import type { CompileContext, Extension, Token } from 'mdast-util-from-markdown';
import type { Processor } from 'unified';

/** Offsets in the text of the file, `end` exclusive. */
export interface Span {
  readonly start: number;
  readonly end: number;
}

/** An attribute as it stands in the source. `#x` has the name `id`, `.x` the name `class`. */
export interface AttributeToken {
  readonly name: string;
  /** The value with its character references resolved; empty where none is given. */
  readonly text: string;
  readonly key: Span;
  /** Inside the quotes, where there are any. */
  readonly value: Span | undefined;
  /** From the key to the end of the value, quotes included. */
  readonly whole: Span;
}

/** What the tree does not say of a directive: where its parts stand, and attributes given twice. */
export interface DirectiveTokens {
  /** `:::name[label]{attributes}` without the body. */
  readonly opening: Span;
  /** The closing fence of a block. */
  readonly closing: Span | undefined;
  readonly attributes: readonly AttributeToken[];
}

interface Tokens {
  opening: Span;
  closing: Span | undefined;
  attributes: AttributeToken[];
}

declare module 'mdast' {
  interface Data {
    tokens?: Tokens;
  }
}

/** A plugin that keeps the tokens of each directive; to be used after remark-directive. */
export function directiveTokens(this: Processor): void {
  const data = this.data();
  data.fromMarkdownExtensions = [...(data.fromMarkdownExtensions ?? []), recording()];
}

export function tokensOf(directive: Directives): DirectiveTokens {
  const tokens = directive.data?.tokens;
  if (tokens === undefined)
    throw new Error(`no tokens were kept of the directive ${directive.name}`);
  return tokens;
}

/** Moves the spans of a node's tokens, if it has any. */
export function moveTokens(node: Nodes, by: number): void {
  const tokens = node.data?.tokens;
  if (tokens === undefined) return;
  const moved = ({ start, end }: Span): Span => ({ start: start + by, end: end + by });
  tokens.opening = moved(tokens.opening);
  tokens.closing = tokens.closing && moved(tokens.closing);
  tokens.attributes = tokens.attributes.map((attribute) => ({
    ...attribute,
    key: moved(attribute.key),
    value: attribute.value && moved(attribute.value),
    whole: moved(attribute.whole),
  }));
}

/** The handlers of mdast-util-directive, each followed by one that keeps what the token says. */
function recording(): Extension {
  const base = directiveFromMarkdown();
  const enter = { ...base.enter };
  const exit = { ...base.exit };
  const after = (
    handlers: NonNullable<Extension['enter']>,
    type: string,
    keep: (tokens: Tokens, token: Token, context: CompileContext) => void,
  ): void => {
    const first = handlers[type];
    handlers[type] = function (this: CompileContext, token: Token) {
      first?.call(this, token);
      // Inside attributes, what is gathered stands above the directive on the stack.
      const tokens = this.stack.findLast(({ data }) => data?.tokens !== undefined)?.data?.tokens;
      if (tokens !== undefined) keep(tokens, token, this);
    };
  };
  for (const form of ['Container', 'Leaf', 'Text']) {
    const name = `directive${form}`;
    const open = enter[name];
    enter[name] = function (this: CompileContext, token: Token) {
      open?.call(this, token);
      const node = this.stack.at(-1);
      if (node === undefined) return;
      node.data = {
        ...node.data,
        tokens: { opening: spanOf(token), closing: undefined, attributes: [] },
      };
    };
    after(exit, `${name}Name`, endOpening);
    after(exit, `${name}Label`, endOpening);
    after(exit, `${name}Attributes`, endOpening);
    after(exit, `${name}AttributeName`, (tokens, token, context) => {
      const key = spanOf(token);
      const name = context.sliceSerialize(token);
      tokens.attributes.push({ name, text: '', key, value: undefined, whole: key });
    });
    for (const [shortcut, attribute] of [
      ['Id', 'id'],
      ['Class', 'class'],
    ] as const) {
      after(exit, `${name}Attribute${shortcut}Value`, (tokens, token, context) => {
        const value = spanOf(token);
        const key = { start: value.start - 1, end: value.end };
        tokens.attributes.push({
          name: attribute,
          text: lastText(context),
          key,
          value,
          whole: key,
        });
      });
    }
    after(exit, `${name}AttributeValue`, (tokens, token, context) => {
      setValue(tokens, spanOf(token), token.end.offset, lastText(context));
    });
    after(exit, `${name}AttributeValueLiteral`, (tokens, token, context) => {
      const { start, end } = spanOf(token);
      setValue(tokens, { start: start + 1, end: end - 1 }, end, lastText(context));
    });
  }
  after(exit, 'directiveContainerSequence', (tokens, token) => {
    const span = spanOf(token);
    if (span.start > tokens.opening.start) tokens.closing = span;
  });
  return { ...base, enter, exit };
}

function endOpening(tokens: Tokens, token: Token): void {
  tokens.opening = { start: tokens.opening.start, end: token.end.offset };
}

function setValue(tokens: Tokens, value: Span, end: number, text: string): void {
  const last = tokens.attributes.pop();
  if (last === undefined) return;
  tokens.attributes.push({ ...last, value, text, whole: { start: last.key.start, end } });
}

/** The text of the attribute that was read last, as mdast-util-directive understood it. */
function lastText(context: CompileContext): string {
  return context.data.directiveAttributes?.at(-1)?.[1] ?? '';
}

function spanOf({ start, end }: Token): Span {
  return { start: start.offset, end: end.offset };
}
