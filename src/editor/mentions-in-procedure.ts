import { actionsIn, allBlocks, allSteps, type LinkedProcedure, targetOf } from '../link/index.ts';
import type { Block, Link, Procedure, When } from '../syntax/index.ts';
import type { MentionList } from './mention-list.ts';
import { itemMentions } from './mentions-in-catalogue.ts';
import type { Named } from './named.ts';

/** What the mentions of a procedure may mean. */
export interface Meaning {
  readonly procedures: ReadonlyMap<string, LinkedProcedure>;
  /** The id of the procedure in a file. */
  readonly procedureIn: (file: string) => string | undefined;
}

/** Everything that a procedure names, as its author wrote it; `one` has the entries that it means. */
export function procedureMentions(
  list: MentionList,
  procedure: Procedure,
  one: LinkedProcedure,
  meaning: Meaning,
): void {
  const item = (id: string): Named | undefined => {
    const found = one.item(id);
    return found && { kind: 'item', id, item: found };
  };
  const own = procedure.id;
  const known = (id: string): Named | undefined =>
    meaning.procedures.has(id) ? { kind: 'procedure', id } : undefined;
  const step = (id: string): Named => ({ kind: 'step', id, procedure: own });
  const section = (id: string, of: string): Named | undefined =>
    meaning.procedures.get(of)?.procedure.sections.some((one) => one.id === id)
      ? { kind: 'section', id, procedure: of }
      : undefined;
  const when = (at: When | undefined): void => {
    if (at !== undefined) list.condition(at.condition, at.place);
  };

  front(list, procedure, one, item, known);
  when(procedure.when);
  for (const { id, heading, headingPlace } of procedure.sections) {
    if (headingPlace === undefined || heading.length === 0) continue;
    const named: Named = { kind: 'section', id, procedure: own };
    list.other({ named, place: headingPlace, isDefinition: true, form: 'heading' });
  }
  for (const { id, needs, at, tools, consumables, when: ofStep } of allSteps(procedure)) {
    if (id !== undefined) list.id(step(id.id), id.place, true);
    list.refs(needs, step);
    list.refs([at, ...tools, ...consumables], item);
    when(ofStep);
  }
  for (const action of procedure.sections.flatMap(({ blocks }) => [...actionsIn(blocks)])) {
    list.refs([action.item, ...action.with], item);
    when(action.when);
  }
  for (const block of allBlocks(procedure)) {
    if ('when' in block) when(block.when);
    inBlock(list, block, item, step);
    if (block.type === 'perform') {
      list.refs([block.procedure], known);
      list.refs([block.part], (id) => section(id, block.procedure.id));
    }
    if (block.type === 'reverse') list.refs([block.of], (id) => section(id, own));
  }
  for (const waiver of procedure.waivers) {
    list.refs([waiver.item], item);
    list.refs([waiver.rule], (id) => ({ kind: 'rule', id }));
  }
  for (const link of procedure.links) linkMention(list, procedure, link, meaning);
}

function inBlock(
  list: MentionList,
  block: Block,
  item: (id: string) => Named | undefined,
  step: (id: string) => Named,
): void {
  if (block.type === 'hazard') list.refs([block.of], item);
  // The action that a torque block stands for names the same place.
  if (block.type === 'fluid' || (block.type === 'torque' && block.action === undefined))
    list.refs([block.item], item);
  if (block.type === 'needs') list.refs(block.steps, step);
  if (block.type === 'figure')
    list.refs(
      block.callouts.map((callout) => callout.item),
      item,
    );
  if (block.type === 'reverse') list.refs(block.except, item);
}

function front(
  list: MentionList,
  { id, front, placeOf, yaml, file }: Procedure,
  one: LinkedProcedure,
  item: (id: string) => Named | undefined,
  known: (id: string) => Named | undefined,
): void {
  list.id({ kind: 'procedure', id }, placeOf('procedure'), true);
  if (front.machine !== undefined)
    list.id({ kind: 'machine', id: front.machine }, placeOf('machine'));
  for (const member of ['tools', 'consumables'] as const) {
    for (const [i, named] of front[member].entries())
      list.id(item(named), placeOf(`${member}.${i}`));
  }
  for (const [i, named] of front['follow-on'].entries())
    list.id(known(named), placeOf(`follow-on.${i}`));
  for (const member of ['starts', 'leaves'] as const) {
    for (const named of Object.keys(front[member]))
      list.id(item(named), yaml.keyPlaceOf(`${member}.${named}`));
  }
  const own = [...one.catalogue.items.values()].filter(({ place }) => place.file === file);
  itemMentions(list, own, one.catalogue);
}

function linkMention(list: MentionList, procedure: Procedure, link: Link, meaning: Meaning): void {
  const target = link.isImage ? undefined : targetOf(procedure.file, link.url);
  const id = target?.kind === 'file' ? meaning.procedureIn(target.path) : undefined;
  if (target?.kind !== 'file' || id === undefined) return;
  const named: Named = { kind: 'procedure', id };
  list.other({ named, place: link.place, isDefinition: false, form: 'path' });
  const found = meaning.procedures.get(id)?.procedure;
  if (found === undefined || target.anchor === undefined) return;
  const kind = found.sections.some((section) => section.id === target.anchor) ? 'section' : 'step';
  list.within(link.place, `#${target.anchor}`, 1, { kind, id: target.anchor, procedure: id });
}
