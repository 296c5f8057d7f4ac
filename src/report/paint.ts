import type { Level } from '../../schemas/finding.ts';

/** Colours, or none. */
export interface Paint {
  readonly level: Record<Level, (text: string) => string>;
  readonly faint: (text: string) => string;
  readonly strong: (text: string) => string;
}

const same = (text: string): string => text;

export const noPaint: Paint = {
  level: { error: same, warning: same, note: same },
  faint: same,
  strong: same,
};
