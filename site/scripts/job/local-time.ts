/**
 * A moment as ISO 8601 with the offset of the place: `2031-04-09T12:03:05+02:00`.
 *
 * @param ms milliseconds since 1970 in UTC
 * @param offset minutes by which the place is ahead of UTC
 */
export function localTime(ms: number, offset: number): string {
  const clock = new Date(ms + offset * 60_000).toISOString().slice(0, 19);
  const ahead = Math.abs(offset);
  return `${clock}${offset < 0 ? '-' : '+'}${two(Math.floor(ahead / 60))}:${two(ahead % 60)}`;
}

/** The time of day, with the date before it unless it is that of `now`: `12:03`, `2031-04-08 12:03`. */
export function shortTime(time: string, now: string): string {
  const [day = '', clock = ''] = time.split('T');
  return now.startsWith(day) ? clock.slice(0, 5) : `${day} ${clock.slice(0, 5)}`;
}

const two = (count: number): string => String(count).padStart(2, '0');
