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
import { middle } from './took.ts';

const AUDIT = 'lighthouse@12.2.3';
const SHEETS = ['work', 'today', 'kart', 'fit'];
/** Its own makers advise several runs and the middle one: one run sees what else the machine did. */
const RUNS = 3;
/** The live line to the server never ends, and else it would wait 45 s for that. */
const LINE_STAYS_OPEN = '--max-wait-for-load=15000';
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

function auditOf(served: Pick<Served, 'url'>, sheet: string, cwd: string, chromium: string): readonly Figure[] {
  const taken: Report[] = [];
  let failing = '';
  // Now and then it cannot read its own record of a load, and asks to be run again.
  for (let run = 0; run < RUNS + 2 && taken.length < RUNS; run++) {
    const once = auditOnce(served, sheet, cwd, chromium);
    if ('report' in once) taken.push(once.report);
    else failing = once.failed;
  }
  if (taken.length < RUNS)
    return [{ what: `sheet ${sheet}`, value: 'not known', ratio: `${AUDIT} could not be run: ${failing}` }];
  const reports = taken.toSorted((a, b) => scoreOf(a, 'performance') - scoreOf(b, 'performance'));
  const { audits } = reports[Math.floor(RUNS / 2)] as Report;
  // Only the speed hangs on what else the machine did: what every run must find good shows its least.
  const scores = (name: string): readonly number[] => reports.map(report => scoreOf(report, name));
  const value = Object.keys(GOALS)
    .map(name => (name === 'performance' ? middle(scores(name)) : Math.min(...scores(name))))
    .join(' · ');
  const shown = (name: string): string => audits[name]?.displayValue?.replace(/\s/g, ' ') ?? 'not known';
  const failed = Object.values(audits).filter(({ score }) => score === 0);
  const least = Object.values(GOALS).join(' · ');
  const all = scores('performance').join(', ');
  return [
    {
      what: `sheet ${sheet}: ${Object.keys(GOALS).join(' · ')}`,
      value,
      ratio: `goal ${least}; performance of ${RUNS}: ${all}; first paint ${shown('first-contentful-paint')}, largest ${shown('largest-contentful-paint')}, blocked ${shown('total-blocking-time')}, shift ${shown('cumulative-layout-shift')}`,
    },
    ...failed.map(({ title, displayValue }) => ({ what: `  ${title}`, value: displayValue ?? 'no' })),
  ];
}

function auditOnce(
  { url }: Pick<Served, 'url'>,
  sheet: string,
  cwd: string,
  chromium: string,
): { readonly report: Report } | { readonly failed: string } {
  const flags = ['--headless=new', ...chromiumFlags].join(' ');
  const asked = ['--output=json', '--quiet', `--only-categories=${Object.keys(GOALS).join(',')}`, LINE_STAYS_OPEN];
  const { stdout, stderr, status } = spawnSync(
    process.platform === 'win32' ? 'npx.cmd' : 'npx',
    ['--yes', AUDIT, `${url}#/${sheet}`, ...asked, `--chrome-flags=${flags}`],
    { cwd, encoding: 'utf8', env: { ...process.env, CHROME_PATH: chromium }, maxBuffer: 1 << 26 },
  );
  return status === 0 ? { report: JSON.parse(stdout) as Report } : { failed: lastLine(stderr) };
}

const scoreOf = ({ categories }: Report, name: string): number =>
  Math.round((categories[name]?.score ?? Number.NaN) * 100);
const lastLine = (text: string | null): string => (text ?? '').trim().split('\n').at(-1) ?? '';
