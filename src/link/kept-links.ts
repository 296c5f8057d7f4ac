import type { Catalogue, ManualModel } from '../catalogue/index.ts';
import type { Procedure } from '../syntax/index.ts';
import { linkProcedure } from './link-procedure.ts';

type Link = ReturnType<typeof linkProcedure>;

/** Joins procedures to their entries, and remembers it for as long as both are the same. */
export class KeptLinks {
  readonly #known = new WeakMap<
    Procedure,
    { readonly space: ManualModel['space']; readonly machine: Catalogue; readonly link: Link }
  >();

  of(procedure: Procedure, manual: ManualModel): Link {
    const { machine: id } = procedure.front;
    const machine = id === undefined ? undefined : manual.machines.get(id);
    const known = this.#known.get(procedure);
    if (known !== undefined && known.machine === machine && known.space === manual.space)
      return known.link;
    const link = linkProcedure(procedure, manual);
    if (machine !== undefined) this.#known.set(procedure, { space: manual.space, machine, link });
    return link;
  }
}
