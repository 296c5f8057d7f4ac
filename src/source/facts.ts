import type { Place } from '../../schemas/finding.ts';

/** What can be wrong with a file before its meaning is looked at. */
export type SourceFact =
  | {
      /** `advice` says what to do, where the edge that read the file knows it. */
      readonly kind: 'file-unreadable';
      readonly place: Place;
      readonly reason: string;
      readonly advice?: string;
    }
  | { readonly kind: 'yaml-broken'; readonly place: Place; readonly reason: string }
  | {
      /** A key or value of YAML that the schema does not allow. `path` is such as `fasteners.anvil-bolt.count`. */
      readonly kind: 'yaml-shape';
      readonly place: Place;
      readonly path: string;
      readonly expected: string;
      readonly found?: string;
      readonly near?: string;
    };
