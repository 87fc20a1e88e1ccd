import { dirname, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { readText, tracked } from './files.ts';

const documents = tracked.filter(path => path.endsWith('.md'));
const scripts = Object.keys((JSON.parse(readText('package.json')) as { scripts: Record<string, string> }).scripts);

/** Every match of the first group, with its document. */
const found = (pattern: RegExp) =>
  documents.flatMap(path => [...readText(path).matchAll(pattern)].map(match => ({ path, what: match[1] ?? '' })));

/** Names of the commands, from the sources of the command line. */
const commands = new Set(
  tracked
    .filter(path => /^src\/cli\/.*\.ts$/.test(path) && !path.endsWith('.test.ts'))
    .flatMap(path => [...readText(path).matchAll(/\.command\(\s*'([a-z]+)/g)].map(match => match[1] ?? '')),
);

describe('the documents', () => {
  test('name only npm scripts that exist', () => {
    const named = found(/npm run ([a-z:-]+)/g);
    expect(named.length).toBeGreaterThan(0);
    expect(named.filter(({ what }) => !scripts.includes(what))).toEqual([]);
  });

  test('name only commands that the program has', () => {
    expect(commands.size).toBeGreaterThan(8);
    const named = found(/npx kartwright ([a-z]+)/g);
    expect(named.length).toBeGreaterThan(0);
    expect(named.filter(({ what }) => !commands.has(what) && what !== 'help')).toEqual([]);
  });

  test('link only to files that are there', () => {
    const links = found(/\]\((?!https?:|#|mailto:)([^)#\s]+)/g);
    expect(links.length).toBeGreaterThan(0);
    const there = new Set(
      tracked.flatMap(path => [path, ...path.split('/').map((_, i, all) => all.slice(0, i).join('/'))]),
    );
    expect(links.filter(({ path, what }) => !there.has(join(dirname(path), what).replace(/\/$/, '')))).toEqual([]);
  });
});
