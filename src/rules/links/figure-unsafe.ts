import type { Draft, Rule } from '../rule.ts';
import { code } from '../wording/lists.ts';

export const rule: Rule = {
  id: 'figure-unsafe',
  family: 'links',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const { place, procedure, path, picture } of examined.facts('figure-not-shown')) {
      if (picture.state !== 'unsafe') continue;
      yield {
        place,
        procedure,
        message: `The picture ${code(path)} has ${picture.what} in it`,
        data: { path, what: picture.what },
        help: 'A figure may have only what it draws itself. Save it as plain svg with its pictures in it, or as png.',
      };
    }
  },
};
