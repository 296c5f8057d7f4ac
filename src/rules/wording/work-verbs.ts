import type { Verb } from '../../../schemas/directives.ts';

/** An English verb of work, with the directives that may say the same, likeliest first. */
export interface WorkVerb {
  /** As the source of a regular expression. */
  readonly words: string;
  /** The particle that stands after the object: "take the cover off". */
  readonly particle?: string;
  readonly verbs: readonly Verb[];
  /**
   * What must follow for the word to be surely a command: any word; an object, where the word may be a noun ("Drain
   * plugs"); or the name of a catalogue entry, where the word is often said of things that no ledger counts.
   */
  readonly needs: 'any' | 'object' | 'item';
  /** Words of which one must follow the named entry soon. */
  readonly tail?: string;
  /** True where the command must name a position of the control. */
  readonly toPosition?: true;
  /** True where the entry may be named anywhere in the clause: "measure the width of the blade". */
  readonly anywhere?: true;
}

const out: readonly Verb[] = ['remove', 'disconnect', 'withdraw', 'drain', 'isolate'];
const back: readonly Verb[] = ['install', 'fit', 'connect', 'return', 'restore'];
/** What is made to be used once is thrown away by taking it out. */
const scrap: readonly Verb[] = ['discard', 'remove', 'replace'];
const set: readonly Verb[] = ['set'];

/** Where things go when they are put in: "onto the shaft", "under the anvil". */
const inPlace = 'in|on|into|onto|back|home|around|under|over|through|between|to its';

/** With nothing after it: "switch the mains on", not "turn the pump on its side". */
const last = '(?:\\s+again)?(?=\\W*$)';
const swungOut: readonly Verb[] = ['set', 'set-aside', ...out];
const swungBack: readonly Verb[] = ['set', 'return', ...back];

/** Of two that could be meant, the first that fits counts. */
export const workVerbs: readonly WorkVerb[] = [
  {
    words: '(?:take|lift|pull|slide|draw|drive|press|pry|prise|swing|peel|lever) (?:out|off|away)',
    verbs: out,
    needs: 'object',
  },
  {
    words: '(?:take|lift|pull|slide|draw|drive|press|pry|prise|peel|lever)',
    particle: '(?:out|off|away)',
    verbs: out,
    needs: 'object',
  },
  { words: 'unhook', verbs: out, needs: 'object' },
  {
    words: '(?:turn|twist|wind|screw)',
    tail: 'out|off',
    verbs: ['loosen', 'withdraw'],
    needs: 'item',
  },
  { words: 'pull', verbs: ['withdraw'], needs: 'item' },
  { words: 'screw (?:out|off)', verbs: ['remove'], needs: 'object' },
  { words: '(?:screw|put|slide|hook) (?:in|on)', verbs: back, needs: 'object' },
  { words: 'put back', verbs: ['install', 'return'], needs: 'object' },
  { words: 'put', particle: 'back', verbs: ['install', 'return'], needs: 'object' },
  {
    words: '(?:put|place|lay|lift|set|slide|push|press|screw|hook|drive|insert)',
    tail: inPlace,
    verbs: back,
    needs: 'item',
  },
  {
    words: '(?:press|tap|knock|drive|clip|snap) in(?! the (?:middle|cent))',
    verbs: back,
    needs: 'item',
  },
  { words: '(?:clip|snap) on', verbs: back, needs: 'item' },
  {
    words: '(?:knock|tap|clip|snap)',
    tail: '(?:back )?in|home|back on|into',
    verbs: back,
    needs: 'item',
  },
  { words: 'clip', tail: 'on|onto|to', verbs: back, needs: 'item' },
  { words: '(?:knock|tap|drift|punch|push) out', verbs: out, needs: 'item' },
  { words: '(?:knock|tap|drift|punch|push)', tail: 'out|off', verbs: out, needs: 'item' },
  { words: 'swing (?:out|open)', verbs: swungOut, needs: 'item' },
  { words: 'swing', tail: `(?:out|open)${last}`, verbs: swungOut, needs: 'item' },
  { words: 'swing (?:in|shut)', verbs: swungBack, needs: 'item' },
  { words: 'swing', tail: `(?:(?:back )?in|shut|closed)${last}`, verbs: swungBack, needs: 'item' },
  { words: 'hang up', verbs: back, needs: 'item' },
  { words: 'hang', tail: `(?:back )?up${last}`, verbs: back, needs: 'item' },
  { words: 'unclip', verbs: [...out, 'loosen'], needs: 'item' },
  { words: '(?:set|lay|move) aside', verbs: ['set-aside'], needs: 'object' },
  { words: '(?:set|lay)', particle: 'aside', verbs: ['set-aside'], needs: 'object' },
  { words: 'back off', verbs: ['loosen'], needs: 'object' },
  { words: 'throw away', verbs: scrap, needs: 'object' },
  { words: 'throw', particle: 'away', verbs: scrap, needs: 'object' },
  { words: 'mark', tail: 'as scrap', verbs: scrap, needs: 'item' },
  { words: '(?:un-?plug)', verbs: ['disconnect'], needs: 'any' },
  { words: '(?:remove|unscrew|unbolt|detach|dismount)', verbs: out, needs: 'any' },
  { words: '(?:disassemble|dismantle)', verbs: ['remove'], needs: 'any' },
  { words: '(?:install|re-?install|re-?fit|re-?attach|re-?assemble)', verbs: back, needs: 'any' },
  { words: '(?:attach|mount|insert)', verbs: back, needs: 'object' },
  { words: 'fit', verbs: ['fit', 'install'], needs: 'object' },
  { words: 'replace', verbs: ['replace', 'install', 'return'], needs: 'any' },
  { words: '(?:loosen|slacken|undo)', verbs: ['loosen'], needs: 'any' },
  { words: '(?:tighten|re-?tighten)', verbs: ['torque', 'tighten'], needs: 'any' },
  { words: '(?:torque|re-?torque)', verbs: ['torque'], needs: 'object' },
  { words: 'disconnect', verbs: ['disconnect', 'isolate'], needs: 'any' },
  { words: '(?:connect|re-?connect)', verbs: ['connect', 'restore'], needs: 'object' },
  { words: 'uncap', verbs: ['uncap'], needs: 'object' },
  { words: 'cap', verbs: ['cap'], needs: 'object' },
  { words: 'drain', verbs: ['drain'], needs: 'object' },
  { words: 'empty', verbs: ['drain'], needs: 'item' },
  { words: 'let', tail: 'run|drain|flow', verbs: ['drain'], needs: 'item' },
  { words: '(?:fill|pour) in', verbs: ['fill'], needs: 'item' },
  { words: '(?:fill|re-?fill|top up)', verbs: ['fill'], needs: 'object' },
  { words: 'bleed', verbs: ['bleed'], needs: 'object' },
  { words: 'relieve', verbs: ['relieve'], needs: 'object' },
  { words: 'isolate', verbs: ['isolate'], needs: 'object' },
  { words: 'withdraw', verbs: ['withdraw', 'remove'], needs: 'object' },
  { words: 'discard', verbs: scrap, needs: 'object' },
  { words: 'release', verbs: ['set', 'loosen'], needs: 'item' },
  {
    words: '(?:open|close|shut|engage|disengage|apply|start|stop)',
    verbs: set,
    needs: 'item',
  },
  { words: '(?:switch|turn) on', verbs: [...set, 'restore'], needs: 'item' },
  { words: '(?:switch|turn) off', verbs: [...set, 'isolate'], needs: 'item' },
  { words: '(?:switch|turn)', tail: `on${last}`, verbs: [...set, 'restore'], needs: 'item' },
  { words: '(?:switch|turn)', tail: `off${last}`, verbs: [...set, 'isolate'], needs: 'item' },
  { words: 'lock (?:out|off)', verbs: ['isolate'], needs: 'item' },
  { words: 'lock', verbs: [...set, 'isolate'], needs: 'item' },
  { words: 'unlock', verbs: [...set, 'restore'], needs: 'item' },
  {
    words: '(?:set|turn|move|push|pull|put|bring|swing|switch|raise|lower)',
    verbs: [...set, 'isolate', 'restore'],
    needs: 'item',
    toPosition: true,
  },
];

/** Things that are taken off, filled or let go in the shop and that no ledger counts. */
export const uncounted =
  /^(?:(?:the|all|any|a|an|old|excess|loose|spilt|spilled|remaining|surplus|your|its|this|used|traces|of|small|dried|protective) )*(?:dirt|dust|debris|mud|rust|scale|corrosion|burrs?|swarf|chips|shavings|grease|residues?|deposits|sealant|paint|adhesive|glue|carbon|moisture|water|air|oil film|traces|gasket (?:material|remains|residues?)|spill(?:s|ages?)?|rags?|gloves?|goggles|jewell?ery|rings?|glasses|ear muffs|masks?|helmets?|watch(?:es)?|clothing|packaging|wrapping|labels?|shipping \w+|cans?|containers?|buckets?|pans?|grease guns?|forms?|records?|logs?|tables?|faults?|problems?|leaks?|lid of the (?:can|container))\b/i;

/** Commands that change nothing that is counted; a clause that starts with one goes on with commands. */
export const otherCommands =
  'add|align|allow|apply|ask|block|catch|chock|check|clean|clear|close|coat|collect|compare|count|cover|cut|drive|engage|feel|grip|grease|guide|hang|hold|hook|inspect|keep|lay|leave|let|lift|line|listen|look|lower|lubricate|make|mark|measure|move|note|oil|open|park|place|point|position|press|prevent|pry|prise|pull|push|put|raise|read|record|release|repeat|rest|rotate|run|screw|seat|set|shut|slide|spread|stand|start|stop|store|support|swing|switch|tag|take|tap|tell|tie|touch|turn|use|wait|warm|watch|wear|wipe|write';
