/** Longest id that is made from a name; file names stay short with it. */
const longest = 40;

/** Names that some systems keep for themselves, and words that YAML reads as something other than text. */
const taken = /^(?:con|prn|aux|nul|com\d|lpt\d|y|n|yes|no|on|off|true|false|null)$/;

/** An id made from a name in any script: small letters and digits joined by hyphens, a letter first. */
export function machineId(name: string): string {
  const words = name
    .normalize('NFKD')
    .replace(/\p{M}+/gu, '')
    .toLowerCase()
    .split(/[^a-z0-9]+/)
    .filter((word) => word !== '');
  const kept = words.reduce((id, word) => {
    const longer = id === '' ? word : `${id}-${word}`;
    return longer.length <= longest ? longer : id;
  }, '');
  const id = kept === '' ? (words[0] ?? '').slice(0, longest) : kept;
  if (id === '') return 'machine';
  return /^[a-z]/.test(id) && !taken.test(id) ? id : `machine-${id}`;
}
