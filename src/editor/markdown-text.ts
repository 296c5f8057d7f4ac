/** Words of the manual as they stand, in Markdown. */
export function escaped(text: string): string {
  return text.replaceAll(/[\\`*_{}[\]<>#|~&!]/g, (sign) => `\\${sign}`).replaceAll(/\s+/g, ' ');
}
