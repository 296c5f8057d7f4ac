import type { ManualSettings } from '../../schemas/manual.ts';
import type { ContentData, StepData } from '../../schemas/procedure-content.ts';
import type { ProcedureJson } from '../../schemas/procedure-json.ts';
import type { HazardData } from '../../schemas/procedure-parts.ts';
import type { PullLine, PullList } from '../derive/index.ts';
import { pageAddress } from './address-code.ts';
import { contentWords } from './content-words.ts';
import { isoDuration } from './iso-duration.ts';
import { pullName } from './pull-words.ts';
import { phaseAnchor, procedureHref, stepAnchor } from './site-links.ts';

type Tip = { readonly '@type': 'HowToTip'; readonly text: string };
type Direction = { readonly '@type': 'HowToDirection'; readonly text: string };

export interface HowToStep {
  readonly '@type': 'HowToStep';
  readonly position: string;
  readonly url: string;
  readonly text: string;
  /** The hazards before it, then what is done. */
  readonly itemListElement: readonly (Tip | Direction)[];
}

export interface HowToSection {
  readonly '@type': 'HowToSection';
  readonly name: string;
  readonly url: string;
  readonly itemListElement: readonly (HowToStep | Tip)[];
}

type Quantity =
  | number
  | { readonly '@type': 'QuantitativeValue'; readonly value: number; readonly unitText: string };

interface Fetched<Type extends string> {
  readonly '@type': Type;
  readonly name: string;
  readonly requiredQuantity?: Quantity;
}

/** Names and types are those of schema.org. */
export interface HowTo {
  readonly '@context': 'https://schema.org';
  readonly '@type': 'HowTo';
  readonly name: string;
  readonly description?: string;
  readonly identifier: string;
  readonly version?: string;
  readonly inLanguage: string;
  readonly url?: string;
  readonly isPartOf: { readonly '@type': 'Book'; readonly name: string };
  readonly publisher?: { readonly '@type': 'Organization'; readonly name: string };
  /** ISO 8601; only where every step has a time. Of machines that differ the longest. */
  readonly totalTime?: string;
  readonly tool: readonly Fetched<'HowToTool'>[];
  readonly supply: readonly Fetched<'HowToSupply'>[];
  readonly step: readonly (HowToSection | HowToStep | Tip)[];
}

/** A procedure in the words of schema.org, for search engines and assistants. Addresses are whole where the manual has one. */
export function howTo(data: ProcedureJson, list: PullList, settings: ManualSettings): HowTo {
  const { address, publisher, language } = settings;
  const page = address === undefined ? '' : pageAddress(address, procedureHref(data.id));
  const time = totalTime(data);
  const lines = (wanted: (kind: PullLine['kind']) => boolean) =>
    list.lines.filter(({ kind }) => wanted(kind));
  const isTool = (kind: PullLine['kind']): boolean => kind === 'tool' || kind === 'aid';
  return {
    '@context': 'https://schema.org',
    '@type': 'HowTo',
    name: data.title,
    ...(data.summary === undefined ? {} : { description: data.summary }),
    identifier: data.document,
    ...(data.revision === undefined ? {} : { version: data.revision }),
    inLanguage: language,
    ...(page === '' ? {} : { url: page }),
    isPartOf: { '@type': 'Book', name: data.manual.title },
    ...(publisher === undefined ? {} : { publisher: { '@type': 'Organization', name: publisher } }),
    ...(time === undefined ? {} : { totalTime: time }),
    tool: lines(isTool).map((line) => fetched('HowToTool', line)),
    supply: lines((kind) => !isTool(kind)).map((line) => fetched('HowToSupply', line)),
    step: data.sections.flatMap(({ id, title, content }): HowTo['step'] => {
      const items = itemsOf(content, page);
      if (title === undefined || items.length === 0) return items;
      const url = `${page}#${phaseAnchor(id)}`;
      return [{ '@type': 'HowToSection', name: title, url, itemListElement: items }];
    }),
  };
}

/** JSON-LD that may stand in a script element: nothing in it can end the element. */
export function howToText(value: HowTo): string {
  return JSON.stringify(value).replace(
    /[<>&\u2028\u2029]/g,
    (sign) => `\\u${sign.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );
}

function itemsOf(content: readonly ContentData[], page: string): (HowToStep | Tip)[] {
  return content.flatMap((part): (HowToStep | Tip)[] => {
    switch (part.type) {
      case 'step':
        return [stepOf(part, page)];
      case 'perform':
      case 'undo':
        return part.number === undefined
          ? [tip(contentWords([part]))]
          : [ranked(part.number, [], contentWords([part]), page)];
      case 'hazard':
        return [tip(hazardText(part))];
      default:
        return part.type === 'only' || part.type === 'repeat' || part.type === 'choice'
          ? conditional(part, page)
          : [tip(contentWords([part]))].filter(({ text }) => text !== '');
    }
  });
}

/** Steps inside a condition keep their places; the condition goes before them as a tip. */
function conditional(
  part: Extract<ContentData, { type: 'only' | 'repeat' | 'choice' }>,
  page: string,
): (HowToStep | Tip)[] {
  switch (part.type) {
    case 'only':
      return [tip(`Only ${part.when.words}:`), ...itemsOf(part.content, page)];
    case 'repeat':
      return [tip(`Repeat ${part.words}:`), ...itemsOf(part.content, page)];
    case 'choice':
      return part.ways.flatMap((way) => [tip(`If ${way.if}:`), ...itemsOf(way.content, page)]);
  }
}

function stepOf(step: StepData, page: string): HowToStep {
  const hazards = [...step.hazards, ...hazardsIn(step.content)];
  return ranked(step.number, hazards, contentWords([step]), page);
}

/** Those inside a step are told before all of it. */
function hazardsIn(content: readonly ContentData[]): HazardData[] {
  return content.flatMap((part): HazardData[] => {
    if (part.type === 'hazard') return [part];
    const own = part.type === 'step' ? part.hazards : [];
    if (part.type === 'choice') return part.ways.flatMap((way) => hazardsIn(way.content));
    return 'content' in part ? [...own, ...hazardsIn(part.content)] : own;
  });
}

function ranked(
  number: string,
  hazards: readonly HazardData[],
  text: string,
  page: string,
): HowToStep {
  return {
    '@type': 'HowToStep',
    position: number,
    url: `${page}#${stepAnchor(number)}`,
    text,
    itemListElement: [
      ...hazards.map((hazard) => tip(hazardText(hazard))),
      { '@type': 'HowToDirection', text },
    ],
  };
}

const tip = (text: string): Tip => ({ '@type': 'HowToTip', text });

function hazardText({ signal, hazard, harm, avoid, when }: HazardData): string {
  const only = when === undefined ? [] : [`only ${when.words}`];
  const parts = [hazard, harm, avoid].filter((part) => part !== '').map(ended);
  return [[signal.toUpperCase(), ...only].join(', '), parts.join(' ')].join(': ');
}

const ended = (text: string): string => (/[.!?]$/.test(text) ? text : `${text}.`);

function fetched<Type extends string>(type: Type, line: PullLine): Fetched<Type> {
  const { count, quantity } = line;
  const name = pullName({ ...line, count: 1 });
  if (count !== undefined) return { '@type': type, name, requiredQuantity: count };
  if (quantity === undefined) return { '@type': type, name };
  const { amount, unit } = quantity;
  return {
    '@type': type,
    name,
    requiredQuantity: { '@type': 'QuantitativeValue', value: amount.value, unitText: unit },
  };
}

function totalTime({ times }: ProcedureJson): string | undefined {
  if (times.length === 0 || times.some(({ atLeast }) => atLeast)) return undefined;
  const minutes = times.map(({ elapsed }) => (elapsed.form === 'single' ? elapsed.value : 0));
  return isoDuration(Math.max(...minutes));
}
