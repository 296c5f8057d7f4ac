/** Kinds of catalogue entries with their article. */
const kindWords: Readonly<Record<string, string>> = {
  fastener: 'a fastener',
  part: 'a part',
  connection: 'a connection',
  circuit: 'a circuit',
  energy: 'a source of energy',
  control: 'a control',
  aid: 'an aid',
  tool: 'a tool',
  consumable: 'a consumable',
  hazard: 'a hazard',
};

/** "a fastener"; a word that is no kind comes back as it is. */
export function kindWord(kind: string): string {
  return kindWords[kind] ?? kind;
}
