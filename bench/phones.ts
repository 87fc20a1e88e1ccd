/** A hundred phones, each of which sends what was written in the last second, every second for a minute, to the built server. */
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { Agent, request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { proofOf } from '../src/app/index.ts';
import { CHAIN_START, type Draft, type Fact, sealAll } from '../src/book/index.ts';
import { packageRoot } from '../src/host/index.ts';
import { openPostgresStore } from '../src/store/postgres/index.ts';
import { openSqliteStore } from '../src/store/sqlite/index.ts';
import { postgresBinaries, startPostgres } from '../test/postgres.ts';
import { type Figure, ms, times } from './measure.ts';

const PHONES = 100;
const FACTS = 20;
const SECONDS = 60;
const QUIET_SECONDS = 10;

export async function phones(): Promise<readonly Figure[]> {
  const figures = [...(await phonesOn('SQLite', {}))];
  const bin = postgresBinaries();
  if (bin === undefined) return [...figures, { what: 'PostgreSQL', value: 'not here' }];
  const server = await startPostgres(bin, { durable: true });
  try {
    const DATABASE_URL = await server.newDatabase();
    figures.push(...(await phonesOn('PostgreSQL', { DATABASE_URL })));
  } finally {
    await server.stop();
  }
  return figures;
}

async function phonesOn(what: string, more: { readonly DATABASE_URL?: string }): Promise<readonly Figure[]> {
  const folder = mkdtempSync(join(tmpdir(), 'kartwright-phones-'));
  const agent = new Agent({ keepAlive: true, maxSockets: PHONES });
  const { child, url } = await served(folder, more);
  try {
    const batches = Array.from({ length: PHONES }, (_, phone) => batchesOf(phone));
    const quiet = await beats(QUIET_SECONDS, () => asked(agent, new URL('/healthz', url), undefined));
    const sent = await beats(SECONDS, (phone, second) =>
      asked(agent, new URL('/api/book/take', url), batches[phone]?.[second] ?? ''),
    );
    await ended(child);
    const kept = await counted(folder, more);
    const wanted = PHONES * FACTS * SECONDS;
    if (kept.facts !== wanted || kept.problems > 0)
      throw new Error(
        `bench: ${wanted} facts must be kept and whole, got ${kept.facts} with ${kept.problems} problems`,
      );
    const [p50, p99, still] = [at(sent, 0.5), at(sent, 0.99), at(quiet, 0.99)];
    return [
      { what: `${what}: ${wanted} facts sent, all counted afterwards`, value: `${PHONES * FACTS} /s` },
      { what: `${what}: a batch of ${FACTS} acknowledged, median`, value: ms(p50) },
      {
        what: `${what}: the same, 99 in 100 within`,
        value: ms(p99),
        ratio: times(p99, still, 'a bare request, 99 in 100'),
      },
      { what: `${what}: the longest`, value: ms(sent.at(-1) ?? Number.NaN) },
    ];
  } finally {
    agent.destroy();
    await ended(child);
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Bodies of a phone's requests, sealed beforehand: sealing is the phone's work. */
function batchesOf(phone: number): readonly string[] {
  const device = `phone-${phone}`;
  const drafts = Array.from({ length: FACTS * SECONDS }, (_, n): Draft => {
    const at = new Date(Date.UTC(2026, 4, 1, 8) + n * 1000).toISOString();
    const fact = { id: `${device}-${n}`, kart: `kart ${phone % 10}`, at, recorded: at, by: 'A. Bench', device };
    return { ...fact, kind: 'checked', item: 'rear hub left/seat', result: 'pass' };
  });
  const facts: readonly Fact[] = sealAll(CHAIN_START, drafts);
  return Array.from({ length: SECONDS }, (_, n) => JSON.stringify({ facts: facts.slice(n * FACTS, (n + 1) * FACTS) }));
}

/** Every phone once a second, not all at the same moment; how long each answer took, shortest first [ms]. */
async function beats(
  seconds: number,
  once: (phone: number, second: number) => Promise<void>,
): Promise<readonly number[]> {
  const took: number[] = [];
  const begin = performance.now() + 200;
  await Promise.all(
    Array.from({ length: PHONES }, async (_, phone) => {
      for (let second = 0; second < seconds; second++) {
        const due = begin + second * 1000 + phone * (1000 / PHONES);
        await new Promise(done => setTimeout(done, Math.max(0, due - performance.now())));
        await once(phone, second);
        took.push(performance.now() - due); // from when it was due: who is late is not let off
      }
    }),
  );
  return took.sort((a, b) => a - b);
}

const at = (sorted: readonly number[], share: number): number =>
  sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? Number.NaN;

function asked(agent: Agent, url: URL, body: string | undefined): Promise<void> {
  return new Promise((done, failed) => {
    const method = body === undefined ? 'GET' : 'POST';
    const asking = request(url, { agent, method, headers: { 'content-type': 'application/json' } }, answer => {
      answer.resume().once('end', () => {
        if (answer.statusCode === 200) done();
        else failed(new Error(`bench: ${method} ${url.pathname} must answer 200, got ${answer.statusCode}`));
      });
    });
    asking.once('error', failed).end(body);
  });
}

async function served(folder: string, more: Record<string, string>): Promise<{ child: ChildProcess; url: string }> {
  const words = ['dist/cli.js', 'serve', '--port', '0', '--json', '--no-backup', '--log', 'error'];
  const child = spawn(process.execPath, words, {
    cwd: packageRoot(),
    env: { ...process.env, KARTWRIGHT_DATA: folder, ...more },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const [line] = (await once(child.stdout, 'data')) as [Buffer];
  return { child, url: (JSON.parse(line.toString()) as { url: string }).url };
}

async function ended(child: ChildProcess): Promise<void> {
  if (child.exitCode !== null || child.signalCode !== null) return;
  child.kill('SIGTERM');
  await once(child, 'exit');
}

async function counted(folder: string, { DATABASE_URL }: { readonly DATABASE_URL?: string }) {
  const store = DATABASE_URL
    ? await openPostgresStore(DATABASE_URL)
    : await openSqliteStore(join(folder, 'book.sqlite'));
  const { facts, problems } = await proofOf(store);
  await store.close();
  return { facts, problems: problems.length };
}
