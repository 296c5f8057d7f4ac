import { type ManualSettings, manualSchema } from '../../schemas/manual.ts';
import { unitPolicy } from '../quantity/index.ts';
import {
  compareText,
  locator,
  type ManualFiles,
  readYaml,
  type SourceFact,
} from '../source/index.ts';
import { readDefaultTorques } from './default-torques.ts';
import type { CatalogueFact } from './facts.ts';
import type { Catalogue, ManualModel } from './model.ts';
import { machineFile, readMachine } from './read-machine.ts';
import { readVariants } from './read-variants.ts';
import { Reading } from './reading.ts';

/** The path of the settings. */
export const manualFile = 'manual.yaml';

/** Keys stand for themselves, and so do the entries of some: a fault in one leaves the others. */
const parts = ['*', 'units.*', 'variants.*', 'rules.*'];

/** For a file without a title, whose other settings are good all the same. */
const untitledSchema = manualSchema.partial({ title: true });

type Facts = readonly (SourceFact | CatalogueFact)[];

/** `manual.yaml` and the machines, with what is wrong with them. */
export interface ReadManual {
  readonly value: ManualModel;
  readonly facts: Facts;
  /** Of these, what is wrong with manual.yaml, and files that are missing or cannot be read. */
  readonly ownFacts: Facts;
  /** Of these, what is wrong in the file of a machine, by its path. */
  readonly machineFacts: ReadonlyMap<string, Facts>;
  /** In order of their files, those that cannot be had by their id included. */
  readonly machines: readonly MachineName[];
}

/**
 * `manual.yaml` and the machines. Whatever is wrong, there is a model: settings that are missing or faulty have
 * their defaults (an empty title), faulty entries are left out.
 */
export const readManual = (files: ManualFiles): ReadManual => new ManualReader().read(files);

/** Reads a manual again and again; files that have not changed since the last time are not read anew. */
export class ManualReader {
  #settings: { readonly text: string | undefined; readonly read: ReadSettings } | undefined;
  #machines: ReadonlyMap<string, { readonly text: string; readonly read: ReadMachine }> = new Map();

  read(files: ManualFiles): ReadManual {
    const text = files.texts.find(({ path }) => path === manualFile)?.text;
    if (this.#settings === undefined || this.#settings.text !== text) {
      this.#settings = { text, read: readSettings(text) };
      this.#machines = new Map();
    }
    const { value, facts } = this.#settings.read;
    const read = this.#readMachines(files, value);
    const machines = read.map((one) => one.value);
    const ownFacts = [...unreadable(files, text === undefined), ...facts];
    const machineFacts = new Map(read.map((one) => [one.value.file, one.facts]));
    return {
      value: { ...value, machines: firstById(machines) },
      facts: [...ownFacts, ...read.flatMap((one) => one.facts), ...machinesTwice(machines)],
      ownFacts,
      machineFacts,
      machines,
    };
  }

  #readMachines(files: ManualFiles, settings: Settings): readonly ReadMachine[] {
    const context = {
      variants: { space: settings.space, isWhole: settings.isWhole },
      defaultTorques: settings.defaultTorques,
    };
    const texts = files.texts.filter(({ path }) => machineFile.test(path));
    const read = new Map(
      texts
        .toSorted((a, b) => compareText(a.path, b.path))
        .map((file) => {
          const known = this.#machines.get(file.path);
          const isSame = known !== undefined && known.text === file.text;
          const one = isSame ? known.read : readMachine(file, context);
          return [file.path, { text: file.text, read: one }];
        }),
    );
    // A machine that is not in this share may be in the next.
    this.#machines = new Map([...this.#machines, ...read]);
    return [...read.values()].map((one) => one.read);
  }
}

type Settings = Omit<ManualModel, 'machines'>;
type ReadMachine = ReturnType<typeof readMachine>;

interface ReadSettings {
  readonly value: Settings;
  readonly facts: Facts;
}

/** manual.yaml; `text` is undefined where it is missing. */
function readSettings(text: string | undefined): ReadSettings {
  const at = locator(manualFile, text ?? '');
  const yaml = readYaml(at, 0, at.text.length, manualSchema, parts);
  const found = yaml.value ?? readYaml(at, 0, at.text.length, untitledSchema, parts).value;
  const settings: ManualSettings = {
    ...(found ?? untitledSchema.parse({})),
    title: found?.title ?? '',
  };
  const reading = new Reading({ locator: at, placeOf: yaml.placeOf, keyPlaceOf: yaml.keyPlaceOf });
  const policy = unitPolicy(settings.units);
  for (const problem of policy.problems) {
    reading.facts.push({
      kind: 'units-wrong',
      place:
        problem.code === 'kind-unknown'
          ? yaml.keyPlaceOf(`units.${problem.kind}`)
          : yaml.placeOf(`units.${problem.kind}`),
      problem,
    });
  }
  const space = readVariants(reading, settings);
  const defaultTorques = readDefaultTorques(reading, settings);
  const limit = settings['lift-limit'];
  const liftLimit =
    limit === undefined
      ? undefined
      : reading.quantity('lift-limit', limit, 'mass', 'the lifting limit');
  const isWhole = text !== undefined && !yaml.isBroken && !yaml.dropped.some(mayLoseVariants);
  return {
    value: {
      settings,
      policy: policy.value,
      space,
      defaultTorques,
      liftLimit,
      isWhole,
      placeOf: yaml.placeOf,
    },
    facts: [...(text === undefined ? [] : yaml.facts), ...reading.facts],
  };
}

/** A faulty variant, or a key that may be a misspelt `variants`. */
function mayLoseVariants(dropped: string): boolean {
  const [key = ''] = dropped.split('.');
  return key === 'variants' || !Object.hasOwn(manualSchema.shape, key);
}

/** What a machine is called, and where it is written. */
export type MachineName = Pick<Catalogue, 'id' | 'file'>;

function firstById<T extends MachineName>(all: readonly T[]): Map<string, T> {
  const machines = new Map<string, T>();
  for (const machine of all) if (!machines.has(machine.id)) machines.set(machine.id, machine);
  return machines;
}

/** Machines that cannot be had by their id, since one before them has it. */
export function machinesTwice(all: readonly MachineName[]): readonly CatalogueFact[] {
  const first = firstById(all);
  const start = (file: string) => locator(file, '').place(0, 0);
  return all.flatMap(({ id, file }): readonly CatalogueFact[] => {
    const other = first.get(id)?.file ?? file;
    if (other === file) return [];
    return [{ kind: 'duplicate-id', id, place: start(file), first: start(other), what: 'machine' }];
  });
}

/** Files of this room that the edge could not read, and the one that must be there. */
function unreadable(files: ManualFiles, isMissing: boolean): readonly SourceFact[] {
  const own = files.unreadable.filter(({ path }) => path === manualFile || machineFile.test(path));
  const told = own.map(({ path, reason, advice }): SourceFact => {
    const place = locator(path, '').place(0, 0);
    return { kind: 'file-unreadable', place, reason, ...(advice !== undefined && { advice }) };
  });
  if (!isMissing || own.some(({ path }) => path === manualFile)) return told;
  const place = locator(manualFile, '').place(0, 0);
  return [{ kind: 'file-unreadable', place, reason: 'the folder has no such file' }, ...told];
}
