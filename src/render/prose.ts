import type { ElementContent } from 'hast';
import { h } from 'hastscript';
import type {
  Definition,
  FootnoteReference,
  Heading,
  Html,
  Image,
  ImageReference,
  Link,
  LinkReference,
  ListItem,
  Paragraph,
  Parents,
  PhrasingContent,
  RootContent,
  Text,
} from 'mdast';
import type { ContainerDirective, LeafDirective, TextDirective } from 'mdast-util-directive';
import { defaultHandlers, type Handlers, type State, toHast } from 'mdast-util-to-hast';
import { type Sentence, sentencesOf, valuesInText } from '../derive/index.ts';
import { actionMarkup } from './action-markup.ts';
import { linkAddress, pictureAddress } from './link-address.ts';
import type { SheetContext } from './sheet-context.ts';
import { shownWhen } from './shown-when.ts';

/**
 * Markdown as the content of a sheet. Raw HTML comes out as its text, links and pictures only with
 * addresses that the sheet allows; nothing else of the writer's text can become an element or attribute.
 * Values get the manual's second unit; not those in code.
 */
export function prose(
  nodes: readonly (RootContent | PhrasingContent)[],
  context: SheetContext,
): ElementContent[] {
  const tree = toHast(
    { type: 'root', children: [...context.definitions, ...nodes] },
    { handlers: handlersFor(context) },
  );
  return (tree.type === 'root' ? tree.children : [tree]).flatMap((node) =>
    node.type === 'element' || (node.type === 'text' && node.value !== '\n') ? [node] : [],
  );
}

/** One element where the whole sentence goes for some machines. */
function sentenceMarkup(
  state: State,
  node: Paragraph,
  { nodes, when }: Sentence,
): ElementContent[] {
  const inner = state.all({ ...node, children: [...nodes] });
  return when === undefined ? inner : [h('span.sentence', shownWhen(when), inner)];
}

type Content = ElementContent[] | ElementContent | undefined;

function handlersFor(context: SheetContext): Handlers {
  const linked = (url: string, inner: ElementContent[]): Content => {
    const href = linkAddress(url, context);
    return href === undefined ? inner : h('a', { href }, inner);
  };
  const notes: string[] = [];
  return {
    text: (state: State, node: Text) =>
      defaultHandlers.text(state, { ...node, value: valuesInText(node.value, context.policy) }),
    html: (_: State, node: Html) => ({ type: 'text', value: node.value }),
    heading: (state: State, node: Heading) => h('p.subheading', h('strong', state.all(node))),
    paragraph: (state: State, node: Paragraph) => {
      const [only, ...others] = node.children;
      if (only?.type !== 'image' || others.length > 0) {
        const sentences = sentencesOf(node.children, (directive) =>
          context.presence.when(context.actions.get(directive)?.when),
        );
        return h(
          'p',
          sentences.flatMap((sentence) => sentenceMarkup(state, node, sentence)),
        );
      }
      return h(
        'figure',
        picture(only.url, only.alt, context),
        only.title ? h('figcaption', only.title) : [],
      );
    },
    listItem: (state: State, node: ListItem, parent: Parents | undefined) =>
      defaultHandlers.listItem(state, { ...node, checked: null }, parent),
    link: (state: State, node: Link) => linked(node.url, state.all(node)),
    linkReference: (state: State, node: LinkReference) => {
      const definition = definitionOf(state, node);
      return definition ? linked(definition.url, state.all(node)) : state.all(node);
    },
    image: (_: State, node: Image) => picture(node.url, node.alt, context),
    imageReference: (state: State, node: ImageReference) =>
      picture(definitionOf(state, node)?.url ?? '', node.alt, context),
    footnoteReference: (state: State, node: FootnoteReference) => {
      const note = state.footnoteById.get(node.identifier.toUpperCase());
      if (note === undefined || notes.includes(node.identifier)) return undefined;
      notes.push(node.identifier);
      const inner = note.children.flatMap((child) =>
        child.type === 'paragraph' ? state.all(child) : [],
      );
      notes.pop();
      return h('span.note', [' (', ...inner, ')']);
    },
    textDirective: (state: State, node: TextDirective, parent: Parents | undefined) => {
      const action = context.actions.get(node);
      if (action !== undefined) {
        return actionMarkup(
          action,
          { label: state.all(node), isFirst: isFirst(node, parent) },
          context,
        );
      }
      const label = state.all(node);
      return [{ type: 'text', value: `:${node.name}` }, ...label];
    },
    leafDirective: (state: State, node: LeafDirective) => h('p', state.all(node)),
    containerDirective: (state: State, node: ContainerDirective) => state.all(node),
  };
}

function picture(
  url: string,
  alt: string | null | undefined,
  context: SheetContext,
): ElementContent {
  const src = pictureAddress(url, context);
  if (src === undefined) return { type: 'text', value: alt ?? '' };
  return h('img', { src, alt: alt ?? '', loading: 'lazy' });
}

function definitionOf(state: State, node: LinkReference | ImageReference): Definition | undefined {
  return state.definitionById.get(node.identifier.toUpperCase());
}

/** True where a sentence begins with the node. */
function isFirst(node: TextDirective, parent: Parents | undefined): boolean {
  const siblings: readonly RootContent[] = parent?.children ?? [];
  const before = siblings[siblings.indexOf(node) - 1];
  if (before === undefined) return true;
  return before.type === 'text' && /(^|[.!?:])\s*$/.test(before.value);
}
