import type { ChangeKind } from '../../schemas/redline.ts';
import type { Fact } from './fact.ts';

/**
 * What changed, in a sentence without a full stop: the subject, then how it was and how it is. Where it stands
 * (procedure, step) is told beside it.
 */
export function sentenceOf(fact: Fact): string {
  return sentences[fact.kind](fact);
}

type Sentence = (fact: Fact) => string;

/** `95 N·m → 85 N·m`, `95 N·m → nothing`. */
const values = ({ before, after }: Fact): string =>
  `${before ?? 'nothing'} → ${after ?? 'nothing'}`;

const thing = ({ name, item }: Fact): string => name ?? item ?? '';

/** "Torque of anvil bolt lowered: 95 N·m → 85 N·m". */
const shifted =
  (what: string): Sentence =>
  (fact) => {
    const of = thing(fact) === '' ? '' : ` of ${thing(fact)}`;
    return `${what}${of} ${howShifted(fact)}: ${valueOrValues(fact)}`;
  };

function howShifted({ before, after, direction }: Fact): string {
  if (before === undefined) return 'is new';
  if (after === undefined) return 'is gone';
  switch (direction) {
    case 'lower':
      return 'lowered';
    case 'higher':
      return 'raised';
    case 'wider':
      return 'widened';
    case 'narrower':
      return 'narrowed';
    default:
      return 'changed';
  }
}

const valueOrValues = (fact: Fact): string =>
  fact.before === undefined || fact.after === undefined
    ? `${fact.before ?? fact.after ?? ''}`
    : values(fact);

/** `to open-hood`: what a verb is done to. */
const act = ({ verb = '', name, item = '' }: Fact): string => `${verb} ${name ?? item}`;

const quoted = (text: string | undefined): string => `“${text ?? ''}”`;

function cameOrWent(what: string, fact: Fact): string {
  if (fact.after === undefined) return `${what} removed: ${quoted(fact.before)}`;
  if (fact.before === undefined) return `${what} added: ${quoted(fact.after)}`;
  return `${what} changed: ${quoted(fact.before)} → ${quoted(fact.after)}`;
}

/** From one step to another. */
function relocated(what: string, { before, after, direction }: Fact): string {
  const how = direction === undefined ? 'now stands in' : `comes ${direction}, in`;
  return `${what} ${how} ${after ?? ''} (was in ${before ?? ''})`;
}

/** What is done in a step: "(remove, torque)". Jobs and panels are told by its words. */
function done({ verb = '' }: Fact): string {
  const verbs = verb
    .split(', ')
    .filter((one) => one !== '' && one !== 'perform' && one !== 'reverse')
    .map((one) => (one === 'hazard' ? 'a hazard panel' : one));
  return verbs.length === 0 ? '' : ` (${verbs.join(', ')})`;
}

const sentences: Readonly<Record<ChangeKind, Sentence>> = {
  torque: shifted('Torque'),
  'torque-stages': (fact) =>
    `Stages of the torque of ${thing(fact) || fact.field} ${
      fact.direction === 'lower'
        ? 'are fewer'
        : fact.direction === 'higher'
          ? 'are more'
          : 'changed'
    }: ${values(fact)}`,
  'torque-angle': shifted('Angle in the torque'),
  'torque-tolerance': shifted('Tolerance of the torque'),
  'torque-lubrication': (fact) => `Threads of ${thing(fact) || fact.field}: ${values(fact)}`,
  'default-torque': (fact) =>
    shifted(`Default torque for ${fact.field ?? ''}`)({ ...fact, name: '' }),
  count: shifted('Count'),
  fluid: shifted('Fluid'),
  mix: shifted('Mix'),
  capacity: shifted('Capacity'),
  limit: (fact) => shifted(fact.field === undefined ? 'Limit' : `Limit ${fact.field}`)(fact),
  mass: shifted('Mass'),
  unit: (fact) => {
    const what = fact.verb === undefined ? (fact.field ?? 'torque') : `${act(fact)}, ${fact.field}`;
    const of = fact.verb !== undefined || thing(fact) === '' ? '' : ` of ${thing(fact)}`;
    return `The same ${what}${of} in another unit: ${values(fact)}`;
  },
  hazard: (fact) => {
    if (fact.field === 'place') return relocated(`Hazard ${quoted(fact.name)}`, fact);
    return cameOrWent('Hazard', fact);
  },
  'hazard-signal': (fact) =>
    `Signal word of ${quoted(fact.name)} ${howShifted(fact)}: ${(fact.before ?? '').toUpperCase()} → ${(fact.after ?? '').toUpperCase()}`,
  'hazard-words': (fact) => {
    const part = { harm: 'Harm', avoid: 'How to avoid it', hazard: 'Hazard' };
    const what = fact.field === 'harm' || fact.field === 'avoid' ? part[fact.field] : part.hazard;
    return cameOrWent(
      `${what}${fact.field === 'hazard' ? '' : `, of ${quoted(fact.name)},`}`,
      fact,
    );
  },
  entry: (fact) => cameOrWent(`Entry ${fact.item ?? ''} (${fact.field ?? ''})`, fact),
  'entry-id': (fact) => `Id of ${thing(fact)}: ${values(fact)}`,
  'entry-field': (fact) => `${fact.field ?? ''} of ${thing(fact)}: ${values(fact)}`,
  machines: (fact) => {
    const what =
      fact.verb === undefined
        ? (fact.name ?? fact.field ?? (fact.step === undefined ? 'It' : 'The step'))
        : act(fact);
    const how =
      fact.direction === 'wider'
        ? 'is for more machines'
        : fact.direction === 'narrower'
          ? 'is for fewer machines'
          : 'is for other machines';
    return `${what} ${how}: ${values(fact)}`;
  },
  setting: (fact) => `${fact.field ?? ''}: ${values(fact)}`,
  variant: (fact) =>
    fact.field === 'never'
      ? cameOrWent('Machines that there never are', fact)
      : `Variants ${fact.field ?? ''}: ${values(fact)}`,
  'rule-level': (fact) => `Level of rule ${fact.field ?? ''} ${howShifted(fact)}: ${values(fact)}`,
  procedure: (fact) => cameOrWent('Procedure', fact),
  'procedure-id': (fact) => `Id of the procedure: ${values(fact)}`,
  'procedure-file': (fact) => `File of the procedure: ${values(fact)}`,
  'procedure-field': (fact) => `${fact.field ?? ''}: ${values(fact)}`,
  contract: (fact) =>
    `${fact.field === 'starts' ? 'Starts with' : 'Leaves'} ${fact.item ?? ''}: ${fact.before ?? 'as it should be'} → ${fact.after ?? 'as it should be'}`,
  step: (fact) => `${cameOrWent('Step', fact)}${done(fact)}`,
  'step-moved': (fact) => {
    if (fact.direction === undefined)
      return `Step now stands under ${quoted(fact.step?.section)}${done(fact)}`;
    const passed = fact.name === undefined ? '' : `, now before ${fact.name}`;
    return `Step moved ${fact.direction}: ${values(fact)}${done(fact)}${passed}`;
  },
  'step-way': (fact) => `${fact.verb === undefined ? 'Done' : act(fact)}: ${values(fact)}`,
  needs: (fact) =>
    fact.field === 'at'
      ? `Done before the return of: ${values(fact)}`
      : fact.after === undefined
        ? `No longer needs step ${fact.before ?? ''} before it`
        : `Needs step ${fact.after} before it`,
  people: (fact) => `People: ${values(fact)}`,
  time: (fact) => `${fact.field === 'wait' ? 'Wait' : 'Time'}: ${values(fact)}`,
  tool: (fact) =>
    `${fact.after === undefined ? 'Without' : 'With'} ${thing(fact)} in the list of tools and consumables`,
  action: (fact) => {
    if (fact.field === 'place') return relocated(act(fact), fact);
    return `Action ${fact.after === undefined ? 'removed' : 'added'}: ${act(fact)}, ${quoted(fact.before ?? fact.after)}`;
  },
  quantity: (fact) => `${act(fact)}, pieces: ${fact.before ?? 'all'} → ${fact.after ?? 'all'}`,
  value: (fact) => `${act(fact)}, ${fact.field ?? ''}: ${values(fact)}`,
  detail: (fact) => `${act(fact)}, ${fact.field ?? ''}: ${values(fact)}`,
  perform: (fact) => {
    if (fact.field === 'place') return relocated(`Job ${fact.name ?? ''}`, fact);
    return fact.name === undefined ? `Job: ${values(fact)}` : cameOrWent('Job', fact);
  },
  reverse: (fact) => {
    if (fact.field === 'place') return relocated(`The way back of ${fact.name ?? ''}`, fact);
    if (fact.name === undefined) return `The way back of ${fact.field ?? ''}: ${values(fact)}`;
    return `The written-out way back of ${fact.name} ${fact.after === undefined ? 'removed' : 'added'}`;
  },
  'record-box': (fact) =>
    `Box for ${fact.before ?? fact.after ?? ''} ${fact.after === undefined ? 'removed' : 'added'}`,
  figure: (fact) => cameOrWent('Figure', fact),
  waiver: (fact) => {
    const of = `Waiver of ${fact.field ?? ''}`;
    if (fact.before === undefined) return `${of} added ${fact.after ?? ''}`;
    if (fact.after === undefined) return `${of} removed ${fact.before}`;
    return `${of} ${howShifted(fact)}: ${values(fact)}`;
  },
  words: (fact) =>
    cameOrWent(fact.field === undefined ? 'Words' : `Words of the ${fact.field}`, fact),
};
