import { Session } from 'node:inspector/promises';
import { inspect } from '../../src/report/index.ts';
import { generate } from './generate.ts';
import { ownerOf, type ProfileNode, placeIn } from './profile-owner.ts';
import { sizeOf } from './sizes.ts';

// Runs in a process of its own: where a cold check on one thread spends its time.
const procedures = Number(process.argv[2] ?? 1000);
const { files } = generate(1, sizeOf(procedures));
const session = new Session();
session.connect();
await session.post('Profiler.enable');
await session.post('Profiler.setSamplingInterval', { interval: 500 });
await session.post('Profiler.start');
const begun = performance.now();
inspect(files, '0');
const total = performance.now() - begun;
const { profile } = await session.post('Profiler.stop');
session.disconnect();

const nodes = new Map<number, ProfileNode>(profile.nodes.map((node) => [node.id, node]));
const parents = new Map<number, ProfileNode>(
  profile.nodes.flatMap((node) => (node.children ?? []).map((child) => [child, node] as const)),
);
const byOwner = new Map<string, number>();
const byFunction = new Map<string, number>();
let sampled = 0;
for (const [i, id] of (profile.samples ?? []).entries()) {
  const node = nodes.get(id);
  const time = (profile.timeDeltas?.[i + 1] ?? 0) / 1000;
  if (node === undefined) continue;
  sampled += time;
  add(
    byOwner,
    ownerOf(node, (one) => parents.get(one.id)),
    time,
  );
  add(byFunction, placeIn(node), time);
}

console.log(
  `${procedures} procedures, cold check on one thread: ${total.toFixed(0)} ms; samples of ${sampled.toFixed(0)} ms\n`,
);
tell(
  'time by room; a library without a line of its own counts for the room that calls it',
  byOwner,
  40,
);
tell('functions, time of their own', byFunction, 30);

function add(sums: Map<string, number>, name: string, time: number): void {
  sums.set(name, (sums.get(name) ?? 0) + time);
}

function tell(title: string, sums: ReadonlyMap<string, number>, most: number): void {
  console.log(title);
  for (const [name, time] of [...sums].sort(([, a], [, b]) => b - a).slice(0, most)) {
    const share = ((100 * time) / sampled).toFixed(1);
    console.log(`${time.toFixed(0).padStart(8)} ms ${share.padStart(5)} %  ${name}`);
  }
  console.log('');
}
