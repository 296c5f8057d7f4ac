import { InvalidArgumentError } from 'commander';

/** Ids with commas between them; the option may be given several times. A comma at the end is no fault. */
export function listed(words: string, before: readonly string[] = []): readonly string[] {
  const ids = words
    .split(',')
    .map((id) => id.trim())
    .filter((id) => id !== '');
  if (ids.length === 0) throw new InvalidArgumentError('It names nothing.');
  return [...before, ...ids];
}
