/** Matches a sticky pattern at exactly this offset. */
export function matchAt(pattern: RegExp, text: string, at: number): RegExpExecArray | undefined {
  pattern.lastIndex = at;
  return pattern.exec(text) ?? undefined;
}

/** The offset after any spaces, no-break and thin ones too. */
export function afterSpace(text: string, at: number): number {
  return at + (matchAt(/\s*/y, text, at)?.[0].length ?? 0);
}
