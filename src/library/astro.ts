import { resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { AstroIntegration } from 'astro';
import { CannotRun, checkFolder } from '../command/index.ts';
import { reportAsText } from '../report/index.ts';
import { manualInDev } from './manual-in-dev.ts';
import { notTheCode } from './not-the-code.ts';
import { publishInto } from './publish-into.ts';

export interface ManualOptions {
  /** Folder of the manual, from the root of the Astro project or absolute. */
  readonly manual: string;
  /** Where its pages lie on the site, below Astro's `base`; `/procedures` where it is left out. */
  readonly at?: string;
  /** Builds in spite of errors, with DRAFT on every sheet. */
  readonly draft?: boolean;
}

/**
 * An Astro integration for a site of one's own: the pages of a manual, whole and with their own looks, below one
 * address of it. `astro build` checks the manual before anything is built, and an error in it fails the build with the
 * report; warnings are told and pass. `astro dev` shows a draft of the manual as it stands at each request.
 * Throws on options that no site can have.
 */
export default function tallybolt({
  manual,
  at = '/procedures',
  draft = false,
}: ManualOptions): AstroIntegration {
  const address = addressOf(at);
  let folder = manual;
  let base = '/';
  return {
    name: 'tallybolt',
    hooks: {
      'astro:config:setup': ({ config, updateConfig, logger }) => {
        folder = resolve(fileURLToPath(config.root), manual);
        base = config.base;
        const out = fileURLToPath(new URL('./tallybolt/draft/', config.cacheDir));
        const path = joined(base, address);
        updateConfig({ vite: { plugins: [manualInDev({ folder, out, path, logger })] } });
      },
      'astro:build:start': async ({ logger }) => {
        const { report, textOf } = await checked(folder);
        if (report.summary.error > 0 && !draft) {
          throw notTheCode(
            `The manual in ${folder} has errors.\n\n${reportAsText(report, textOf)}`,
            'Mend what is marked, or build with `draft: true`, which prints DRAFT on every sheet.',
          );
        }
        if (report.summary.error + report.summary.warning > 0)
          logger.warn(`Findings in ${folder}:\n\n${reportAsText(report, textOf)}`);
      },
      'astro:build:done': async ({ dir, logger }) => {
        await publishInto(resolve(fileURLToPath(dir), address), folder, draft);
        logger.info(`The manual stands at ${joined(base, address)}`);
      },
    },
  };
}

/** `a/b` of `/a/b/`. Throws where it is no folder below the site's root. */
function addressOf(at: string): string {
  const parts = at.split('/').filter((part) => part !== '');
  if (parts.length === 0 || parts.some((part) => !/^[\w~-][\w.~-]*$/.test(part))) {
    throw notTheCode(
      `tallybolt: \`at\` is "${at}", and must be a folder below the root of the site.`,
      'Write it as in `at: "/procedures"`, with letters, digits, `-`, `_`, `.` and `/`.',
    );
  }
  return parts.join('/');
}

const joined = (base: string, address: string): string => `${base.replace(/\/?$/, '/')}${address}/`;

async function checked(folder: string): ReturnType<typeof checkFolder> {
  try {
    return await checkFolder(folder);
  } catch (error) {
    if (error instanceof CannotRun) throw notTheCode(error.message, error.advice);
    throw error;
  }
}
