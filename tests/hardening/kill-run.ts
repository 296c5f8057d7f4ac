import { makeFolder } from '../command/run.ts';
import { killPublishing } from './killed-publish.ts';

/** The long run: `node tests/hardening/kill-run.ts 200`. */
const kills = Number(process.argv[2] ?? 200);
const folder = await makeFolder('tallybolt-killed-');
try {
  console.log(JSON.stringify(await killPublishing(folder, kills, Math.random), undefined, 2));
} finally {
  await folder.remove();
}
