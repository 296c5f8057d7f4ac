/** A time as ISO 8601 writes it: `PT1H5M`. Part of a minute counts as a whole one, as on the sheets. */
export function isoDuration(minutes: number): string | undefined {
  const whole = Math.ceil(minutes - 1e-9);
  if (whole <= 0) return undefined;
  const hours = Math.floor(whole / 60);
  const rest = whole - hours * 60;
  return `PT${hours > 0 ? `${hours}H` : ''}${rest > 0 ? `${rest}M` : ''}`;
}
