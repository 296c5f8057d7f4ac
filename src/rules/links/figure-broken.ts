import type { Draft, Rule } from '../rule.ts';
import { code } from '../wording/lists.ts';

export const rule: Rule = {
  id: 'figure-broken',
  family: 'links',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const { place, procedure, path, picture } of examined.facts('figure-not-shown')) {
      if (picture.state !== 'broken') continue;
      yield {
        place,
        procedure,
        message: `The picture ${code(path)} cannot be shown: ${picture.reason}`,
        data: { path, reason: picture.reason },
        help: 'Open it in the program that made it and save it again as svg, png, jpg or webp.',
      };
    }
    for (const { place, procedure, path } of examined.facts('figure-sizeless')) {
      yield {
        place,
        procedure,
        message: `Call-outs cannot be placed in ${code(path)}: it says nothing of its size`,
        data: { path },
        help: `Give its ${code('<svg>')} a ${code('viewBox')}, such as ${code('viewBox="0 0 640 400"')}.`,
      };
    }
  },
};
