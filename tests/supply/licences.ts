import spdxSatisfies from 'spdx-satisfies';
import { type LockedPackage, lockedPackages } from './lock-file.ts';

/** Licences, by their SPDX names, under which anybody may use, change and pass on what depends on them. */
const accepted = [
  '0BSD',
  'Apache-2.0',
  'BlueOak-1.0.0',
  'BSD-2-Clause',
  'BSD-3-Clause',
  'CC0-1.0',
  'ISC',
  'MIT',
  'MPL-2.0',
  'Python-2.0',
];

/** Packages whose licence is accepted for a reason of its own. */
const exceptions: readonly {
  readonly name: RegExp;
  readonly licence: string;
  readonly why: string;
}[] = [
  {
    name: /^format$/,
    licence: 'MIT',
    why: 'its package.json names the licence in an older form, which the lock file does not carry over',
  },
  {
    name: /^@img\/sharp-/,
    licence: 'LGPL-3.0-or-later',
    why: 'optional pictures library of the site builder: a shared library of its own, which we neither change nor pass on',
  },
];

/** A package that comes with Tallybolt, and its licence as an SPDX expression. */
export interface Licensed {
  readonly name: string;
  readonly version: string;
  readonly licence: string;
  /** Why it is accepted although the list does not have it. */
  readonly why?: string;
}

/** All packages that an installed Tallybolt has with it, by name. */
export const licensed: readonly Licensed[] = lockedPackages
  .filter(({ dev }) => dev !== true)
  .map(licenceOf)
  .sort((a, b) => (a.name < b.name ? -1 : a.name > b.name ? 1 : 0));

function licenceOf({ name, version = '', license }: LockedPackage): Licensed {
  const exception = exceptions.find((one) => one.name.test(name) && !isAccepted(license ?? ''));
  const licence = license ?? exception?.licence ?? 'none is named';
  return { name, version, licence, ...(exception && { why: exception.why }) };
}

/** Whether a package may come with us. */
export function mayCome({ name, licence }: Licensed): boolean {
  const more = exceptions.filter((one) => one.name.test(name)).map((one) => one.licence);
  return isAccepted(licence, more);
}

function isAccepted(licence: string, more: readonly string[] = []): boolean {
  try {
    return spdxSatisfies(licence, [...accepted, ...more]);
  } catch {
    return false;
  }
}
