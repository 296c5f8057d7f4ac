import {
  type MachineName,
  machinesTwice,
  manualFile,
  type ReadManual,
} from '../catalogue/index.ts';
import { type Ledger, openLedger } from '../ledger/index.ts';
import {
  type Assets,
  checkEntryFigures,
  type LinkedManual,
  type LinkedProcedure,
  linkFacts,
  linkProcedure,
  type Outlines,
} from '../link/index.ts';
import { Completer, Expansion, type WrittenOut } from '../reverse/index.ts';
import {
  type Fact,
  type Look,
  lookAt,
  makeExamined,
  type Part,
  rules,
  type Subject,
  standingIn,
} from '../rules/index.ts';
import { isProcedureFile, locator, type ManualFiles } from '../source/index.ts';
import type { parseProcedure } from '../syntax/index.ts';

export type Parsed = ReturnType<typeof parseProcedure>;

/** A manual, or a share of it, that has been read and is to be looked at. */
export interface Material {
  readonly manual: Pick<ReadManual, 'value' | 'ownFacts' | 'machineFacts'>;
  /** Of the whole manual, in order of their files. */
  readonly machines: readonly MachineName[];
  /** By path: the files of the share, and those of all that they lead to. */
  readonly parsed: ReadonlyMap<string, Parsed>;
  /** Of the whole manual. */
  readonly outlines: Outlines;
  readonly assets: Assets;
  readonly unreadable: ManualFiles['unreadable'];
  /** Text of a file of the manual; empty when there is none. */
  readonly textOf: (file: string) => string;
  /** In place of `linkProcedure`. */
  readonly link?: typeof linkProcedure;
}

/** Looks at the parts of a manual as they are asked for. What each look finds does not depend on their order. */
export class Examination {
  readonly linked: LinkedManual;
  readonly #material: Material;
  readonly #linkedFacts = new Map<string, readonly Fact[]>();
  readonly #expansion: Expansion;
  readonly #ledger: Ledger;
  readonly #completer: Completer;

  /** `known` are procedures that were written out before, with all that they lead to as it is now. */
  constructor(material: Material, known?: ReadonlyMap<string, WrittenOut>) {
    const { manual, parsed, outlines, assets, link = linkProcedure } = material;
    this.#material = material;
    const procedures = new Map<string, LinkedProcedure>();
    for (const { id, file } of outlines.byId.values()) {
      const procedure = parsed.get(file)?.value;
      if (procedure === undefined) continue;
      const one = link(procedure, manual.value);
      procedures.set(id, one.value);
      this.#linkedFacts.set(id, one.facts);
    }
    this.linked = { manual: manual.value, procedures, outlines, pictures: assets.sizes };
    this.#expansion = new Expansion(this.linked, known);
    this.#ledger = openLedger(this.#expansion.value);
    this.#completer = new Completer(this.#expansion.value);
  }

  /** The manual with all that has been looked at written out. */
  get expanded(): LinkedManual {
    return this.#expansion.value;
  }

  /** The procedure of a file with every `::reverse` written out. */
  writtenOut(path: string): WrittenOut | undefined {
    const outline = this.linked.outlines.byFile.get(path);
    return outline && this.#expansion.of(outline.id);
  }

  /** At any file of the manual that is text. */
  lookAt(path: string): Look {
    if (isProcedureFile(path)) return this.#lookAtFile(path);
    return path === manualFile ? this.#lookAtSettings() : this.#lookAtMachine(path);
  }

  /** At manual.yaml, and at what is wrong with the manual as a whole. */
  #lookAtSettings(): Look {
    const { manual, outlines, machines } = this.#material;
    const told = [...manual.ownFacts, ...machinesTwice(machines), ...outlines.facts];
    return this.#look({ hasSettings: true, facts: [...told, ...this.#lost(told)] });
  }

  #lookAtMachine(path: string): Look {
    const { manual, assets } = this.#material;
    const machines = [...manual.value.machines.values()].filter(({ file }) => file === path);
    const figures = machines.flatMap((machine) => checkEntryFigures(machine, assets));
    return this.#look({
      machines,
      facts: [...(manual.machineFacts.get(path) ?? []), ...figures],
    });
  }

  #lookAtFile(path: string): Look {
    const parsed = this.#material.parsed.get(path);
    const facts: readonly Fact[] = parsed?.facts ?? [];
    const outline = this.linked.outlines.byFile.get(path);
    const one = outline && this.linked.procedures.get(outline.id);
    if (outline === undefined || one === undefined) return this.#look({ facts });
    return this.#lookAtProcedure(outline.id, one, facts);
  }

  #lookAtProcedure(id: string, one: LinkedProcedure, facts: readonly Fact[]): Look {
    const { outlines, manual } = this.linked;
    this.#expansion.expand(id);
    const { procedures } = this.#expansion.value;
    // Those that perform each other are analysed from the first one on, whichever is asked for.
    for (const each of outlines.order(id)) {
      const performed = procedures.get(each);
      if (performed !== undefined) this.#ledger.summaryOf(performed);
    }
    const expanded = procedures.get(id) ?? one;
    const subjects: readonly Subject[] = [{ id, one, expanded }];
    const told = this.#ledger.toldOf(expanded);
    const standing = standingIn(subjects, manual.settings.rules, ruleIds);
    const all: readonly Fact[] = [
      ...facts,
      ...(this.#linkedFacts.get(id) ?? []),
      ...linkFacts(one, this.linked, this.#material.assets),
      ...this.#expansion.factsOf(id),
      ...told.facts,
      ...standing.facts,
    ];
    const { performing } = told;
    const { waivers } = standing;
    return this.#look({ subjects, facts: all }, { performing, waivers });
  }

  #look(
    part: Pick<Part, 'facts'> & Partial<Part>,
    rest?: Pick<Look, 'performing' | 'waivers'>,
  ): Look {
    const examined = makeExamined({
      subjects: [],
      machines: [],
      hasSettings: false,
      ...part,
      linked: this.linked,
      expanded: this.expanded,
      text: this.#material.textOf,
      completion: (procedure, item) => this.#completer.complete(procedure, item)?.edits,
    });
    return lookAt(rules, examined, this.linked.manual.settings.rules, rest);
  }

  /** Files that could not be read and that no room before has told of. */
  #lost(facts: readonly Fact[]): readonly Fact[] {
    const told = new Set(
      facts.filter(({ kind }) => kind === 'file-unreadable').map(({ place }) => place.file),
    );
    return this.#material.unreadable
      .filter(({ path }) => !told.has(path))
      .map(({ path, reason, advice }) => ({
        kind: 'file-unreadable',
        place: locator(path, '').place(0, 0),
        reason,
        ...(advice !== undefined && { advice }),
      }));
  }
}

const ruleIds: readonly string[] = rules.map(({ id }) => id);
