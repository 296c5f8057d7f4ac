import { idSchema } from '../../schemas/id.ts';
import type { Desk } from './desk.ts';
import { mentionsOf } from './mentions.ts';
import type { Mention, Named } from './named.ts';

/** Why what stands at a place has no id that can be changed there. */
export function unfit({ named, form }: Mention): string | undefined {
  if (named.kind === 'rule') return 'A rule of the program keeps its id.';
  if (named.kind === 'machine')
    return `The id of a machine is the name of its file. Rename the file, then write the new id in it and where the check says.`;
  if (form === 'path')
    return 'This link names a file. Rename the id of the procedure in its front matter, or the file in its folder.';
  return undefined;
}

/** Why a new id is none. `words` are those that were typed. */
export function unfitId(named: Named, id: string, words: string): string | undefined {
  if (named.kind === 'section')
    return /[\r\n]/.test(words) || !/[a-z]/i.test(words)
      ? `“${words}” cannot be a heading: write words on one line.`
      : undefined;
  if (named.kind === 'value')
    return /^[\p{L}\p{N}][\p{L}\p{N}._-]*$/u.test(id)
      ? undefined
      : `“${id}” cannot be a value here: write one word, such as hydraulic.`;
  const judged = idSchema.safeParse(id);
  return judged.success
    ? undefined
    : `“${id}” is no id. An id has small letters and digits joined by hyphens, such as anvil-bolt.`;
}

/** Why an id cannot be given a second time. */
export function taken(desk: Desk, named: Named, id: string): string | undefined {
  if (id === named.id) return undefined;
  const { linked } = desk.inspection;
  const other = ((): string | undefined => {
    switch (named.kind) {
      case 'item': {
        const catalogues = [
          ...linked.manual.machines.values(),
          ...[...linked.procedures.values()].map(({ catalogue }) => catalogue),
        ];
        const sharing = catalogues.filter(({ items }) => items.get(named.id) === named.item);
        const found = sharing.flatMap(({ items }) => items.get(id) ?? [])[0];
        return found && `${found.kind} in ${found.place.file}`;
      }
      case 'procedure':
        return (
          linked.procedures.get(id) && `procedure in ${linked.procedures.get(id)?.procedure.file}`
        );
      case 'variant':
        return linked.manual.space.attribute(id) && 'variant of the manual';
      case 'value':
        return linked.manual.space.attribute(named.variant)?.values.includes(id)
          ? `value of ${named.variant}`
          : undefined;
      case 'section':
      case 'step': {
        const file = linked.procedures.get(named.procedure)?.procedure.file ?? '';
        const all = mentionsOf(desk, { ...named, id });
        return all.some(({ place }) => place.file === file)
          ? `${named.kind} of this procedure`
          : undefined;
      }
      default:
        return undefined;
    }
  })();
  return other && `“${id}” is taken: there is already a ${other}. Choose another id.`;
}

/** Files that are not read whole may name it where nobody sees it. */
const unreadable: ReadonlySet<string> = new Set([
  'file-unreadable',
  'front-matter-missing',
  'too-deep',
  'too-large',
  'yaml-broken',
]);

export function unread({ inspection }: Desk): string | undefined {
  const fault = inspection.report.findings.find(({ rule }) => unreadable.has(rule));
  return (
    fault &&
    `${fault.file} cannot be read whole (line ${fault.start.line}: ${fault.rule}), and may name it too. Put that right first.`
  );
}
