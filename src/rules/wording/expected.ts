/** "a length is expected"; what comes after ", such as" is closed with a comma. */
export function isExpected(expected: string): string {
  const comma = expected.includes(', such as ') ? ',' : '';
  return `${expected}${comma} ${/^keys\b/.test(expected) ? 'are' : 'is'} expected`;
}
