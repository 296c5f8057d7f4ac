const small = [
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
  'thirteen',
  'fourteen',
  'fifteen',
  'sixteen',
  'seventeen',
  'eighteen',
  'nineteen',
  'twenty',
];
const tens = ['twenty', 'thirty', 'forty', 'fifty', 'sixty', 'seventy', 'eighty', 'ninety'];

/** English number words, each with how many it says. */
const numbers = new Map<string, number>([
  ...small.map((word, i) => [word, i + 1] as const),
  ...tens.map((word, i) => [word, 20 + 10 * i] as const),
  ...tens.flatMap((ten, i) =>
    small.slice(0, 9).map((one, j) => [`${ten}-${one}`, 21 + 10 * i + j] as const),
  ),
  ['both', 2],
  ['a pair of', 2],
  ['the pair of', 2],
  ['a dozen', 12],
  ['the dozen', 12],
]);

/** How many a number word or figure says; undefined where it is neither. */
export function numberSaid(words: string): number | undefined {
  const plain = words.toLowerCase().replace(/\s+/g, ' ');
  return /^\d{1,3}$/.test(plain) ? Number(plain) : numbers.get(plain);
}

/** A number word or figure, as the source of a regular expression; what goes on longer comes first. */
export const numberPattern = `(?:\\d{1,3}|(?:${tens.join('|')})-(?:${small.slice(0, 9).join('|')})|(?:a|the)\\s+(?:pair\\s+of|dozen)|${[...small, ...tens, 'both'].sort((a, b) => b.length - a.length || (a < b ? -1 : 1)).join('|')})`;

/** Words after which a figure is a name and counts nothing: "step 4", "size 8". */
export const namedByNumber =
  /\b(?:no|nos|number|numbers|step|steps|figure|fig|table|item|pos|position|positions|size|class|grade|row|line|page|stage|pass|type|model|group|series)\.?\s*$/i;

/** Words that cannot stand between a number and the noun that it counts. */
export const noAdjective =
  /^(?:a|an|the|of|and|or|to|in|on|at|by|with|from|for|into|off|out|as|per|than|then|more|other|others|further|extra|ones|mm|cm|m|km|in|inch|ft|kg|g|lb|nm|n·m|bar|psi|kpa|mpa|l|ml|min|s|h|kn|n|kw|w|v|a|hours?|minutes?|times|turn|hand|half|quarter|third)$/i;

/** Words beside which a number says only a share of the pieces: "two bolts on each side". */
export const sharing =
  /\b(?:each|every|per|apiece|either|at a time|one by one|in turn|others?|ones|half of|more)\b|\b(?:both|all)\s+(?:sides|ends|corners|halves)\b/i;

/** "each of the 8 bolts", "the 8 bolts, each with its washer", "by one turn each" speak of all of them. */
export const everyOne =
  /\b(?:each|every\s+one|all)\s+of\s+(?=(?:the|these|those|its|their)\b)|,\s+each\s+(?:with|in|on|to)\b|\bturns?\s+each\b/gi;

/** Words that may follow "one bolt"; with others, as in "one bolt head", it is something else that is counted. */
export const afterOne =
  /^\s*(?:$|[^\s\p{L}]|(?:from|off|out|and|of|in|on|to|by|with|until|then|only|back|loose|as|for|so)\b)/iu;
