import type { Root } from 'mdast';
import type { VFile } from 'vfile';
import about from '../../package.json' with { type: 'json' };
import type { Finding } from '../../schemas/finding.ts';
import { inspect } from '../report/index.ts';
import { allOf, type GivenFiles } from './given-files.ts';
import { sheetInTree } from './sheet-in-tree.ts';
import { tellOn } from './tell-on.ts';

export type { Finding } from '../../schemas/finding.ts';
export type { GivenFiles } from './given-files.ts';

declare module 'vfile' {
  interface DataMap {
    /** What the check of a procedure found in this file, sorted by place. */
    tallybolt: { readonly findings: readonly Finding[] };
  }
}

export interface ProcedureOptions {
  /**
   * The rest of the manual: manual.yaml, machines, other procedures. Without it the procedure stands alone, with
   * the entries that its own front matter carries under `items:`.
   */
  readonly manual?: GivenFiles;
  /** Path of the procedure in the manual; `procedures/` with the file's own name where it is left out. */
  readonly path?: string;
  /** The day of the check, YYYY-MM-DD. Without it no waiver expires. */
  readonly today?: string;
  /** Whether the text gives way to its job sheet; true where it is left out. With false the text is only checked. */
  readonly sheet?: boolean;
  /**
   * Address of the published manual, such as `/procedures/`: links to its machines and other sheets lead there.
   * Without it their words stand without a link.
   */
  readonly published?: string;
}

/**
 * A remark plugin for procedures in a pipeline of one's own. What the check finds in the procedure goes onto the VFile as
 * messages with places, `ruleId` and `note`; an error has `fatal: true`, and nothing is thrown. All of it stands in
 * `file.data.tallybolt.findings` as plain data too. Then the text gives way to its job sheet, as hast for remark-rehype.
 * A file whose front matter names no procedure is told so and otherwise left alone.
 */
export default function remarkProcedure(
  options: ProcedureOptions = {},
): (tree: Root, file: VFile) => undefined {
  const { manual, path: given, today, sheet = true, published } = options;
  return (tree, file) => {
    const path = given ?? `procedures/${file.basename ?? 'procedure.md'}`;
    const { report, linked } = inspect(
      allOf(withProcedure(manual, path, String(file))),
      about.version,
      today === undefined ? {} : { today },
    );
    const findings = report.findings.filter((finding) => finding.file === path);
    tellOn(file, findings);
    const one = [...linked.procedures.values()].find(({ procedure }) => procedure.file === path);
    if (sheet && one !== undefined) {
      const isDraft = findings.some(({ level }) => level === 'error');
      sheetInTree(tree, one, linked, { published, isDraft });
    }
  };
}

/** The manual with the procedure as it is now; a smallest manual where none is given. */
function withProcedure(manual: GivenFiles | undefined, path: string, text: string): GivenFiles {
  const rest = manual ?? { texts: [{ path: 'manual.yaml', text: 'title: Procedures\n' }] };
  return { ...rest, texts: [...rest.texts.filter((one) => one.path !== path), { path, text }] };
}
