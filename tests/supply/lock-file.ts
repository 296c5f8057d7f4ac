import { readFileSync } from 'node:fs';
import { z } from 'zod';

const packageSchema = z.object({
  version: z.string().optional(),
  resolved: z.string().optional(),
  integrity: z.string().optional(),
  license: z.string().optional(),
  dev: z.boolean().optional(),
  hasInstallScript: z.boolean().optional(),
});
const lockSchema = z.object({
  lockfileVersion: z.number(),
  packages: z.record(z.string(), packageSchema),
});
const aboutSchema = z.object({
  scripts: z.record(z.string(), z.string()),
  dependencies: z.record(z.string(), z.string()),
  devDependencies: z.record(z.string(), z.string()),
  allowScripts: z.record(z.string(), z.boolean()),
});

/** A package of the lock file: where it lies below the root, its name, and what the file says of it. */
export type LockedPackage = z.infer<typeof packageSchema> & {
  readonly path: string;
  readonly name: string;
};

const read = (path: string): unknown =>
  JSON.parse(readFileSync(new URL(`../../${path}`, import.meta.url), 'utf8'));

export const about = aboutSchema.parse(read('package.json'));
const lock = lockSchema.parse(read('package-lock.json'));
export const lockfileVersion = lock.lockfileVersion;

/** All packages but our own. */
export const lockedPackages: readonly LockedPackage[] = Object.entries(lock.packages)
  .filter(([path]) => path !== '')
  .map(([path, told]) => ({ path, name: path.replace(/^.*node_modules\//, ''), ...told }));
