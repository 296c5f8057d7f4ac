import { describe, expect, test } from 'vitest';
import { licensed, mayCome } from './licences.ts';
import { about, lockedPackages, lockfileVersion } from './lock-file.ts';

const registry = 'https://registry.npmjs.org/';

describe('the lock file', () => {
  test('has the hash of the bytes of each package, and names no place but the public registry', () => {
    expect(lockfileVersion).toBe(3);
    expect(lockedPackages.length).toBeGreaterThan(300);
    const loose = lockedPackages.filter(
      ({ integrity = '', resolved = registry }) =>
        !/^sha512-[\w+/]{86}==$/.test(integrity) || !resolved.startsWith(registry),
    );
    expect(loose.map(({ path }) => path)).toEqual([]);
  });

  test('has the versions that package.json asks for, and that asks for exact ones', () => {
    const versions = new Map(lockedPackages.map(({ path, version }) => [path, version]));
    const wanted = Object.entries({ ...about.dependencies, ...about.devDependencies });
    expect(wanted.map(([name]) => [name, versions.get(`node_modules/${name}`)])).toEqual(wanted);
    for (const [name, version] of wanted) expect(version, name).toMatch(/^\d+\.\d+\.\d+$/);
  });
});

describe('when it is installed', () => {
  test('no script of ours runs', () => {
    const atInstall = /^(pre|post)?(install|prepare|publish)$|^(pre|post)uninstall$|^dependencies$/;
    expect(Object.keys(about.scripts).filter((name) => atInstall.test(name))).toEqual([]);
  });

  test('scripts of other packages run only where package.json allows them by name', () => {
    const names = lockedPackages
      .filter(({ hasInstallScript }) => hasInstallScript)
      .map(({ name }) => name);
    expect([...new Set(names)].sort()).toEqual(Object.keys(about.allowScripts).sort());
  });
});

describe('licences', () => {
  test('each package that comes with us has one that lets anybody use and pass it on', () => {
    expect(licensed.length).toBeGreaterThan(200);
    expect(licensed.filter((one) => !mayCome(one))).toEqual([]);
  });

  test.each([
    ['GPL-3.0-only', false],
    ['(MIT OR GPL-3.0-only)', true],
    ['MIT AND GPL-3.0-only', false],
    ['SEE LICENSE IN x', false],
    ['none is named', false],
    ['LGPL-3.0-or-later', false],
    ['ISC', true],
  ])('%s: %s', (licence, isGood) => {
    expect(mayCome({ name: 'some-package', version: '1.0.0', licence })).toBe(isGood);
  });
});
