import { readFileSync } from 'node:fs';
import { z } from 'zod';
import { packageFile } from './package-root.ts';

/** Version of the tool, from its package.json. */
export const version: string = z
  .object({ version: z.string() })
  .parse(JSON.parse(readFileSync(packageFile('package.json'), 'utf8'))).version;
