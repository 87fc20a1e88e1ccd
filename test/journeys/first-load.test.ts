/** How much a phone fetches before the bench page is there; what else there is waits until it is wanted. */
import { readdirSync, readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { expect, test } from 'vitest';

const MOST_KB = 200; // gzip: script, the worker that keeps the book, style and fonts

const built = (path: string): string => readFileSync(`dist/web${path}`, 'utf8');

/** Everything that the page imports before it runs, not what it fetches later. */
function atOnce(path: string, found: Set<string>): void {
  if (found.has(path)) return;
  found.add(path);
  for (const [, file] of built(path).matchAll(/(?:import|export)[^"'();]*["']\.\/([^"']+\.js)["']/g))
    atOnce(`/assets/${file}`, found);
}

test(`the bench page comes with at most ${MOST_KB} kB`, () => {
  const index = built('/index.html');
  const [, script = ''] = /<script type="module"[^>]+src="([^"]+)"/.exec(index) ?? [];
  const early = [...index.matchAll(/<script async src="([^"]+)"/g)].flatMap(([, src]) => src ?? []);
  expect(early).toEqual(['/early.js']);
  const styles = [...index.matchAll(/<link rel="stylesheet"[^>]+href="([^"]+)"/g)].flatMap(([, href]) => href ?? []);
  const scripts = new Set<string>();
  atOnce(script, scripts);
  // The build itself lists what the script needs at once: both must tell of the same files.
  const told = [...index.matchAll(/<link rel="modulepreload"[^>]+href="([^"]+)"/g)].flatMap(([, href]) => href ?? []);
  expect([...scripts].toSorted()).toEqual([script, ...told].toSorted());
  // What every sheet needs is asked for at once; accents, by their range, when a page has one. All work without a network.
  const faces = [...index.matchAll(/<link rel="preload"[^>]+href="([^"]+\.woff2)"/g)].flatMap(([, href]) => href ?? []);
  const rules = styles.flatMap(file => built(file).match(/@font-face\s*{[^}]+}/g) ?? []);
  expect(faces).toHaveLength(2);
  expect(rules).toHaveLength(4);
  for (const rule of rules) {
    const [, face = ''] = /url\(["']?([^"')]+)/.exec(rule) ?? [];
    expect(rule).toMatch(/font-display:\s*swap/);
    expect(built('/sw.js')).toContain(face);
    expect(faces.includes(face)).toBe(/unicode-range:\s*U\+20-7E/.test(rule));
  }
  expect(built('/sw.js')).toContain('/barlow-licence.txt');
  const weight = (file: string): number => gzipSync(readFileSync(`dist/web${file}`)).length;
  const workers = readdirSync('dist/web/assets').filter(file => /^book-worker-.*\.js$/.test(file));
  expect(workers).toHaveLength(1);
  const beside = new Set<string>();
  for (const file of workers) atOnce(`/assets/${file}`, beside);
  // What the page may not do is switched off before zod would try it.
  for (const all of [scripts, beside]) expect([...all].some(file => built(file).includes('jitless:!0'))).toBe(true);
  const bytes = [...early, ...scripts, ...beside, ...styles, ...faces].reduce((sum, file) => sum + weight(file), 0);
  console.log(
    `The bench page: ${(bytes / 1000).toFixed(1)} kB in ${scripts.size} scripts, ${beside.size} of the worker, ${styles.length} style and ${faces.length} fonts.`,
  );
  expect(bytes).toBeLessThanOrEqual(MOST_KB * 1000);
});
