import { describe, expect, test } from 'vitest';
import { readText } from './files.ts';

type Locked = { hasInstallScript?: boolean; integrity?: string; resolved?: string; link?: boolean };
const packages = Object.entries(
  (JSON.parse(readText('package-lock.json')) as { packages: Record<string, Locked> }).packages,
).filter(([path]) => path !== '');

/** Packages that bring an install script and work without it being run (.npmrc: ignore-scripts). */
const WORKS_WITHOUT = new Set([
  'node_modules/@photostructure/sqlite', // ships its binaries; the script would only compile what is there
]);

describe('package-lock.json', () => {
  test('holds packages at all', () => expect(packages.length).toBeGreaterThan(20));

  test('gains no package that needs an install script', () => {
    expect(
      packages.filter(([path, p]) => p.hasInstallScript && !WORKS_WITHOUT.has(path)).map(([path]) => path),
    ).toEqual([]);
  });

  test('pins every package to its content', () => {
    expect(packages.filter(([, p]) => !p.link && !p.integrity).map(([path]) => path)).toEqual([]);
  });

  test('takes packages from no place but the registry', () => {
    expect(
      packages
        .filter(([, p]) => p.resolved && !p.resolved.startsWith('https://registry.npmjs.org/'))
        .map(([path]) => path),
    ).toEqual([]);
  });

  test('is what package.json asks for, with exact versions', () => {
    const manifest = JSON.parse(readText('package.json')) as Record<
      'dependencies' | 'devDependencies',
      Record<string, string>
    >;
    const asked = Object.entries({ ...manifest.dependencies, ...manifest.devDependencies });
    const locked = new Map(packages.map(([path, p]) => [path, (p as { version?: string }).version]));
    expect(asked.filter(([name, version]) => locked.get(`node_modules/${name}`) !== version)).toEqual([]);
  });

  test('install scripts stay switched off', () => expect(readText('.npmrc')).toMatch(/^ignore-scripts=true$/m));
});
