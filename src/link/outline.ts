import type { Place } from '../../schemas/finding.ts';
import type { States } from '../../schemas/front-matter.ts';
import { compareText } from '../source/index.ts';
import type { Front, Procedure } from '../syntax/index.ts';
import { targetOf } from './paths.ts';
import { allBlocks, allSteps } from './walk.ts';

/** Somewhere in a procedure that a link may lead to: a section, or a step that has an id. */
export interface Anchor {
  readonly id: string;
  /** True for what a writer would name: a section with a heading. */
  readonly isListed: boolean;
}

/** What others may ask of a procedure that they do not perform. Plain data. */
export interface Outline {
  readonly id: string;
  readonly file: string;
  readonly title: string;
  /** As the front matter has it. */
  readonly machine: string | undefined;
  readonly starts: States;
  readonly leaves: States;
  readonly anchors: readonly Anchor[];
  /** Ids of the procedures that it performs, in whole or in part. */
  readonly performs: readonly string[];
  /** Files of the manual that it links to. */
  readonly linksTo: readonly string[];
  readonly followOn: readonly string[];
  /** Files of the manual that it shows as pictures. */
  readonly figures: readonly string[];
  /** Place of its id in the front matter. */
  readonly place: Place;
}

/** As far as the front matter says it: nothing of what stands below. */
export function outlineOfFront({ id, file, front, placeOf }: Front): Outline {
  return {
    id,
    file,
    title: front.title,
    machine: front.machine,
    starts: front.starts,
    leaves: front.leaves,
    anchors: [],
    performs: [],
    linksTo: [],
    followOn: front['follow-on'],
    figures: [],
    place: placeOf('procedure'),
  };
}

export function outlineOf(procedure: Procedure): Outline {
  const { file, sections, links } = procedure;
  const filesIn = (urls: readonly string[]): readonly string[] => {
    const targets = urls.map((url) => targetOf(file, url));
    return inOrder(targets.flatMap((target) => (target.kind === 'file' ? [target.path] : [])));
  };
  const blocks = [...allBlocks(procedure)];
  const urlsOf = (isImage: boolean): readonly string[] =>
    links.filter((link) => link.isImage === isImage).map(({ url }) => url);
  return {
    ...outlineOfFront(procedure),
    anchors: [
      ...sections.map((section) => ({
        id: section.id,
        isListed: section.headingPlace !== undefined,
      })),
      ...[...allSteps(procedure)].flatMap((step) =>
        step.id === undefined ? [] : [{ id: step.id.id, isListed: false }],
      ),
    ],
    performs: inOrder(
      blocks.flatMap((block) => (block.type === 'perform' ? [block.procedure.id] : [])),
    ),
    linksTo: filesIn(urlsOf(false)),
    figures: filesIn([
      ...urlsOf(true),
      ...blocks.flatMap((block) => (block.type === 'figure' ? [block.src.text] : [])),
    ]),
  };
}

const inOrder = (all: readonly string[]): readonly string[] =>
  [...new Set(all)].toSorted(compareText);
