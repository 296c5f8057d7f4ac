import type { z } from 'zod';
import type {
  aidSchema,
  circuitSchema,
  connectionSchema,
  consumableSchema,
  controlSchema,
  energySchema,
  fastenerSchema,
  HazardEntry,
  hazardSchema,
  partSchema,
  toolSchema,
} from '../../schemas/catalogue.ts';
import type { Place } from '../../schemas/finding.ts';
import type { ManualSettings } from '../../schemas/manual.ts';
import type { Condition, Space } from '../applicability/index.ts';
import type { Strength, Thread, ThreadCondition } from '../joint/index.ts';
import type { Quantity, Single, TorqueSpec, UnitPolicy } from '../quantity/index.ts';

/** What a measurement of an item must give. */
export interface Limit {
  /** Undefined where the entry has one limit without a name. */
  readonly name: string | undefined;
  readonly quantity: Quantity;
  readonly written: string;
  readonly place: Place;
}

/** What every entry has, whatever its kind. `places` finds the author's text of a member of the entry. */
interface Entry {
  readonly id: string;
  readonly place: Place;
  readonly when: Condition | undefined;
  /** In the order of the file. */
  readonly limits: readonly Limit[];
  /** Members (`torque`, `when`) that are written but cannot be used, so that they are not taken for missing. */
  readonly faulty: ReadonlySet<string>;
  /** Place of a member (`holds`, `torque`), of one of its elements (`holds.1`), else of the entry's id. */
  readonly placeOf: (member: string) => Place;
}

type Data<S extends z.ZodType, Replaced extends string = never> = Omit<
  z.output<S>,
  'when' | 'limits' | Replaced
>;

/** The sizes that something is sold in. */
export interface Containers {
  /** The fluid of a mix; undefined for the item itself. */
  readonly of: string | undefined;
  readonly sizes: readonly Single[];
}

/** A torque as the sheet needs it. */
export interface Torque {
  readonly spec: TorqueSpec;
  readonly threads: ThreadCondition | undefined;
  /** The text of the catalogue, stage by stage. */
  readonly written: readonly string[];
  readonly place: Place;
  /** True where the manual's default rule by thread and class gives it. */
  readonly byDefault: boolean;
}

/** What `thread`, `class` and `grade` say of a screw's strength; undefined where it cannot be worked out. */
export interface Screw {
  readonly thread: Thread | undefined;
  readonly strength: Strength | undefined;
}

/** The rule of the manual for fasteners that have neither torque nor tightness of their own. */
export interface DefaultTorque {
  readonly thread: string;
  readonly class: string | undefined;
  readonly grade: string | undefined;
  readonly screw: Screw;
  readonly torque: Torque;
  /** Place of a member of the rule (`thread`, `class`, `grade`). */
  readonly placeOf: (member: string) => Place;
}

export type Fastener = Entry & {
  readonly kind: 'fastener';
  readonly screw: Screw;
  readonly torque: Torque | undefined;
} & Data<typeof fastenerSchema, 'torque'>;
export type Part = Entry & { readonly kind: 'part'; readonly mass: Quantity | undefined } & Data<
    typeof partSchema,
    'mass'
  >;
export type Connection = Entry & {
  readonly kind: 'connection';
  readonly torque: Torque | undefined;
  readonly loss: Quantity | undefined;
} & Data<typeof connectionSchema, 'torque' | 'loss'>;
export type Circuit = Entry & {
  readonly kind: 'circuit';
  readonly capacity: Quantity | undefined;
  readonly mix: readonly { readonly name: string; readonly share: Quantity }[];
  /** Of the whole where no fluid of the mix is named, else of that fluid. */
  readonly containers: readonly Containers[];
} & Data<typeof circuitSchema, 'capacity' | 'mix' | 'containers'>;
export type Energy = Entry & { readonly kind: 'energy' } & Data<typeof energySchema>;
export type Control = Entry & { readonly kind: 'control' } & Data<typeof controlSchema>;
export type Aid = Entry & { readonly kind: 'aid' } & Data<typeof aidSchema>;
export type Tool = Entry & {
  readonly kind: 'tool';
  /** Of a torque wrench, from its drive to the middle of its grip: one length above zero. */
  readonly length: Quantity | undefined;
  /** Of an extension for a torque wrench, from its drive to the bolt: one length above zero. */
  readonly extension: Quantity | undefined;
} & Data<typeof toolSchema, 'length' | 'extension'>;
export type Consumable = Entry & {
  readonly kind: 'consumable';
  readonly containers: readonly Containers[];
} & Data<typeof consumableSchema, 'containers'>;
export type Hazard = Entry & {
  readonly kind: 'hazard';
  readonly raisedBy: HazardEntry['raised-by'];
} & Data<typeof hazardSchema, 'raised-by'>;

/** Entries that the ledger keeps a state for. */
export type StatefulItem = Fastener | Part | Connection | Circuit | Energy | Control | Aid;
export type Item = StatefulItem | Tool | Consumable | Hazard;
export type ItemKind = Item['kind'];

/** One id space: a machine's entries, or those of a procedure's front matter on top of them. */
export interface Catalogue {
  readonly id: string;
  readonly name: string;
  readonly note: string | undefined;
  readonly file: string;
  /** In the order of the file. */
  readonly items: ReadonlyMap<string, Item>;
  /** Ids of entries that are written but too faulty to use: to name them is no fault of its own. */
  readonly faulty: ReadonlySet<string>;
  /** False where the file breaks off being YAML: entries may be lost, so that an unknown id says nothing. */
  readonly isWhole: boolean;
}

/** `manual.yaml`, read and linked. */
export interface ManualModel {
  readonly settings: ManualSettings;
  readonly policy: UnitPolicy;
  readonly space: Space;
  /** By id, in order of their files. */
  readonly machines: ReadonlyMap<string, Catalogue>;
  readonly defaultTorques: readonly DefaultTorque[];
  /** Mass that one person may lift. */
  readonly liftLimit: Quantity | undefined;
  /** False where manual.yaml is missing or faulty so that variants may be lost: an unknown variant says nothing. */
  readonly isWhole: boolean;
  /** Place of a key of manual.yaml, or of its start. */
  readonly placeOf: (key: string) => Place;
}
