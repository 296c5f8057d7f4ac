import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { commandLine } from './main.ts';
import { packageFile } from './package-root.ts';
import { referenceFiles } from './reference-files.ts';

// Run by `npm run reference`: the chapter of the guide and the page for `man` that tell the command line.
for (const [path, text] of Object.entries(referenceFiles(commandLine(() => {})))) {
  mkdirSync(dirname(packageFile(path)), { recursive: true });
  writeFileSync(packageFile(path), text);
}
