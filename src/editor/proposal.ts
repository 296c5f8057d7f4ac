/** Something that may be typed at a place. Offsets are those of the text. */
export interface Proposal {
  readonly label: string;
  readonly kind: 'directive' | 'attribute' | 'item' | 'procedure' | 'place' | 'value' | 'unit';
  /** Beside the label: the name of an item and where it stands by now. */
  readonly detail?: string;
  /** Below it, in Markdown. */
  readonly more?: string;
  /** What is written in place of what stands from `from` to `to`. */
  readonly text: string;
  /** The same with stops for the cursor, for editors that know them. */
  readonly snippet?: string;
  readonly from: number;
  readonly to: number;
  /** Smaller ones come first; then by label. */
  readonly rank?: number;
}

/** A stretch of the text that a proposal takes the place of. */
export type Piece = Pick<Proposal, 'from' | 'to'>;
