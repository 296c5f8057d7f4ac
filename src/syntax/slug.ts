/**
 * The id of a section from the words of its heading: `2. Removal of the anvil` gives `removal-of-the-anvil`.
 * Always an id (small letters and digits joined by hyphens, a letter first); `section` where no letter is left.
 */
export function slugOf(heading: string): string {
  const plain = heading
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/['’]/g, '')
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^[^a-z]+|-+$/g, '');
  return plain === '' ? 'section' : plain;
}
