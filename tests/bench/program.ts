import { fileURLToPath } from 'node:url';
import { runProcess } from './run-process.ts';

/** Where the program that is measured lies. */
export interface Program {
  readonly command: string;
  /** Module with `checkForReport`. */
  readonly check: string;
  readonly called: string;
}

const root = new URL('../../', import.meta.url);

/** The program as its users have it, in JavaScript, made anew; or as it stands here, whose types Node strips first. */
export async function programFrom(source: boolean): Promise<Program> {
  if (source) {
    return {
      command: fileURLToPath(new URL('src/command/main.ts', root)),
      check: new URL('src/command/check-folder.ts', root).href,
      called: 'from source (Node strips the types at each start)',
    };
  }
  await runProcess(fileURLToPath(new URL('src/command/build-package.ts', root)), []);
  return {
    command: fileURLToPath(new URL('dist/src/command/start.js', root)),
    check: new URL('dist/src/command/check-folder.js', root).href,
    called: 'as it is packed',
  };
}
