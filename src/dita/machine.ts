import type { MachineEntry, MachinePage, XmlElement, XmlNode } from '../render/index.ts';
import { xml } from '../render/index.ts';
import { linksTo } from './link-to.ts';
import { reference } from './reference.ts';
import type { Topic } from './topic.ts';

/** The entries of a machine, by kind, as a reference topic: what the steps of the tasks point to. */
export function machine(page: MachinePage, topic: Topic, language: string): XmlElement {
  const { note } = page;
  const sections = page.groups
    .filter(({ entries }) => entries.length > 0)
    .map(({ heading, entries }) =>
      xml('section', {}, [
        xml('title', {}, [heading]),
        xml(
          'dl',
          {},
          entries.map((entry) => entryOf(entry, topic)),
        ),
      ]),
    );
  const about = note === undefined ? [] : [xml('section', {}, [xml('p', {}, [note])])];
  return reference(topic.id, page.name, [...about, ...sections], language);
}

function entryOf(entry: MachineEntry, topic: Topic): XmlElement {
  const { id, name, partNumber, picture, note, facts, usedIn } = entry;
  const fact = (label: string, content: readonly XmlNode[]): XmlElement =>
    xml('li', {}, [`${label}: `, ...content]);
  const listed = [
    ...(partNumber === undefined ? [] : [fact('Part number', [partNumber])]),
    ...facts.map(([label, value, links]) =>
      fact(label, [
        value,
        ...(value !== '' && links.length > 0 ? [', '] : []),
        ...linksTo(links, topic),
      ]),
    ),
    ...(usedIn.length === 0 ? [] : [fact('Used in', linksTo(usedIn, topic))]),
  ];
  return xml('dlentry', { id }, [
    xml('dt', {}, [name]),
    xml('dd', {}, [
      ...(note === undefined ? [] : [xml('p', {}, [note])]),
      ...(listed.length === 0 ? [] : [xml('ul', {}, listed)]),
      ...(picture === undefined ? [] : [image(picture, topic)]),
    ]),
  ]);
}

const image = ({ src, alt }: { src: string; alt: string }, topic: Topic): XmlElement =>
  xml('image', { href: topic.up + src, placement: 'break' }, [xml('alt', {}, [alt])]);
