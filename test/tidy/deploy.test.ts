import { expect, test } from 'vitest';
import { readText, tracked } from './files.ts';

const files = ['deploy/Containerfile', 'deploy/kartwright.service'];
const options = new Set(
  [...readText('src/cli/commands/serve.ts').matchAll(/option\('(--[a-z-]+)|Option\('(--[a-z-]+)/g)].map(
    m => m[1] ?? m[2],
  ),
);

test('the examples of deploy start the program with a command and options that it has', () => {
  expect(options.size).toBeGreaterThan(4);
  for (const file of files) {
    const started =
      readText(file)
        .split('\n')
        .find(line => /^(CMD|ExecStart=)/.test(line)) ?? '';
    expect(started).toContain('dist/cli.js');
    const words = started.match(/--[a-z-]+/g) ?? [];
    expect(words.length).toBeGreaterThan(0);
    for (const word of words) expect(options).toContain(word);
    expect(started).toMatch(/serve/);
  }
});

test('what the container copies is there, and what it sets the program reads', () => {
  const [container = ''] = files.map(readText);
  const sources = tracked
    .filter(path => path.startsWith('src/'))
    .map(readText)
    .join('');
  for (const [, name = ''] of container.matchAll(/(KARTWRIGHT_[A-Z]+)=/g)) expect(sources).toContain(name);
  for (const path of ['package.json', 'package-lock.json']) expect(tracked).toContain(path);
  expect(container).toMatch(/^USER node$/m);
});
