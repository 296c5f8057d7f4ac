import type { Draft, Rule } from '../rule.ts';
import { code } from '../wording/lists.ts';

export const rule: Rule = {
  id: 'figure-too-large',
  family: 'links',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const { place, procedure, path, picture } of examined.facts('figure-not-shown')) {
      if (picture.state !== 'large') continue;
      const { bytes, limit } = picture;
      yield {
        place,
        procedure,
        message: `The picture ${code(path)} has ${megabytes(bytes)}; a figure may have ${megabytes(limit)}`,
        data: { path, bytes, limit },
        help: 'Save it smaller: 2000 pixels in width are enough for a sheet, and jpg for a photograph.',
      };
    }
  },
};

/** Rounded up, so that what is over a limit never looks like the limit. */
const megabytes = (bytes: number): string => `${Math.ceil((bytes / 1024 / 1024) * 10) / 10} MB`;
