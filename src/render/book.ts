import type { Signal } from '../../schemas/catalogue.ts';
import type { Level } from '../../schemas/finding.ts';
import type { Report } from '../../schemas/report.ts';
import type { MachineChoice, MachineCondition } from '../applicability/index.ts';
import type { Family } from '../rules/index.ts';
import type { StepCount } from './shown-when.ts';

/** Everything that the site shows, as plain JSON: HTML is already safe and whole. */
export interface Book {
  readonly title: string;
  readonly language: string;
  readonly edition: string | undefined;
  readonly issued: string | undefined;
  readonly publisher: string | undefined;
  readonly address: string | undefined;
  /** True prints DRAFT on every sheet. */
  readonly draft: boolean;
  readonly safetyHtml: string;
  /** Sheets under the heading of their system, in the order of the contents page. */
  readonly systems: readonly { readonly name: string; readonly sheets: readonly string[] }[];
  readonly sheets: readonly Sheet[];
  readonly machines: readonly MachinePage[];
  readonly torques: readonly TorqueRow[];
  readonly fluids: readonly FluidRow[];
  readonly hazards: readonly HazardRow[];
  /** Tools, aids, parts and consumables of all machines. */
  readonly stock: Stock;
  /** Every rule that there is, for the rule reference. */
  readonly rules: readonly RuleLine[];
  /** What its machines differ in, for readers who say which one they have. */
  readonly machinesDiffer: MachineChoice;
  /** The pictures that the sheets show. */
  readonly figures: readonly Figure[];
  readonly report: Report;
}

/** What pages show beside their own sheet or machine. */
export type BookFrame = Omit<Book, 'sheets' | 'machines'>;

/** A part of a page that is not there for every machine; `condition` says the same as its words, to a program. */
export interface Sometimes {
  readonly condition?: MachineCondition;
}

/** A picture: its path in the manual's folder, and in the site's. Neither is escaped. */
export interface Figure {
  readonly from: string;
  readonly to: string;
}

/** A page of the site. `href` is relative to the site's root, without a leading slash. */
export interface PageLink {
  readonly href: string;
  readonly text: string;
}

export interface Sheet extends Sometimes {
  readonly id: string;
  readonly href: string;
  readonly title: string;
  readonly system: string;
  readonly documentNumber: string;
  readonly revision: string | undefined;
  readonly machine: PageLink | undefined;
  /** The variants it is for, in the manual's words; undefined for all. */
  readonly variants: string | undefined;
  readonly summary: string | undefined;
  readonly interval: string | undefined;
  /** The most that it takes at once. */
  readonly people: number;
  /** Where it takes more than one. */
  readonly crew: readonly CrewLine[];
  /** From start to end, with what it performs: "45 min", "at least 20 min" where some steps have no time, "45 min to 1 h" where variants differ. */
  readonly time: string | undefined;
  /** The same, for each kind of machine. */
  readonly times: readonly TimeLine[];
  readonly steps: number;
  /** The same, with the conditions of those that are not for every machine. */
  readonly stepCount: StepCount;
  /** QR code of its address, for paper; empty where the manual has no address. */
  readonly codeHtml: string;
  /** Which steps must follow which, folded away; empty where all follow each other as they stand. */
  readonly orderHtml: string;
  /** Phases with their hazards, steps and margin boxes. */
  readonly bodyHtml: string;
  readonly hazards: readonly HazardLine[];
  readonly tools: readonly PullRow[];
  readonly parts: readonly PullRow[];
  readonly consumables: readonly PullRow[];
  readonly fluidPulls: readonly PullRow[];
  readonly pullFiles: { readonly csv: PullFile; readonly json: PullFile };
  /** The procedure for programs, as a file beside the sheet. */
  readonly dataFile: PullFile;
  /** The same in the words of schema.org: JSON-LD that may stand in a script element. */
  readonly howTo: string;
  readonly fluids: readonly FluidRow[];
  /** Fluid that comes out and must be collected. */
  readonly waste: readonly WasteLine[];
  readonly torques: readonly TorqueRow[];
  readonly starts: readonly StateLine[];
  readonly leaves: readonly StateLine[];
  readonly performs: readonly (PageLink & Sometimes)[];
  /** What to do after it. */
  readonly followOn: readonly PageLink[];
  readonly performedBy: readonly PageLink[];
  /** True where it starts from or leaves a machine that is not as it should be, so that it is only a part of other work. */
  readonly isContract: boolean;
  readonly history: readonly {
    readonly revision: string;
    readonly date: string;
    readonly change: string;
  }[];
}

/** "2 people for steps 4 and 7, 15 min". */
export interface CrewLine extends Sometimes {
  readonly people: number;
  /** Numbers of the steps, with links to them. */
  readonly steps: readonly PageLink[];
  readonly time: string | undefined;
  /** The variants for which it is so, where they are not all that the sheet is for. */
  readonly when: string | undefined;
}

export interface TimeLine extends Sometimes {
  /** From start to end, with other steps done in the waits where they may be. */
  readonly total: string;
  /** "1 h 20 min of work and 40 min of waits"; undefined where there are no waits. */
  readonly parts: string | undefined;
  /** The variants on which it takes that long, where it differs. */
  readonly when: string | undefined;
}

export interface HazardLine extends Sometimes {
  readonly signal: Signal;
  readonly hazard: string;
  readonly harm: string;
  readonly avoidHtml: string;
  /** Its row on the page of hazards. */
  readonly row: string | undefined;
  /** The variants that have it, where they are not all that the sheet is for. */
  readonly when: string | undefined;
}

/** Something to fetch before work starts. */
export interface PullRow extends Sometimes {
  readonly item: PageLink;
  readonly count: number | undefined;
  /** True where the count is the most of many cases. */
  readonly isMost: boolean;
  readonly detail: string | undefined;
  /** "2 × 20 L" where the sizes are known that it is sold in. */
  readonly containers: string | undefined;
  /** When it is needed, where not always: "for infeed winch", "if the belt is cracked". */
  readonly when: string | undefined;
}

/** A file beside a sheet. */
export interface PullFile extends PageLink {
  readonly content: string;
}

export interface StateLine extends Sometimes {
  readonly item: PageLink;
  /** As the sheet says it: "drained", "4 out, 4 tight". */
  readonly state: string;
}

export interface TorqueRow extends Sometimes {
  /** Id of the row in the torque chart, unique in the manual: `<machine>-<item>`. */
  readonly anchor: string;
  readonly item: PageLink;
  /** At each instance, where there are instances. */
  readonly count: number;
  readonly instances: readonly string[];
  /** The variants that have it; undefined for all. */
  readonly when: string | undefined;
  readonly thread: string | undefined;
  readonly strength: string | undefined;
  readonly threads: string | undefined;
  /** One string a stage, first unit with the second in brackets. */
  readonly stages: readonly string[];
  /** Where the order of tightening is, of fasteners that have one. */
  readonly order?: PageLink;
  readonly byDefault: boolean;
  readonly usedIn: readonly PageLink[];
}

export interface FluidRow extends Sometimes {
  /** Id of the row in the table of fluids, unique in the manual: `<machine>-<item>`. */
  readonly anchor: string;
  readonly item: PageLink;
  readonly fluid: string;
  /** The variants that have it; undefined for all. */
  readonly when: string | undefined;
  readonly capacity: string;
  readonly mix: readonly {
    readonly name: string;
    readonly share: string;
    readonly volume: string;
  }[];
  /** What the mix freezes at, and where the figure is from. */
  readonly freezing: { readonly point: string; readonly source: string } | undefined;
  /** How a mix with another share is brought back: drain so much, pour in as much of that. */
  readonly corrections: readonly {
    readonly measured: string;
    readonly freezes: string | undefined;
    readonly replace: string;
    readonly by: string;
  }[];
  /** Names of what must never get into it. */
  readonly neverWith: readonly string[];
  readonly bleed: string | undefined;
  readonly dispose: string | undefined;
  readonly usedIn: readonly PageLink[];
}

export interface WasteLine {
  readonly item: PageLink;
  /** "about 38 L (10 US gal)" */
  readonly volume: string | undefined;
  /** What becomes of it, where the catalogue says so. */
  readonly dispose: string | undefined;
}

/** A hazard with what raises it and the sheets that warn of it. */
export interface HazardRow {
  /** Id of the row on the page of hazards, unique in the manual. */
  readonly anchor: string;
  readonly signal: Signal;
  readonly hazard: string;
  readonly harm: string;
  readonly avoid: string;
  /** The variants that have it; undefined for all. */
  readonly when: string | undefined;
  /** "open", "any work on"; an item that is not known has no address. */
  readonly raisedBy: readonly HazardAction[];
  /** What must be done before. */
  readonly first: readonly HazardAction[];
  readonly usedIn: readonly PageLink[];
}

export interface HazardAction {
  readonly words: string;
  readonly item: PageLink;
}

/** What a workshop has to have, by what it is. */
export interface Stock {
  readonly tools: readonly StockRow[];
  readonly aids: readonly StockRow[];
  /** Parts and fasteners with a part number, or that are used once only. */
  readonly parts: readonly StockRow[];
  readonly consumables: readonly StockRow[];
  /** What each part number stands for. */
  readonly partNumbers: readonly { readonly number: string; readonly items: readonly PageLink[] }[];
}

/** A tool, aid, part or consumable as a list of the whole manual shows it. */
export interface StockRow {
  /** Id of the row, unique in the manual: `<machine>-<item>`. */
  readonly anchor: string;
  readonly item: PageLink;
  readonly count: number;
  readonly partNumber: string | undefined;
  /** Size, thread, specification, note. */
  readonly details: readonly string[];
  /** The variants that have it; undefined for all. */
  readonly when: string | undefined;
  /** Its machine where there are several, or the sheet that brings it along. */
  readonly owner: string | undefined;
  readonly usedIn: readonly PageLink[];
}

/** A rule as the rule reference lists it; its page tells the rest. */
export interface RuleLine {
  readonly id: string;
  readonly family: Family;
  readonly level: Level;
}

/** A machine's entries, by kind, each with where it is used. */
export interface MachinePage {
  readonly id: string;
  readonly href: string;
  readonly name: string;
  readonly note: string | undefined;
  /** What holds what and what is behind what, the largest group first. */
  readonly pictures: readonly MachinePicture[];
  /** What the lines of the pictures mean; empty where there are none. */
  readonly legendHtml: string;
  readonly groups: readonly {
    readonly kind: string;
    readonly heading: string;
    readonly entries: readonly MachineEntry[];
  }[];
}

/** A picture of items that are tied together, with links to their rows. */
export interface MachinePicture {
  readonly title: string;
  readonly svgHtml: string;
  /** What the picture leaves to others. */
  readonly note: string | undefined;
}

export interface MachineEntry {
  readonly id: string;
  readonly name: string;
  readonly partNumber: string | undefined;
  readonly picture: { readonly src: string; readonly alt: string } | undefined;
  readonly note: string | undefined;
  /** Facts in words: ["Thread", "M12", []], ["Holds", "", [the anvil]]; the links follow the value and do not repeat it. */
  readonly facts: readonly (readonly [label: string, value: string, links: readonly PageLink[]])[];
  readonly usedIn: readonly (PageLink & { readonly verbs: readonly string[] })[];
}
