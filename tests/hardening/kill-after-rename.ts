import fs from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';
import { basename } from 'node:path';

/**
 * Loaded with `--import` before the command: ends it by SIGKILL, as a power cut or a full machine would, once it has
 * moved the old folder away and before the new one is there.
 */
const rename = fs.renameSync;
fs.renameSync = (from, to) => {
  rename(from, to);
  if (basename(String(to)) === 'old') process.kill(process.pid, 'SIGKILL');
};
syncBuiltinESMExports();
