/** The plan of the full six-speed template, made in a page as slow as the others, beside the same as fast as the machine is. */
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { build } from 'vite';
import { packageRoot } from '../../src/host/index.ts';
import { dayAfter, inventBook } from '../facts.ts';
import { benchKart } from '../kart.ts';
import type { Figure } from '../measure.ts';
import { openPhone, SLOWER } from './browser.ts';
import type { InPage, Timed } from './in-page.ts';
import { figure, middleOf } from './took.ts';

const FACTS = 2_000;
const RUNS = 5;

export async function planned(browser: Browser): Promise<readonly Figure[]> {
  const kart = benchKart();
  const facts = inventBook(kart, FACTS);
  const phone = await openPhone(browser);
  await phone.page.evaluate(await program());
  const run = (): Promise<Timed> =>
    phone.page.evaluate(
      ([of, book, now, runs]) =>
        (globalThis as unknown as { bench: { inPage: InPage } }).bench.inPage.times(of, book, now, runs),
      [kart, facts, dayAfter(facts), RUNS] as const,
    );
  const slow = await run();
  await phone.slow(1);
  const fast = await run();
  await phone.close();
  const all = (walls: readonly number[]) => walls.map(wall => ({ wall, cpu: wall }));
  return [
    figure(`fold of ${FACTS} facts, not slowed`, all(fast.fold), undefined),
    figure(`plan of the six-speed template, ${fast.steps} steps, not slowed`, all(fast.plan), undefined),
    figure(`the same, ${SLOWER} × slower`, all(slow.plan), 300, [middleOf(all(fast.fold)), 'that fold']),
  ];
}

/** The core as one script, built as the page is. */
async function program(): Promise<string> {
  const built = await build({
    root: packageRoot(),
    configFile: false,
    logLevel: 'warn',
    build: {
      write: false,
      target: 'es2022',
      lib: { entry: join(packageRoot(), 'bench/page/in-page.ts'), formats: ['iife'], name: 'bench' },
    },
  });
  const [output] = [built].flat();
  if (output === undefined || !('output' in output))
    throw new Error('bench: the program for the page must be built, got none');
  return output.output[0].code;
}
