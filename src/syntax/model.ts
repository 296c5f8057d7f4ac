import type { PhrasingContent, RootContent } from 'mdast';
import type { TextDirective } from 'mdast-util-directive';
import type { Signal } from '../../schemas/catalogue.ts';
import type { Verb } from '../../schemas/directives.ts';
import type { Place } from '../../schemas/finding.ts';
import type { FrontMatter } from '../../schemas/front-matter.ts';
import type { Condition } from '../applicability/index.ts';
import type { Yaml } from '../source/index.ts';

/** An id as the author wrote it, with its place. */
export interface Ref {
  readonly id: string;
  readonly place: Place;
}

/** A value as the author wrote it. */
export interface Written {
  readonly text: string;
  readonly place: Place;
}

export interface When {
  readonly condition: Condition;
  readonly written: string;
  readonly place: Place;
}

/** Trade verb on an item: `:remove[the eight bolts]{item=anvil-bolt}`. */
export interface Action {
  readonly type: 'action';
  readonly verb: Verb;
  readonly item: Ref;
  readonly qty: { readonly count: number; readonly place: Place } | undefined;
  readonly isNew: boolean;
  readonly to: Ref | undefined;
  readonly amount: Written | undefined;
  readonly value: Written | undefined;
  /** Name of the catalogue's limit that is read against. */
  readonly limit: Ref | undefined;
  readonly each: readonly Ref[];
  readonly with: readonly Ref[];
  /** Between a torque wrench and the extension on it. */
  readonly angle: Written | undefined;
  readonly when: When | undefined;
  /** The author's words of the label; empty when the words come from the catalogue. */
  readonly words: string;
  readonly place: Place;
  /** The node in the prose; absent where a torque block stands for the action. */
  readonly node: TextDirective | undefined;
}

/** Markdown that is not a block of the language, with the actions in it in order of reading. */
export interface Prose {
  readonly type: 'prose';
  readonly node: RootContent;
  readonly actions: readonly Action[];
  readonly place: Place;
}

export interface Step {
  readonly type: 'step';
  readonly id: Ref | undefined;
  readonly needs: readonly Ref[];
  /** Inside `:::reverse`: the item before whose return it is done. */
  readonly at: Ref | undefined;
  readonly when: When | undefined;
  readonly people: number;
  readonly time: Written | undefined;
  /** After its work: how long nobody is needed, and what depends on the step must wait. */
  readonly wait: Written | undefined;
  readonly tools: readonly Ref[];
  readonly consumables: readonly Ref[];
  /** Revision of the procedure in which it last changed. */
  readonly changed: Written | undefined;
  readonly blocks: readonly Block[];
  readonly place: Place;
}

export interface StepList {
  readonly type: 'steps';
  readonly steps: readonly Step[];
  readonly place: Place;
}

/** A hazard panel: written out, or taken from the catalogue by `::hazard{of=id}`. */
export interface HazardPanel {
  readonly type: 'hazard';
  readonly signal: Signal | undefined;
  readonly of: Ref | undefined;
  readonly hazard: Written | undefined;
  readonly harm: Written | undefined;
  readonly when: When | undefined;
  readonly blocks: readonly Block[];
  readonly place: Place;
}

export interface TorqueBlock {
  readonly type: 'torque';
  readonly item: Ref;
  readonly when: When | undefined;
  readonly blocks: readonly Block[];
  /** The action it stands for, where the step has no `:torque` of the same item. */
  readonly action: Action | undefined;
  readonly place: Place;
}

export interface FluidBlock {
  readonly type: 'fluid';
  readonly item: Ref;
  readonly when: When | undefined;
  readonly blocks: readonly Block[];
  readonly place: Place;
}

export interface NeedsBlock {
  readonly type: 'needs';
  readonly steps: readonly Ref[];
  readonly blocks: readonly Block[];
  readonly place: Place;
}

export interface FigureBlock {
  readonly type: 'figure';
  readonly id: Ref | undefined;
  /** Path as written, relative to the file of the procedure. */
  readonly src: Written;
  readonly alt: string | undefined;
  /** In the order of their numbers: the first one is 1. */
  readonly callouts: readonly Callout[];
  readonly blocks: readonly Block[];
  readonly place: Place;
}

/** A number in a figure: `::callout{item=anvil-bolt at="62,40"}`. It has an item or words, or both. */
export interface Callout {
  readonly item: Ref | undefined;
  readonly phrasing: readonly PhrasingContent[];
  /** The same as plain words; empty where there are none. */
  readonly words: string;
  /** One or more, in percent of the picture from its left and its top edge. */
  readonly points: readonly { readonly x: number; readonly y: number }[];
  readonly place: Place;
}

export interface Perform {
  readonly type: 'perform';
  readonly procedure: Ref;
  readonly part: Ref | undefined;
  /** The instance at which that is done which its text does at another one. */
  readonly each: Ref | undefined;
  /** Its steps are printed here, not only named. */
  readonly inPlace: boolean;
  readonly when: When | undefined;
  readonly place: Place;
}

export interface Reverse {
  readonly type: 'reverse';
  readonly of: Ref;
  readonly except: readonly Ref[];
  readonly when: When | undefined;
  /** The author's own steps among the written-out ones. */
  readonly blocks: readonly Block[];
  readonly place: Place;
}

/** `:::when[feed = hydraulic]` around blocks. */
export interface Guarded {
  readonly type: 'guarded';
  readonly when: When;
  readonly blocks: readonly Block[];
  readonly place: Place;
}

/** `:::repeat[until no more bubbles come]` around blocks: done once or more. */
export interface Repeat {
  readonly type: 'repeat';
  readonly until: Written;
  readonly phrasing: readonly PhrasingContent[];
  readonly blocks: readonly Block[];
  readonly place: Place;
}

/** What the technician finds decides: one way through is taken. `:::if` has the way and, unsaid, the way past it. */
export interface Branch {
  readonly type: 'branch';
  readonly ways: readonly Way[];
  /** True for `:::if`: none of the ways may be taken. */
  readonly optional: boolean;
  readonly place: Place;
}

export interface Way {
  /** The words of the label: "the belt is cracked". */
  readonly label: string;
  readonly phrasing: readonly PhrasingContent[];
  readonly blocks: readonly Block[];
  readonly place: Place;
}

export type Block =
  | Prose
  | StepList
  | HazardPanel
  | TorqueBlock
  | FluidBlock
  | NeedsBlock
  | FigureBlock
  | Perform
  | Reverse
  | Guarded
  | Repeat
  | Branch;

/** Findings that the author lets pass: `::waive{rule=…}`. It is printed on no sheet. */
export interface Waiver {
  readonly rule: Ref;
  readonly item: Ref | undefined;
  /** The last day on which it holds, YYYY-MM-DD. */
  readonly until: Written | undefined;
  /** On one line; empty where none is given. */
  readonly reason: string;
  /** The step or section that it stands in; the whole file before the first heading. */
  readonly scope: Place;
  /** From its colons to the end of its attributes. */
  readonly place: Place;
}

/** A heading and what stands under it up to the next heading of any depth. */
export interface Section {
  /** From the heading's words (`removal`); of the text before the first heading, `start`. Unique in the procedure. */
  readonly id: string;
  readonly title: string | undefined;
  readonly heading: readonly PhrasingContent[];
  readonly depth: number;
  readonly headingPlace: Place | undefined;
  readonly blocks: readonly Block[];
  readonly place: Place;
}

export interface Link {
  readonly url: string;
  readonly place: Place;
  readonly isImage: boolean;
  readonly alt: string | undefined;
}

export type FrontPlaces = Pick<Yaml<unknown>, 'placeOf' | 'keyPlaceOf' | 'dropped' | 'isBroken'>;

export interface Procedure {
  readonly id: string;
  readonly file: string;
  readonly text: string;
  readonly front: FrontMatter;
  /** Where the parts of the front matter stand, and which of them are faulty. */
  readonly yaml: FrontPlaces;
  /** Place of a member of the front matter (`starts.coolant`), else of its nearest parent. */
  readonly placeOf: (path: string) => Place;
  readonly when: When | undefined;
  readonly sections: readonly Section[];
  readonly links: readonly Link[];
  readonly waivers: readonly Waiver[];
  /** The whole file. */
  readonly place: Place;
}
