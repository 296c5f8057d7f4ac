import type { PdfPiece } from '../pdf-text.ts';

/** Pairs of texts of one printed page that stand over one another by more than letters may: a fifth of their height. */
export function overlaps(pieces: readonly PdfPiece[]): string[] {
  return pieces.flatMap((one, i) =>
    pieces
      .slice(i + 1)
      .filter((other) => isOver(one, other))
      .map((other) => `${one.text} / ${other.text}`),
  );
}

function isOver(one: PdfPiece, other: PdfPiece): boolean {
  const [a, b] = [letters(one), letters(other)];
  const size = Math.min(one.size, other.size);
  const across = Math.min(one.right, other.right) - Math.max(one.x, other.x);
  const down = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
  return across > size / 5 && down > size / 5;
}

/** From the height of capitals to the base; what hangs below it may touch a frame, not a word. */
const letters = ({ y, size }: PdfPiece) => ({ top: y - 0.72 * size, bottom: y });
