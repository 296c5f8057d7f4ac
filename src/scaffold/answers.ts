/** What a new manual is begun with. */
export interface Answers {
  /** Printed on every sheet. */
  readonly title: string;
  /** Name of the machine, as the sheets print it. */
  readonly machine: string;
  /** Which units stand first: those of the SI, or inches and pounds. */
  readonly units: UnitsFirst;
  /** Start of every document number, such as WM-3. */
  readonly prefix: string | undefined;
  readonly publisher: string | undefined;
}

export const unitsFirst = ['metric', 'inch-first'] as const;
export type UnitsFirst = (typeof unitsFirst)[number];

/** The machine of a manual for which none is named: an invented one. */
export const defaultMachine = 'Pellbrook M3 paddle mixer';
export const defaultTitle = (machine: string): string => `${machine}, workshop manual`;
