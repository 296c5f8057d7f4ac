#!/usr/bin/env node
// Where the installed command begins. Nothing is imported until Node is known to be new enough: an old one
// stops at the first import with a stack trace that tells nobody what to do.
const least = { major: 22, minor: 18 };
const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);

if (major < least.major || (major === least.major && minor < least.minor)) {
  process.stderr.write(
    `tallybolt: it needs Node ${least.major}.${least.minor} or newer, and this is Node ${process.versions.node} (${process.execPath}).\n` +
      'Install a newer Node, or put the newer one that you have first in PATH.\n',
  );
  process.exitCode = 2;
} else {
  const [{ main }, { bearClosedPipes }] = await Promise.all([
    import('./main.ts'),
    import('./terminal.ts'),
  ]);
  bearClosedPipes();
  process.exitCode = await main(process.argv.slice(2));
}
