import { readFileSync, writeFileSync } from 'node:fs';
import { isMainThread } from 'node:worker_threads';

// Loaded before a program that is measured: when it ends, the most memory that it held goes into a file, in KB.
const file = process.env.BENCH_PEAK;
if (file !== undefined && isMainThread) {
  process.on('exit', () => writeFileSync(file, String(peak())));
}

/** With all threads. What `resourceUsage` tells on Linux begins with the peak of the process that started this one. */
function peak(): number {
  const status = process.platform === 'linux' ? readFileSync('/proc/self/status', 'utf8') : '';
  const found = /^VmHWM:\s+(\d+) kB$/m.exec(status)?.[1];
  return found === undefined ? process.resourceUsage().maxRSS : Number(found);
}
