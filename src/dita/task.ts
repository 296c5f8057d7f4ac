import { type Sheet, type XmlElement, type XmlNode, xml } from '../render/index.ts';
import { linksTo, linkTo } from './link-to.ts';
import { otherMeta } from './other-meta.ts';
import { productOf } from './product.ts';
import { headed, pullRows, stateRows } from './pull-rows.ts';
import { workOf } from './steps.ts';
import type { TaskTopic } from './topic.ts';

export interface TaskSettings {
  readonly language: string;
  readonly isDraft: boolean;
}

/** A procedure as a task topic. `sheet` has what is gathered over it and the procedures that it performs. */
export function task(
  sheet: Sheet,
  topic: TaskTopic,
  { language, isDraft }: TaskSettings,
): XmlElement {
  const { procedure } = topic.context.one;
  const { context, steps, result } = workOf(procedure.sections, topic);
  const product = productOf(topic.context.presence.when(procedure.when), topic);
  return xml('task', { id: topic.id, product, 'xml:lang': language }, [
    xml('title', {}, [sheet.title]),
    ...(sheet.summary === undefined ? [] : [xml('shortdesc', {}, [sheet.summary])]),
    xml('prolog', {}, prolog(sheet, isDraft)),
    xml('taskbody', {}, [
      xml('prereq', {}, [...(isDraft ? [draftNote] : []), ...before(sheet, topic)]),
      ...part('context', context),
      ...part('steps', steps),
      ...part('result', result),
      ...part('postreq', after(sheet, topic)),
    ]),
  ]);
}

export const draftNote: XmlElement = xml('note', { type: 'important' }, ['Draft, not for work.']);

const part = (name: string, content: readonly XmlNode[]): XmlElement[] =>
  content.length === 0 ? [] : [xml(name, {}, content)];

function prolog({ documentNumber, revision, system, history }: Sheet, isDraft: boolean) {
  const changes = history.map(({ revision, date, change }) =>
    xml('data', { name: 'change', value: revision }, [
      xml('data', { name: 'date', value: date }),
      xml('data', { name: 'what' }, [change]),
    ]),
  );
  return [
    xml('metadata', {}, [
      ...otherMeta('document-number', documentNumber),
      ...otherMeta('revision', revision),
      ...otherMeta('system', system),
      ...(isDraft ? otherMeta('status', 'draft') : []),
    ]),
    ...changes,
  ];
}

function before(sheet: Sheet, topic: TaskTopic): XmlNode[] {
  const { machine, variants, interval, people, crew, times, waste } = sheet;
  const fact = (name: string, content: readonly XmlNode[]): XmlElement[] =>
    content.length === 0
      ? []
      : [xml('dlentry', {}, [xml('dt', {}, [name]), xml('dd', {}, content)])];
  const crewed = crew.flatMap(({ people, steps, time, when }, i): XmlNode[] => [
    ...(i === 0 ? [': '] : ['; ']),
    `${people} for ${steps.length === 1 ? 'step' : 'steps'} `,
    ...linksTo(steps, topic),
    ...(time === undefined ? [] : [`, ${time}`]),
    ...(when === undefined ? [] : [`, for ${when}`]),
  ]);
  const time = times.map(({ total, parts, when }) =>
    [total, parts && ` (${parts})`, when && ` for ${when}`].filter(Boolean).join(''),
  );
  return [
    xml('dl', {}, [
      ...fact('Document', [sheet.documentNumber]),
      ...fact('Revision', sheet.revision === undefined ? [] : [sheet.revision]),
      ...fact('Machine', machine === undefined ? [] : [linkTo(machine, topic)]),
      ...fact('Only for', variants === undefined ? [] : [variants]),
      ...fact('Interval', interval === undefined ? [] : [interval]),
      ...fact('People', [String(people), ...crewed]),
      ...fact('Time', time.length === 0 ? [] : [time.join('; ')]),
      ...fact('Part of', linksTo(sheet.performedBy, topic)),
    ]),
    ...stateRows('State at the start', sheet.starts, topic),
    ...pullRows('Tools and aids', sheet.tools, topic),
    ...pullRows('Parts', sheet.parts, topic),
    ...pullRows('Consumables', sheet.consumables, topic),
    ...pullRows('Fluids', sheet.fluidPulls, topic),
    ...headed(
      'Waste to collect',
      waste.map(({ item, volume, dispose }) =>
        xml('li', {}, [
          linkTo(item, topic),
          [volume, dispose]
            .filter(Boolean)
            .map((one) => `, ${one}`)
            .join(''),
        ]),
      ),
    ),
  ];
}

function after(sheet: Sheet, topic: TaskTopic): XmlNode[] {
  return [
    ...stateRows('State at the end', sheet.leaves, topic),
    ...headed(
      'Do these next',
      sheet.followOn.map((link) => xml('li', {}, [linkTo(link, topic)])),
    ),
  ];
}
