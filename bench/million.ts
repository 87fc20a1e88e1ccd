/** A book of a million facts, a series of forty karts: opened from its snapshot and from its facts, each in a process of its own. */
import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, renameSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { monitorEventLoopDelay } from 'node:perf_hooks';
import { DatabaseSync } from '@photostructure/sqlite';
import { createApp } from '../src/app/index.ts';
import { CHAIN_START, type Draft, sealAll } from '../src/book/index.ts';
import { fileSnapshots, kartReader, libraryFiles, packageRoot, randomIds, systemClock } from '../src/host/index.ts';
import { openSqliteStore } from '../src/store/sqlite/index.ts';
import { inventBook } from './facts.ts';
import { benchKart } from './kart.ts';
import { type Figure, megabytes, ms, times } from './measure.ts';

const KARTS = 40;
const FACTS_EACH = 24_999; // and the kart file
const AN_EVENT = 200;
const WAYS = ['nothing', 'facts', 'snapshot', 'rows'] as const;
type Way = (typeof WAYS)[number];
/** Wall and processor time [ms], memory [bytes], pause [ms]. */
type Opened = {
  readonly open: Spent;
  readonly ask: Spent;
  readonly resident: number;
  readonly pause: number;
};
type Spent = { readonly wall: number; readonly cpu: number };

export async function million(): Promise<readonly Figure[]> {
  const folder = join(packageRoot(), 'node_modules', '.cache', 'kartwright', 'million-1');
  if (!existsSync(folder)) await build(folder);
  rmSync(join(folder, 'book.snapshot'), { force: true });
  const [nothing, rows, facts, snapshot] = [
    await inItsOwn(folder, 'nothing'),
    await inItsOwn(folder, 'rows'),
    await inItsOwn(folder, 'facts'),
    await inItsOwn(folder, 'snapshot'),
  ];
  const size = statSync(join(folder, 'book.snapshot')).size;
  return [
    spent('bare driver, every row read and parsed', rows.open),
    { what: 'the same, resident at the most', value: megabytes(rows.resident) },
    { what: 'nothing opened, resident', value: megabytes(nothing.resident) },
    spent('open from the facts, state of every kart', facts.open, rows.open),
    { what: 'the same, resident at the most', value: megabytes(facts.resident) },
    { what: 'snapshot', value: megabytes(size) },
    { what: 'longest wait of others while it is written', value: ms(facts.pause) },
    spent('open from the snapshot, state of every kart', snapshot.open, rows.open),
    {
      what: 'the same, resident at the most',
      value: megabytes(snapshot.resident),
      ratio: times(snapshot.resident, nothing.resident, 'nothing opened'),
    },
    spent('then the plan of one kart, its facts read', snapshot.ask, rows.open),
  ];
}

/** Processor time, since a shared machine is never still; what passed on the clock beside it. */
const spent = (what: string, { wall, cpu }: Spent, than?: Spent): Figure => ({
  what,
  value: ms(cpu),
  ratio: `${ms(wall)} on the clock${than ? `, ${times(cpu, than.cpu, 'the bare driver')}` : ''}`,
});

function clock(): () => Spent {
  const [from, used] = [performance.now(), process.cpuUsage()];
  return () => {
    const { user, system } = process.cpuUsage(used);
    return { wall: performance.now() - from, cpu: (user + system) / 1000 };
  };
}

async function build(folder: string): Promise<void> {
  const part = `${folder}.part`;
  rmSync(part, { recursive: true, force: true });
  mkdirSync(part, { recursive: true });
  const store = await openSqliteStore(join(part, 'book.sqlite'));
  const kart = benchKart();
  const books = Array.from({ length: KARTS }, (_, n) => inventBook(kart, FACTS_EACH, 41 + n, `bench-${n}`));
  for (const [n] of books.entries()) await store.append(sealAll(CHAIN_START, [filed(`bench-${n}`)]));
  for (let from = 0; from < FACTS_EACH; from += AN_EVENT)
    for (const book of books) await store.append(book.slice(from, from + AN_EVENT));
  await store.close();
  renameSync(part, folder);
}

const filed = (kart: string): Draft => {
  const at = '2020-01-01T00:00:00.000Z';
  const text = `kart: 1\nname: ${kart}\ntemplate: six-speed gearbox\n`;
  return {
    id: `${kart}-file`,
    kart,
    at,
    recorded: at,
    by: 'A. Bench',
    device: `${kart}-file`,
    kind: 'kart filed',
    text,
  };
};

/** So that one way's memory is not another's. */
async function inItsOwn(folder: string, way: Way): Promise<Opened> {
  const child = spawn(process.execPath, [process.argv[1] ?? '', 'opened', folder, way], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  let said = '';
  child.stdout.on('data', (text: Buffer) => {
    said += text.toString();
  });
  const code = await new Promise(done => child.once('close', done));
  if (code !== 0) throw new Error(`bench: opening by ${way} must work, got exit ${String(code)}`);
  return JSON.parse(said.trim().split('\n').at(-1) ?? '') as Opened;
}

/** What the process of its own does: opens the book one way, and says what that took. */
export async function opened(folder: string, wayName: string): Promise<string> {
  const way = WAYS.find(one => one === wayName);
  if (way === undefined) throw new Error(`bench: the way must be one of ${WAYS.join(', ')}, got ${wayName}`);
  const found =
    way === 'facts' || way === 'snapshot'
      ? await openedApp(folder, way)
      : { open: way === 'rows' ? bareRows(folder) : NONE };
  return JSON.stringify({ ask: NONE, pause: 0, ...found, resident: process.resourceUsage().maxRSS * 1024 });
}
const NONE: Spent = { wall: 0, cpu: 0 };

function bareRows(folder: string): Spent {
  const took = clock();
  const database = new DatabaseSync(join(folder, 'book.sqlite'), { readOnly: true });
  const rows = database.prepare('select row, body from fact where row > ? order by row limit 5000');
  for (let after = 0; ; ) {
    const some = rows.all(after) as { row: number; body: string }[];
    for (const { row, body } of some) after = (JSON.parse(body) as { seq: number }).seq > 0 ? row : after;
    if (some.length === 0) break;
  }
  database.close();
  return took();
}

async function openedApp(folder: string, way: 'facts' | 'snapshot'): Promise<Omit<Opened, 'resident'>> {
  const took = clock();
  const store = await openSqliteStore(join(folder, 'book.sqlite'));
  const reader = kartReader(libraryFiles());
  const snapshots = fileSnapshots(join(folder, 'book.snapshot'));
  const app = createApp({ store, clock: systemClock, ids: randomIds, reader, device: 'bench', snapshots });
  let facts = 0;
  for (let n = 0; n < KARTS; n++) facts += (await app.state(`bench-${n}`)).count;
  const open = took();
  if (facts !== KARTS * (FACTS_EACH + 1)) throw new Error(`bench: every fact must count, got ${facts}`);
  const delay = monitorEventLoopDelay({ resolution: 1 });
  const asking = clock();
  if (way === 'snapshot') await app.plan('bench-7');
  const ask = asking();
  delay.enable();
  await app.close(); // writes the snapshot where there is none
  delay.disable();
  return { open, ask, pause: delay.max / 1e6 };
}
