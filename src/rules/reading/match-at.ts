/** What a sticky pattern matches at an offset; empty where it does not. */
export function matchAt(pattern: RegExp, text: string, at: number): string {
  pattern.lastIndex = at;
  return pattern.exec(text)?.[0] ?? '';
}
