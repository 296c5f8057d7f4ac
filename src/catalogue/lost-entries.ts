import { idSchema } from '../../schemas/id.ts';

/** What a file lost of its entries because of faults. */
export interface Lost {
  /** Ids of the entries that are left out. */
  readonly ids: ReadonlySet<string>;
  /** True where a whole group is left out, with ids that nobody looked at. */
  readonly isMore: boolean;
}

/** The entries among the parts that `readYaml` left out; `prefix` is `items.` in a front matter. */
export function lostEntries(dropped: readonly string[], prefix: string): Lost {
  const ids = new Set<string>();
  let isMore = false;
  for (const path of dropped) {
    if (!path.startsWith(prefix)) continue;
    const [group = '', id] = path.slice(prefix.length).split('.');
    if (id !== undefined && idSchema.safeParse(id).success) ids.add(id);
    // A key that is none of the plain ones is a group, perhaps misspelt.
    if (id === undefined) isMore ||= !plainKeys.has(group);
  }
  return { ids, isMore };
}

const plainKeys: ReadonlySet<string> = new Set(['machine', 'name', 'note', 'figure']);
