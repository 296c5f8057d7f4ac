import { mkdir, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join, posix, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import writeFileAtomic from 'write-file-atomic';
import { machinesOf } from '../derive/index.ts';
import type { Book } from '../render/index.ts';
import { launchBrowser } from './browser.ts';
import { CannotRun } from './cannot-run.ts';
import type { Checked } from './check-folder.ts';
import { checkedBook } from './checked-book.ts';
import type { ExitCode } from './exit-code.ts';
import { type MachineFor, machineFor } from './machine-for.ts';
import type { Paper } from './paper.ts';
import { type LinkTarget, relink } from './pdf-links.ts';
import { type PageToPrint, printPages } from './print-pages.ts';
import { progress } from './progress.ts';
import { publishSite } from './publish-site.ts';
import { reasonOf } from './reason-of.ts';
import { say } from './terminal.ts';
import { unknownProcedure } from './unknown-procedure.ts';

export interface PrintOptions {
  /** Folder that the PDFs go to. */
  readonly to: string;
  /** Ids of procedures; the whole manual with its charts when empty. */
  readonly only: readonly string[];
  /** The machine, by values that are fixed: `winch = yes & brakes = overrun`; all of them when undefined. */
  readonly for: string | undefined;
  readonly paper: Paper;
  readonly draft: boolean;
}

/** A page of the site, with the name that its PDF gets. Both are paths from their roots, with `/`. */
interface Printed extends PageToPrint {
  readonly path: string;
  readonly name: string;
}

/** Checks, then prints sheets as PDF files. Errors stop it; a draft is marked as one. */
export async function printCommand(folder: string, options: PrintOptions): Promise<ExitCode> {
  const ready = await checkedBook(folder, { draft: options.draft, undone: 'Nothing was printed' });
  if (ready === undefined) return 1;
  const { book, figures, hasFindings, checked } = ready;
  const machine =
    options.for === undefined ? undefined : machineFor(options.for, checked.linked.manual);
  const { paths, leftOut } = pathsToPrint(book, options.only, folder, isFor(checked, machine));
  if (leftOut.length > 0 && leftOut.length === new Set(options.only).size)
    throw new CannotRun(
      `${leftOut.join(' and ')} ${leftOut.length === 1 ? 'is' : 'are'} for no machine with ${options.for}.`,
      'Print without --for, or choose another machine.',
    );
  const out = resolve(options.to);
  const workshop = await mkdtemp(join(tmpdir(), 'tallybolt-print-'));
  try {
    const site = join(workshop, 'site');
    await publishSite(book, figures, site);
    const pages = paths.map(
      (path): Printed => ({
        path,
        name: nameOf(path, machine),
        file: join(site, path),
        query: machine?.query ?? '',
      }),
    );
    await printAll(pages, { out, site, paper: options.paper, address: book.address });
    const what = pages.length === 1 ? '1 PDF' : `${pages.length} PDFs`;
    const stamp = options.draft ? ', marked DRAFT,' : '';
    const where = pages.length === 1 && pages[0] ? join(out, pages[0].name) : out;
    if (leftOut.length > 0) say(leftOutWords(leftOut, machine));
    say(`${what} on ${options.paper}${stamp} printed: ${where}`);
  } finally {
    await rm(workshop, { recursive: true, force: true });
  }
  return hasFindings ? 1 : 0;
}

/** Whether a procedure is for the machine that is printed for. */
function isFor({ linked }: Checked, machine: MachineFor | undefined): (id: string) => boolean {
  const { space } = linked.manual;
  return (id) => {
    const one = linked.procedures.get(id);
    if (machine === undefined || one === undefined) return true;
    return space.and(machinesOf(one, linked), machine.set) !== space.none;
  };
}

function leftOutWords(ids: readonly string[], machine: MachineFor | undefined): string {
  const sheets = ids.length === 1 ? '1 sheet is' : `${ids.length} sheets are`;
  return `${sheets} for no machine with ${machine?.words} and left out: ${ids.join(', ')}`;
}

/**
 * Pages of the site from its root: those of some procedures, or all sheets, machines and charts; and the
 * procedures that are left out.
 */
function pathsToPrint(
  book: Book,
  only: readonly string[],
  folder: string,
  isWanted: (id: string) => boolean,
): { readonly paths: readonly string[]; readonly leftOut: readonly string[] } {
  const sheets = new Map(book.sheets.map(({ id, href }) => [id, href]));
  const unknown = only.find((id) => !sheets.has(id));
  if (unknown !== undefined) {
    throw unknownProcedure(unknown, folder, sheets.keys());
  }
  const asked = only.length > 0 ? [...new Set(only)] : [...sheets.keys()];
  const wanted = asked.filter(isWanted).map((id) => sheets.get(id) ?? '');
  const hrefs =
    only.length > 0
      ? wanted
      : ['', ...wanted, ...book.machines.map(({ href }) => href), 'torque-chart/', 'fluids/'];
  return { paths: hrefs.map(fileOf), leftOut: asked.filter((id) => !isWanted(id)) };
}

const fileOf = (href: string): string =>
  href === '' || href.endsWith('/') ? `${href}index.html` : href;

/** `procedures/replace-anvil/index.html` is printed to `procedures/replace-anvil.pdf`, for a machine with a winch to `procedures/replace-anvil.winch-yes.pdf`. */
function nameOf(path: string, machine: MachineFor | undefined): string {
  const stem = path === 'index.html' ? 'contents' : posix.dirname(path);
  return machine === undefined ? `${stem}.pdf` : `${stem}.${machine.name}.pdf`;
}

interface Job {
  readonly out: string;
  readonly site: string;
  readonly paper: Paper;
  /** Where the manual can be read, if anywhere. */
  readonly address: string | undefined;
}

async function printAll(pages: readonly Printed[], job: Job): Promise<void> {
  const names = new Map(pages.map(({ path, name }) => [path, name]));
  const browser = await launchBrowser();
  const bar = await progress('Printing', pages.length);
  let printed = 0;
  try {
    await printPages(browser, pages, job.paper, async (page, pdf) => {
      const linked = await relink(pdf, (url) => targetOf(url, page, names, job));
      await write(join(job.out, page.name), linked);
      printed += 1;
      bar.reach(printed);
    });
  } finally {
    bar.end();
    await browser.close();
  }
}

/** To the PDF of a page that is printed as well, else to the manual's address, else nowhere: paper has no site around it. */
function targetOf(
  url: string,
  from: Printed,
  names: ReadonlyMap<string, string>,
  { site, address }: Job,
): LinkTarget | undefined {
  if (!url.startsWith('file:')) return undefined;
  const path = posix.relative(site.replaceAll('\\', '/'), fileURLToPath(url).replaceAll('\\', '/'));
  const name = names.get(path);
  if (name !== undefined)
    return { to: 'file', name: posix.relative(posix.dirname(from.name), name) };
  if (address === undefined) return { to: 'nothing' };
  const base = address.endsWith('/') ? address : `${address}/`;
  const { search, hash } = new URL(url);
  return { to: 'address', url: new URL(path + search + hash, base).href };
}

async function write(path: string, pdf: Uint8Array): Promise<void> {
  try {
    await mkdir(dirname(path), { recursive: true });
    await writeFileAtomic(path, Buffer.from(pdf));
  } catch (error) {
    throw new CannotRun(
      `${path} cannot be written: ${reasonOf(error)}.`,
      'Name another folder with --to.',
    );
  }
}
