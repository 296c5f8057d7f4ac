import { idWords, performsOf, stateWords } from '../derive/index.ts';
import { allSteps } from '../link/index.ts';
import type { Desk } from './desk.ts';
import { escaped } from './markdown-text.ts';
import type { Named } from './named.ts';
import { stepWords } from './steps-in.ts';

/** What an id other than an item's means, in Markdown. */
export function namedHover(
  desk: Desk,
  named: Exclude<Named, { kind: 'item' }>,
  rulePage: (id: string) => string | undefined,
): string | undefined {
  const { linked } = desk.inspection;
  const { manual, procedures } = linked;
  switch (named.kind) {
    case 'procedure':
      return procedureHover(desk, named.id);
    case 'section': {
      const section = procedures
        .get(named.procedure)
        ?.procedure.sections.find(({ id }) => id === named.id);
      return section && `**${escaped(section.title ?? section.id)}** (section \`${section.id}\`)`;
    }
    case 'step': {
      const procedure = procedures.get(named.procedure)?.procedure;
      const step = procedure && [...allSteps(procedure)].find(({ id }) => id?.id === named.id);
      return (
        step && procedure && `**${escaped(stepWords(step, procedure))}** (step \`${named.id}\`)`
      );
    }
    case 'machine': {
      const machine = manual.machines.get(named.id);
      return (
        machine &&
        `**${escaped(machine.name)}** (machine \`${machine.id}\`, ${machine.items.size} entries)`
      );
    }
    case 'variant':
    case 'value': {
      const id = named.kind === 'variant' ? named.id : named.variant;
      const attribute = manual.space.attribute(id);
      const setting = manual.settings.variants[id];
      const name = Array.isArray(setting) ? undefined : setting?.name;
      return (
        attribute &&
        `**${escaped(name ?? idWords(id))}** (variant \`${id}\`): ${escaped(attribute.values.join(', '))}`
      );
    }
    case 'rule':
      return rulePage(named.id);
  }
}

function procedureHover({ inspection }: Desk, id: string): string | undefined {
  const { linked } = inspection;
  const one = linked.procedures.get(id);
  if (one === undefined) return undefined;
  const { front } = one.procedure;
  const states = (member: 'starts' | 'leaves'): string =>
    stateWords(one, front[member])
      .map(({ id: item, state }) => `${item} ${state}`)
      .join(', ');
  const [starts, leaves] = [states('starts'), states('leaves')];
  const callers = performsOf(linked)
    .performedBy(one)
    .map(({ procedure }) => procedure.front.title);
  return [
    `**${escaped(front.title)}** (procedure \`${id}\`)`,
    escaped(front.summary ?? ''),
    starts && `Starts with: ${escaped(starts)}`,
    leaves && `Leaves: ${escaped(leaves)}`,
    callers.length > 0 ? `Performed by ${escaped(callers.join(', '))}` : '',
  ]
    .filter(Boolean)
    .join('\n\n');
}
