/** What ids of the manual before are called after; those of the manual after are called what they are. */
export interface Names {
  item(id: string): string;
  procedure(id: string): string;
  /** Of a section of the procedure itself, or of another one. */
  section(id: string, procedure?: string): string;
  step(id: string): string;
}

const same = (id: string): string => id;

export const sameNames: Names = { item: same, procedure: same, section: same, step: same };

/** Names that take the other id where there is one. */
export const renamed =
  (ids: ReadonlyMap<string, string>) =>
  (id: string): string =>
    ids.get(id) ?? id;
