const done =
  'removed|taken|lifted|installed|fitted|refitted|reinstalled|mounted|attached|loosened|slackened|undone|tightened|torqued|drained|filled|refilled|bled|disconnected|connected|reconnected|capped|uncapped|isolated|withdrawn|discarded|replaced|unscrewed|opened|closed|shut|switched|set|checked|measured|cleaned|put|placed|turned|pulled|pushed';
const must =
  '(?:must|should|shall|has to|have to|needs? to|is to|are to|ought to|may now|can now|will)';
const person =
  '(?:you|we|one|the (?:technician|mechanic|fitter|operator|worker|user|helper|person))';
const thing =
  '(?:the|a|an|all|both|each|every|this|that|these|those|its|their|\\d+)(?:\\s+[^\\s,;:]+){1,6}?';

/** Ways to begin a step without a command: "You should remove …", "The bolts are removed". */
const patterns: readonly RegExp[] = [
  new RegExp(`^${person}\\s+(?:(?:now|then|also)\\s+)?(?:${must})\\b`, 'i'),
  new RegExp(`^${thing}\\s+(?:${must})\\s+(?:now\\s+|then\\s+)?be\\s+(?:${done})\\b`, 'i'),
  new RegExp(
    `^${thing}\\s+(?:is|are)\\s+(?:(?:now|then|next|first)\\s+)?(?:${done})\\b(?!\\s+(?:when|if|once|as soon|correctly|properly|to|by|at the factory))`,
    'i',
  ),
];

/** The words with which a sentence begins as a statement, where it should command. */
export function statement(sentence: string): string | undefined {
  for (const pattern of patterns) {
    const found = pattern.exec(sentence);
    if (found !== null) return found[0];
  }
  return undefined;
}
