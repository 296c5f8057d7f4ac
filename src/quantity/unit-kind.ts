/** What a unit measures. `rotation` is turns in a time (r/min), `speed` is distance in a time, `share` is percent. */
export const unitKinds = [
  'torque',
  'volume',
  'length',
  'pressure',
  'mass',
  'force',
  'temperature',
  'angle',
  'rotation',
  'speed',
  'time',
  'share',
] as const;

export type UnitKind = (typeof unitKinds)[number];

export function isUnitKind(text: string): text is UnitKind {
  return unitKinds.some((kind) => kind === text);
}

/**
 * Kinds whose values may lie below zero: a temperature, a gauge pressure (vacuum), an offset or interference, an
 * angle of setting. A negative torque, volume, mass, force, speed, time or share is a typing error.
 */
export function canBeNegative(kind: UnitKind): boolean {
  return kind === 'temperature' || kind === 'pressure' || kind === 'length' || kind === 'angle';
}
