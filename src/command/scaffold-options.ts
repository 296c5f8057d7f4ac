import type { UnitsFirst } from '../scaffold/index.ts';

/** What a new manual is begun with, as far as it is said; texts are one line each once they are read. */
export interface ScaffoldOptions {
  readonly title: string | undefined;
  readonly machine: string | undefined;
  readonly units: UnitsFirst | undefined;
  readonly prefix: string | undefined;
  readonly publisher: string | undefined;
}
