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
import type { Quantity, TorqueSpec, UnitPolicy } from '../quantity/index.ts';

/** What every entry has, whatever its kind. `places` finds the author's text of a member of the entry. */
interface Entry {
  readonly id: string;
  readonly place: Place;
  readonly when: Condition | undefined;
  /** Members (`torque`, `when`) that are written but cannot be used, so that they are not taken for missing. */
  readonly faulty: ReadonlySet<string>;
  /** Place of a member (`holds`, `torque`), of one of its elements (`holds.1`), else of the entry's id. */
  readonly placeOf: (member: string) => Place;
}

type Data<S extends z.ZodType, Replaced extends string = never> = Omit<
  z.output<S>,
  'when' | Replaced
>;

/** A torque as the sheet needs it. */
export interface Torque {
  readonly spec: TorqueSpec;
  readonly threads: 'dry' | 'oiled' | 'plated' | 'compound' | undefined;
  /** The text of the catalogue, stage by stage. */
  readonly written: readonly string[];
  readonly place: Place;
  /** True where the manual's default rule by thread and class gives it. */
  readonly byDefault: boolean;
}

/** The rule of the manual for fasteners that have neither torque nor tightness of their own. */
export interface DefaultTorque {
  readonly thread: string;
  readonly class: string | undefined;
  readonly grade: string | undefined;
  readonly torque: Torque;
}

export type Fastener = Entry & {
  readonly kind: 'fastener';
  readonly torque: Torque | undefined;
} & Data<typeof fastenerSchema, 'torque'>;
export type Part = Entry & { readonly kind: 'part'; readonly mass: Quantity | undefined } & Data<
    typeof partSchema,
    'mass'
  >;
export type Connection = Entry & {
  readonly kind: 'connection';
  readonly torque: Torque | undefined;
} & Data<typeof connectionSchema, 'torque'>;
export type Circuit = Entry & {
  readonly kind: 'circuit';
  readonly capacity: Quantity | undefined;
  readonly mix: readonly { readonly name: string; readonly share: Quantity }[];
} & Data<typeof circuitSchema, 'capacity' | 'mix'>;
export type Energy = Entry & { readonly kind: 'energy' } & Data<typeof energySchema>;
export type Control = Entry & { readonly kind: 'control' } & Data<typeof controlSchema>;
export type Aid = Entry & { readonly kind: 'aid' } & Data<typeof aidSchema>;
export type Tool = Entry & { readonly kind: 'tool' } & Data<typeof toolSchema>;
export type Consumable = Entry & { readonly kind: 'consumable' } & Data<typeof consumableSchema>;
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
  /** False where manual.yaml is missing or faulty so that variants may be lost: an unknown variant says nothing. */
  readonly isWhole: boolean;
  /** Place of a key of manual.yaml, or of its start. */
  readonly placeOf: (key: string) => Place;
}
