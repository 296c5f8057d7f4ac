/** Id of a part number in the list of parts: letters, digits, hyphens and dots stay, all else is told by its code. */
export function partNumberAnchor(number: string): string {
  return `no.${number.replace(/[^A-Za-z0-9.-]/gu, (sign) => `_${sign.codePointAt(0)?.toString(16)}_`)}`;
}

/** Where the site says what a part number stands for. */
export function partNumberHref(number: string): string {
  return `parts/index.html#${partNumberAnchor(number)}`;
}
