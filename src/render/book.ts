import type { Signal } from '../../schemas/catalogue.ts';
import type { Report } from '../../schemas/report.ts';

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
  /** The pictures that the sheets show. */
  readonly figures: readonly Figure[];
  readonly report: Report;
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

export interface Sheet {
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
  readonly people: number;
  /** Sum of the times of its steps and of those it performs, printed: "45 min", "at least 20 min" where some steps have none. */
  readonly time: string | undefined;
  readonly steps: number;
  /** Phases with their hazards, steps and margin boxes. */
  readonly bodyHtml: string;
  readonly hazards: readonly HazardLine[];
  readonly tools: readonly PullRow[];
  readonly parts: readonly PullRow[];
  readonly consumables: readonly PullRow[];
  readonly fluids: readonly FluidRow[];
  readonly torques: readonly TorqueRow[];
  readonly starts: readonly StateLine[];
  readonly leaves: readonly StateLine[];
  readonly performs: readonly PageLink[];
  readonly performedBy: readonly PageLink[];
  /** True where it starts from or leaves a machine that is not as it should be, so that it is only a part of other work. */
  readonly isContract: boolean;
  readonly history: readonly {
    readonly revision: string;
    readonly date: string;
    readonly change: string;
  }[];
}

export interface HazardLine {
  readonly signal: Signal;
  readonly hazard: string;
  readonly harm: string;
  readonly avoidHtml: string;
}

/** Something to fetch before work starts. */
export interface PullRow {
  readonly item: PageLink;
  readonly count: number | undefined;
  readonly detail: string | undefined;
  /** The variants that have it, where they are not all that the sheet is for. */
  readonly when: string | undefined;
}

export interface StateLine {
  readonly item: PageLink;
  /** As the sheet says it: "drained", "4 out, 4 tight". */
  readonly state: string;
}

export interface TorqueRow {
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
  readonly byDefault: boolean;
  readonly usedIn: readonly PageLink[];
}

export interface FluidRow {
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
  readonly bleed: string | undefined;
  readonly dispose: string | undefined;
  readonly usedIn: readonly PageLink[];
}

/** A machine's entries, by kind, each with where it is used. */
export interface MachinePage {
  readonly id: string;
  readonly href: string;
  readonly name: string;
  readonly note: string | undefined;
  readonly groups: readonly {
    readonly kind: string;
    readonly heading: string;
    readonly entries: readonly MachineEntry[];
  }[];
}

export interface MachineEntry {
  readonly id: string;
  readonly name: string;
  readonly partNumber: string | undefined;
  readonly note: string | undefined;
  /** Facts in words: ["Thread", "M12", []], ["Holds", "", [the anvil]]; the links follow the value and do not repeat it. */
  readonly facts: readonly (readonly [label: string, value: string, links: readonly PageLink[]])[];
  readonly usedIn: readonly (PageLink & { readonly verbs: readonly string[] })[];
}
