import type { NewEntry } from '../../schemas/untracked.ts';
import type { LinkedManual, LinkedProcedure } from '../link/index.ts';
import { type Guess, guessOf } from './entry-guess.ts';
import { stemOf } from './noun-phrase.ts';
import type { Sighting } from './sighting.ts';

/** An entry to write, with the sightings that need it. */
export interface Lacking extends NewEntry {
  readonly kind: Guess['kind'];
  readonly sightings: readonly Sighting[];
}

/**
 * The entries that no catalogue has, one for each noun and procedure; for what several procedures of a machine name,
 * one in the file of the machine.
 */
export function lackingEntries(
  sightings: readonly Sighting[],
  manual: LinkedManual,
): readonly Lacking[] {
  const wanted = new Map<string, { home: Home; guesses: Guess[]; sightings: Sighting[] }>();
  const guessed = sightings.flatMap((sighting) => {
    const { candidates, one } = sighting;
    const guess = candidates.fits.length > 0 || candidates.near ? undefined : guessOf(sighting);
    const isTaken = guess !== undefined && one.catalogue.items.has(guess.id);
    return guess === undefined || isTaken ? [] : [{ sighting, guess }];
  });
  const users = new Map<string, Set<string>>();
  for (const { sighting, guess } of guessed) {
    const key = `${machineOf(sighting.one, manual)?.file} ${guess.id}`;
    users.set(key, (users.get(key) ?? new Set()).add(sighting.one.procedure.id));
  }
  for (const { sighting, guess } of guessed) {
    const machine = machineOf(sighting.one, manual);
    const isShared = (users.get(`${machine?.file} ${guess.id}`)?.size ?? 0) > 1;
    const { id: procedure, file: own } = sighting.one.procedure;
    const file = isShared && machine !== undefined ? machine.file : own;
    const group = wanted.get(`${file} ${guess.id}`) ?? {
      home: { file, procedure },
      guesses: [],
      sightings: [],
    };
    group.guesses.push(guess);
    group.sightings.push(sighting);
    wanted.set(`${file} ${guess.id}`, group);
  }
  return [...wanted.values()].map(({ home, guesses, sightings }) =>
    entryOf(home, guesses, sightings),
  );
}

interface Home {
  readonly file: string;
  readonly procedure: string;
}

function entryOf(home: Home, guesses: readonly Guess[], sightings: readonly Sighting[]): Lacking {
  const best = guesses.find(({ kind }) => kind !== 'part') ?? guesses[0];
  if (best === undefined) throw new Error('an entry without a sighting');
  const counts = [...new Set(guesses.flatMap(({ count }) => count ?? []))];
  const isMany = guesses.some(({ isPlural }) => isPlural);
  const [count] = counts;
  const said = counts.length === 1 && count !== undefined ? String(count) : '…';
  const counted =
    best.section === 'fasteners' ||
    best.section === 'parts' ||
    best.section === 'connections' ||
    best.section === 'aids';
  const members = [
    `name: ${best.name}`,
    ...best.members,
    ...(counted && (isMany || counts.length > 1) ? [`count: ${said}`] : []),
  ];
  const entry = `${best.id}: { ${members.join(', ')} }`;
  const { kind, section, id } = best;
  return {
    ...home,
    section,
    id,
    entry,
    isWhole: !entry.includes('…') && !sightings.some(hasLikeness),
    kind,
    sightings,
  };
}

/** Whether the machine has entries that end in the same word: the writer may mean one of them. */
function hasLikeness({ phrase, one }: Sighting): boolean {
  const noun = phrase?.stems.at(-1) ?? '';
  return [...one.catalogue.items.values()].some(
    (item) =>
      item.place.file !== one.procedure.file &&
      item.kind !== 'hazard' &&
      stemOf(item.name.split(/\s+/).at(-1) ?? '') === noun,
  );
}

/** The machine whose catalogue a procedure speaks of. */
function machineOf({ procedure }: LinkedProcedure, { manual }: LinkedManual) {
  const { machine } = procedure.front;
  if (machine !== undefined) return manual.machines.get(machine);
  const [only, ...others] = manual.machines.values();
  return others.length === 0 ? only : undefined;
}
