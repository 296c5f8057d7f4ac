import { metricPitches } from './thread-metric-pitches.ts';
import type { ReadThread } from './thread-model.ts';

/** `M12`, `M12 × 1.5`, `M12x1.5-6g LH`, `M12 × 40`; undefined where it is no metric designation. */
export function readMetricThread(text: string): ReadThread | undefined {
  const match = designation.exec(text);
  if (!match) return undefined;
  const diameter = numberOf(match[1] ?? '');
  // Beyond the table of bolt sizes: instrument threads below, pipe-like ones above.
  if (diameter < smallest || diameter > largest) return {};
  const second = match[2] === undefined ? undefined : numberOf(match[2]);
  // No pitch is as much as half the diameter, so that a larger number is a length: M8 × 30.
  const pitch = second !== undefined && second < diameter / 2 ? second : undefined;
  const size = `M${diameter}`;
  const pitches = pitchesOf(diameter);
  if (pitches === undefined) {
    return { problem: { code: 'no-such-size', system: 'metric', size, near: around(diameter) } };
  }
  if (pitch !== undefined && !pitches.includes(pitch)) {
    const near = pitches.filter(Boolean).map((one) => designationOf(diameter, one));
    return { problem: { code: 'no-such-pitch', system: 'metric', size, near } };
  }
  const meant = pitch ?? pitches[0];
  return meant ? { value: { standard: 'metric', diameter, pitch: meant } } : {};
}

/** Diameter, pitch or length, then what may follow: length, tolerance (6g, 5H/6H), hand. */
const designation =
  /^M ?(\d+(?:[.,]\d+)?)(?: ?(?:[x×*]|-(?=\d*[.,]\d)) ?(\d+(?:[.,]\d+)?)(?: ?mm)?)?(?: ?[x×*] ?\d+(?:[.,]\d+)?(?: ?mm)?)?(?: ?- ?\d[a-z]{1,2}(?:\d[a-z])?(?:\/\d[a-z])?)?(?:[ -](?:LH|RH|left[ -]hand|right[ -]hand|left|coarse|thread))?$/i;

const numberOf = (text: string): number => Number(text.replace(',', '.'));

const byDiameter: ReadonlyMap<number, readonly number[]> = new Map(
  metricPitches.map(([diameter, ...pitches]) => [diameter, pitches]),
);
const diameters = [...byDiameter.keys()];
const smallest = Math.min(...diameters);
const largest = Math.max(...diameters);

function pitchesOf(diameter: number): readonly number[] | undefined {
  return byDiameter.get(diameter);
}

/** The standard sizes with a coarse pitch next below and above. */
function around(diameter: number): string[] {
  const usual = diameters.filter((one) => byDiameter.get(one)?.[0] !== 0);
  const below = usual.filter((one) => one < diameter).at(-1);
  const above = usual.find((one) => one > diameter);
  return [below, above].flatMap((one) => (one === undefined ? [] : [`M${one}`]));
}

function designationOf(diameter: number, pitch: number): string {
  return `M${diameter} × ${pitch}`;
}
