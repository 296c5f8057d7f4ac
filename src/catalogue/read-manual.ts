import { type ManualSettings, manualSchema } from '../../schemas/manual.ts';
import { unitPolicy } from '../quantity/index.ts';
import { locator, type ManualFiles, readYaml, type SourceFact } from '../source/index.ts';
import { readDefaultTorques } from './default-torques.ts';
import type { CatalogueFact } from './facts.ts';
import type { Catalogue, ManualModel } from './model.ts';
import { machineFile, readMachine } from './read-machine.ts';
import { readVariants } from './read-variants.ts';
import { Reading } from './reading.ts';

const manualFile = 'manual.yaml';

/** Keys stand for themselves, and so do the entries of some: a fault in one leaves the others. */
const parts = ['*', 'units.*', 'variants.*', 'rules.*'];

/** For a file without a title, whose other settings are good all the same. */
const untitledSchema = manualSchema.partial({ title: true });

/**
 * `manual.yaml` and the machines. Whatever is wrong, there is a model: settings that are missing or faulty have
 * their defaults (an empty title), faulty entries are left out.
 */
export function readManual(files: ManualFiles): {
  value: ManualModel;
  facts: readonly (SourceFact | CatalogueFact)[];
} {
  const file = files.texts.find(({ path }) => path === manualFile);
  const at = locator(manualFile, file?.text ?? '');
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
  const isWhole = file !== undefined && !yaml.isBroken && !yaml.dropped.some(mayLoseVariants);
  const variants = { space, isWhole };
  const { machines, facts } = readMachines(files, { variants, defaultTorques });
  return {
    value: {
      settings,
      policy: policy.value,
      space,
      machines,
      defaultTorques,
      liftLimit,
      isWhole,
      placeOf: yaml.placeOf,
    },
    facts: [
      ...unreadable(files, file === undefined),
      ...(file === undefined ? [] : yaml.facts),
      ...reading.facts,
      ...facts,
    ],
  };
}

/** A faulty variant, or a key that may be a misspelt `variants`. */
function mayLoseVariants(dropped: string): boolean {
  const [key = ''] = dropped.split('.');
  return key === 'variants' || !Object.hasOwn(manualSchema.shape, key);
}

function readMachines(
  files: ManualFiles,
  context: Parameters<typeof readMachine>[1],
): { machines: ReadonlyMap<string, Catalogue>; facts: readonly (SourceFact | CatalogueFact)[] } {
  const machines = new Map<string, Catalogue>();
  const facts: (SourceFact | CatalogueFact)[] = [];
  const texts = files.texts.filter(({ path }) => machineFile.test(path));
  for (const text of texts.sort((a, b) => (a.path < b.path ? -1 : a.path > b.path ? 1 : 0))) {
    const { value, facts: own } = readMachine(text, context);
    facts.push(...own);
    const first = machines.get(value.id);
    if (first === undefined) machines.set(value.id, value);
    else {
      const start = (file: string) => locator(file, '').place(0, 0);
      facts.push({
        kind: 'duplicate-id',
        id: value.id,
        place: start(value.file),
        first: start(first.file),
        what: 'machine',
      });
    }
  }
  return { machines, facts };
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
