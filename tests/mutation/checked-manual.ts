import type { Finding } from '../../schemas/finding.ts';
import { type ManualModel, readManual } from '../../src/catalogue/index.ts';
import { keepLedger } from '../../src/ledger/index.ts';
import { allBlocks, type LinkedManual, linkManual, targetOf } from '../../src/link/index.ts';
import { expandReverses } from '../../src/reverse/index.ts';
import {
  type Examined,
  findAll,
  makeExamined,
  type Rule,
  rules,
  runRules,
} from '../../src/rules/index.ts';
import type { ManualFiles } from '../../src/source/index.ts';
import { type Procedure, parseProcedure } from '../../src/syntax/index.ts';

type Parsed = ReturnType<typeof parseProcedure>;

/** Rules in groups: those that find most mutants first, so that the others need not be asked. */
const groups: readonly (readonly Rule[])[] = [
  rules.filter(({ family }) => family === 'balance' || family === 'order'),
  rules.filter(({ family }) => family === 'values' || family === 'safety'),
  rules.filter(({ family }) => !['balance', 'order', 'values', 'safety'].includes(family)),
];

/**
 * A clean manual that is checked again and again with one procedure changed. Only what can differ is looked
 * at: the procedure, and those that perform it; texts that have not changed are read once.
 */
export class CheckedManual {
  readonly files: ManualFiles;
  readonly linked: LinkedManual;
  readonly #manual: ManualModel;
  readonly #parsed = new Map<string, Procedure>();
  readonly #byId = new Map<string, Procedure>();

  constructor(files: ManualFiles) {
    this.files = files;
    this.#manual = readManual(files).value;
    for (const file of files.texts) {
      if (!file.path.startsWith('procedures/')) continue;
      const { value } = parseProcedure(file);
      if (value === undefined) throw new Error(`${file.path} is no procedure`);
      this.#parsed.set(file.path, value);
      this.#byId.set(value.id, value);
    }
    this.linked = linkManual(this.#manual, [...this.#parsed.values()], files).value;
  }

  /** The rules, of level error or warning, that find something with this text in a file; none for a clean text. */
  found(path: string, text: string): readonly string[] {
    const parsed = parseProcedure({ path, text });
    if (parsed.value === undefined) return ['unreadable'];
    const changed = parsed.value;
    const own = this.#rulesFor([changed], changed, parsed);
    if (own.length > 0) return own;
    const callers = this.#performersOf(changed.id);
    return callers.length === 0 ? [] : this.#rulesFor([changed, ...callers], changed, parsed);
  }

  /** A manual of some procedures that performs others but tells only of these. */
  #rulesFor(told: readonly Procedure[], changed: Procedure, parsed: Parsed): readonly string[] {
    const near = this.#near(told, changed);
    const linked = linkManual(this.#manual, near, this.files);
    const expanded = expandReverses(linked.value);
    const files = new Set(told.map(({ file }) => file));
    const ids = new Set(told.map(({ id }) => id));
    const narrow = telling(linked.value, ids);
    const narrowExpanded = telling(expanded.value, ids);
    const facts = [
      ...parsed.facts,
      ...[...linked.facts, ...expanded.facts].filter(({ place }) => files.has(place.file)),
      ...keepLedger(narrowExpanded),
    ];
    const texts = this.files.texts.map((one) =>
      one.path === changed.file ? { path: one.path, text: changed.text } : one,
    );
    const examined: Examined = {
      ...makeExamined(narrow, facts, { ...this.files, texts }, narrowExpanded),
      // What a finding offers to write does not change whether there is one.
      completion: () => undefined,
    };
    if (told.some(({ waivers }) => waivers.length > 0))
      return graveAmong(findAll(examined, undefined).findings);
    for (const group of groups) {
      const grave = graveAmong(runRules(group, examined, this.#manual.settings.rules));
      if (grave.length > 0) return grave;
    }
    return [];
  }

  /** Procedures, with all that they perform and link to. */
  #near(told: readonly Procedure[], changed: Procedure): readonly Procedure[] {
    const near = new Set(told);
    for (const procedure of told) {
      for (const { url } of procedure.links) {
        const target = targetOf(procedure.file, url);
        const found = target.kind === 'file' ? this.#parsed.get(target.path) : undefined;
        if (found !== undefined) near.add(found.id === changed.id ? changed : found);
      }
    }
    for (const procedure of near) {
      for (const id of performedBy(procedure)) {
        const callee = id === changed.id ? changed : this.#byId.get(id);
        if (callee !== undefined) near.add(callee);
      }
    }
    return [...near];
  }

  #performersOf(id: string): readonly Procedure[] {
    const ids = new Set([id]);
    for (const one of ids) {
      for (const procedure of this.#byId.values())
        if (performedBy(procedure).includes(one)) ids.add(procedure.id);
    }
    ids.delete(id);
    return [...ids].flatMap((one) => this.#byId.get(one) ?? []);
  }
}

function performedBy(procedure: Procedure): readonly string[] {
  return [...allBlocks(procedure)].flatMap((block) =>
    block.type === 'perform' ? [block.procedure.id] : [],
  );
}

/** Rules that look at all procedures of a manual, of which only some are told of here. */
const ofWhole: readonly string[] = ['never-rechecked'];

function graveAmong(findings: readonly Finding[]): readonly string[] {
  const grave = findings.filter(({ level, rule }) => level !== 'note' && !ofWhole.includes(rule));
  return [...new Set(grave.map(({ rule }) => rule))];
}

type Procedures = LinkedManual['procedures'];
type Linked = Procedures extends ReadonlyMap<string, infer L> ? L : never;

/** The manual that knows all procedures and tells of some. */
function telling(linked: LinkedManual, told: ReadonlySet<string>): LinkedManual {
  return { ...linked, procedures: new Telling(linked.procedures, told) };
}

/** Knows all procedures, and goes through some of them. */
class Telling extends Map<string, Linked> {
  readonly #all: Procedures;

  constructor(all: Procedures, told: ReadonlySet<string>) {
    super([...all].filter(([id]) => told.has(id)));
    this.#all = all;
  }

  override get(id: string): Linked | undefined {
    return this.#all?.get(id);
  }
}
