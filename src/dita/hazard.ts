import type { ElementContent } from 'hast';
import { hazardWords, valuesInText } from '../derive/index.ts';
import { avoidance, onlyFor, type XmlElement, type XmlNode, xml } from '../render/index.ts';
import type { HazardPanel } from '../syntax/index.ts';
import { inline, plainOnly, wordsOnly } from './inline.ts';
import { productOf } from './product.ts';
import type { TaskTopic } from './topic.ts';

/**
 * A safety message of the hazard statement domain. Its type is the signal word; what the hazard is, what it
 * does and how to avoid it are the three parts of ANSI Z535.6 as well.
 */
export function hazardStatement(panel: HazardPanel, topic: TaskTopic): XmlElement {
  const { context } = topic;
  const { one, policy } = context;
  const words = hazardWords(panel, one);
  const only = inline(onlyFor(panel.when, context), topic, plainOnly);
  const harm = valuesInText(words.harm, policy);
  const product = productOf(context.presence.hazard(panel), topic);
  return xml('hazardstatement', { type: words.signal, product }, [
    xml('messagepanel', {}, [
      xml('typeofhazard', {}, [...only, valuesInText(words.hazard, policy)]),
      ...(harm === '' ? [] : [xml('consequence', {}, [harm])]),
      xml('howtoavoid', {}, avoidWords(avoidance(words, context), topic)),
    ]),
  ]);
}

/** Only words and simple lists may stand there: paragraphs run on, and steps become entries of a list. */
function avoidWords(content: readonly ElementContent[], topic: TaskTopic): XmlNode[] {
  return content.flatMap((node, i): XmlNode[] => {
    if (node.type !== 'element' || !['ul', 'ol'].includes(node.tagName))
      return [...(i === 0 ? [] : [' ']), ...inline([node], topic, wordsOnly).filter(isSaid)];
    const items = node.children.filter((child) => child.type === 'element');
    return items.length === 0
      ? []
      : [
          xml(
            'sl',
            {},
            items.map((item) => xml('sli', {}, inline(item.children, topic, wordsOnly))),
          ),
        ];
  });
}

const isSaid = (node: XmlNode): boolean => node !== ' ';
