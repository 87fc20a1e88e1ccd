/**
 * What a general audit of web pages (Lighthouse, a phone on a slow network) says of four sheets. It is fetched when the bench is
 * run and is no part of the project; where it cannot be had, that is said.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromiumFlags, ensureChromium } from '../../scripts/chromium.mjs';
import { type Served, startBuilt } from '../../test/journeys/served.ts';
import type { Figure } from '../measure.ts';

const AUDIT = 'lighthouse@12.2.3';
const SHEETS = ['work', 'today', 'kart', 'fit'];
const GOALS = { performance: 95, accessibility: 100, 'best-practices': 100 } as const;

type Report = {
  readonly categories: Readonly<Record<string, { readonly score: number | null }>>;
  readonly audits: Readonly<
    Record<string, { readonly title: string; readonly score: number | null; readonly displayValue?: string }>
  >;
};

export async function audits(): Promise<readonly Figure[]> {
  const served = await startBuilt(['serve', '--demo']);
  const folder = mkdtempSync(join(tmpdir(), 'kartwright-audit-'));
  try {
    const chromium = await ensureChromium();
    return SHEETS.flatMap(sheet => auditOf(served, sheet, folder, chromium));
  } finally {
    rmSync(folder, { recursive: true, force: true });
    await served.stop();
  }
}

function auditOf({ url }: Pick<Served, 'url'>, sheet: string, cwd: string, chromium: string): readonly Figure[] {
  const flags = ['--headless=new', ...chromiumFlags].join(' ');
  const asked = ['--output=json', '--quiet', `--only-categories=${Object.keys(GOALS).join(',')}`];
  const { stdout, stderr, status } = spawnSync(
    process.platform === 'win32' ? 'npx.cmd' : 'npx',
    ['--yes', AUDIT, `${url}#/${sheet}`, ...asked, `--chrome-flags=${flags}`],
    { cwd, encoding: 'utf8', env: { ...process.env, CHROME_PATH: chromium }, maxBuffer: 1 << 26 },
  );
  if (status !== 0)
    return [{ what: `sheet ${sheet}`, value: 'not known', ratio: `${AUDIT} could not be run: ${lastLine(stderr)}` }];
  const { categories, audits } = JSON.parse(stdout) as Report;
  const score = (name: string): number => Math.round((categories[name]?.score ?? Number.NaN) * 100);
  const value = Object.keys(GOALS).map(score).join(' · ');
  const shown = (name: string): string => audits[name]?.displayValue?.replace(/\s/g, ' ') ?? 'not known';
  const failed = Object.values(audits).filter(({ score }) => score === 0);
  const least = Object.values(GOALS).join(' · ');
  return [
    {
      what: `sheet ${sheet}: ${Object.keys(GOALS).join(' · ')}`,
      value,
      ratio: `goal ${least}; first paint ${shown('first-contentful-paint')}, largest ${shown('largest-contentful-paint')}, blocked ${shown('total-blocking-time')}, shift ${shown('cumulative-layout-shift')}`,
    },
    ...failed.map(({ title, displayValue }) => ({ what: `  ${title}`, value: displayValue ?? 'no' })),
  ];
}

const lastLine = (text: string | null): string => (text ?? '').trim().split('\n').at(-1) ?? '';
