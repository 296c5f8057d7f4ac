import type { ElementContent } from 'hast';
import { h } from 'hastscript';
import type { Heading, Html, Image, Link, Text } from 'mdast';
import { defaultHandlers, type State, toHast } from 'mdast-util-to-hast';
import type { Place } from '../../schemas/finding.ts';
import { valuesInText } from '../derive/index.ts';
import { targetOf } from '../link/index.ts';
import type { UnitPolicy } from '../quantity/index.ts';
import { parseMarkdownFragment } from '../syntax/index.ts';
import { toHtml } from './to-html.ts';

/** The manual's standing safety text, Markdown without directives, as HTML. Links lead to other hosts only. */
export function standingText(markdown: string, place: Place, policy: UnitPolicy): string {
  return toHtml(standingMarkup(markdown, place, policy));
}

/** The same before it is written out. */
export function standingMarkup(
  markdown: string,
  place: Place,
  policy: UnitPolicy,
): ElementContent[] {
  const children = [...parseMarkdownFragment(markdown, place).value];
  const tree = toHast(
    { type: 'root', children },
    {
      handlers: {
        text: (state: State, node: Text) =>
          defaultHandlers.text(state, { ...node, value: valuesInText(node.value, policy) }),
        html: (_: State, node: Html) => ({ type: 'text', value: node.value }),
        heading: (state: State, node: Heading) => h('p.subheading', h('strong', state.all(node))),
        link: (state: State, node: Link) =>
          targetOf(place.file, node.url).kind === 'elsewhere'
            ? h('a', { href: node.url }, state.all(node))
            : state.all(node),
        image: (_: State, node: Image) => ({ type: 'text', value: node.alt ?? '' }),
        footnoteReference: () => undefined,
      },
    },
  );
  const content = tree.type === 'root' ? tree.children : [tree];
  return content.flatMap((node) => (node.type === 'element' || node.type === 'text' ? [node] : []));
}
