/**
 * Keeps the book of this device and the server's the same (docs/exchange.md): after every write, when the server speaks,
 * when the network is back, and by and by. Nobody waits for it.
 */
import {
  type App,
  type ChainEnds,
  CLOCK_SLACK_MS,
  exchange,
  type Own,
  type Problem,
  sameBook,
} from '../../app/index.ts';
import type { Fact } from '../../book/index.ts';
import { meetingWords } from '../words/meeting.ts';
import { sendFiles } from './files.ts';
import { Answered, OutOfReach, type Remote } from './remote.ts';

export type SyncState = {
  /**
   * `looking`: not met yet; `stopped`: the server answers and does not take what is here; `other book`: it keeps somebody
   * else's; `empty server`: it held a book and now holds none, so a person says whether it is to get this one; `put out`: it does
   * not let this device in, and is not asked again before a person, the network or a look at the page says so.
   */
  readonly is: 'looking' | 'all sent' | 'to send' | 'no server' | 'stopped' | 'other book' | 'empty server' | 'put out';
  /** Facts that the server does not have. */
  readonly waiting: number;
  /** When the server was last met; undefined: never. */
  readonly met?: string;
  readonly problems: readonly Problem[];
  /** How far the clock of this device runs ahead of the server's [ms], where that is more than two clocks may differ. */
  readonly ahead?: number | undefined;
  /** So many facts the server held before and did not hold when it was met: an older copy of its book was put back. */
  readonly setBack?: number | undefined;
  /** Of another book. */
  readonly theirs?: Theirs;
};

/** A book by where its devices began, and the team it is of, where that is known. */
export type Theirs = { readonly starts: readonly string[]; readonly team?: string | undefined };

export type Sync = {
  state(): SyncState;
  onChange(listener: () => void): () => void;
  /** Calls back when facts are here that were not, from the server or another page of this device; not amid an exchange. */
  onArrived(listener: () => void): () => void;
  /** So many facts were written just now; they are counted and sent a moment later. */
  expect(facts: number): void;
  /** Counts what waits, and sends it as soon as can be. Resolves when it is counted. */
  wrote(): Promise<void>;
  /** Tries now, or once more when it is trying. Resolves after it. */
  now(): Promise<void>;
  /** A server that holds nothing any more gets everything. */
  giveAll(): Promise<void>;
  /** A person has read that the server was set back. */
  seenSetBack(): Promise<void>;
  stop(): void;
};

type Met = {
  readonly at: string;
  readonly numbers: Readonly<Record<string, number>>;
  readonly setBack?: number | undefined;
};
type Parts = {
  readonly app: App;
  readonly own: Own;
  readonly remote: Pick<Remote, 'meet' | 'since' | 'take' | 'putFile' | 'listen'>;
  readonly clock: { now(): Date };
};

/** While the server is in reach it tells when something arrived; this is for a line that looks whole and is not. */
const CALM_MS = 60_000;
const FIRST_MS = 2_000;
/** After a write the page shows first what follows from it. */
const SHOWN_MS = 200;
const LONGEST_MS = 120_000;

export async function createSync({ app, own, remote, clock }: Parts): Promise<Sync> {
  const before = (await own.get('met')) as Met | undefined;
  const numbers: Record<string, number> = { ...before?.numbers }; // last fact of each device that the server holds
  let state: SyncState = {
    is: 'looking',
    waiting: 0,
    problems: [],
    ...(before && { met: before.at, setBack: before.setBack }),
  };
  let trying: Promise<void> | undefined;
  let next: Promise<void> | undefined;
  let unheard = false;
  let mayGiveAll = false;
  let expected = false;
  let shown: ReturnType<typeof setTimeout> | undefined;
  let wait = FIRST_MS;
  let timer: ReturnType<typeof setTimeout> | undefined;
  const listeners = new Set<() => void>();
  const arrivals = new Set<() => void>();
  const tell = (all: ReadonlySet<() => void>): void => {
    for (const each of all) each();
  };
  const put = (part: Partial<SyncState>): void => {
    state = { ...state, ...part };
    tell(listeners);
  };

  const here = { ends: app.ends, since: app.since, take: app.take };
  const there = {
    since: async (have: Readonly<Record<string, number>>): Promise<readonly Fact[]> => {
      const facts = await remote.since(have);
      for (const { device, seq } of facts) numbers[device] = Math.max(numbers[device] ?? 0, seq);
      return facts;
    },
    take: async (facts: readonly unknown[]) => {
      const chain = facts as readonly Fact[];
      await sendFiles(app, remote, chain); // before the facts that speak of them
      const taken = await remote.take(facts);
      if (taken.kind === 'taken')
        for (const { device, seq } of chain) numbers[device] = Math.max(numbers[device] ?? 0, seq);
      return taken;
    },
  };

  const count = async (): Promise<number> => {
    const ends = await app.ends();
    return Object.entries(ends).reduce((sum, [device, { seq }]) => sum + Math.max(0, seq - (numbers[device] ?? 0)), 0);
  };
  /** Without room it is found out again next time. */
  const keepMet = (at: string): Promise<void> =>
    own.put('met', { at, numbers, setBack: state.setBack } satisfies Met).catch(() => undefined);
  const meet = async (): Promise<void> => {
    const { ends, starts, team, clock: theirClock } = await remote.meet();
    put({ ahead: aheadOf(clock.now(), theirClock) });
    const mine = (await own.get('team')) as string | undefined;
    if (!isSame({ starts: await app.starts(), team: mine }, { starts, team }))
      return put({ is: 'other book', waiting: await count(), theirs: { starts, team } });
    if (starts.length === 0 && Object.keys(numbers).length > 0 && !mayGiveAll)
      return put({ is: 'empty server', waiting: await count() });
    mayGiveAll = false;
    if (mine === undefined && team !== undefined) await own.put('team', team).catch(() => undefined); // without room: next time
    const lost = Object.entries(numbers).reduce(
      (sum, [device, seq]) => sum + Math.max(0, seq - (ends[device]?.seq ?? 0)),
      0,
    );
    if (lost > 0) put({ setBack: (state.setBack ?? 0) + lost });
    hold(numbers, ends);
    const { problems } = await exchange(here, { ends: async () => ends, ...there });
    const met = clock.now().toISOString();
    await keepMet(met);
    const waiting = await count();
    put({ is: problems.length > 0 ? 'stopped' : waiting > 0 ? 'to send' : 'all sent', waiting, met, problems });
    if (waiting > 0 && problems.length === 0) void now(); // written meanwhile
  };
  const attempt = async (): Promise<void> => {
    try {
      await meet();
      wait = FIRST_MS;
      hangUp ??= listen();
      later(CALM_MS);
    } catch (error) {
      const waiting = await count().catch(() => state.waiting);
      if (error instanceof Answered && error.status === 401) {
        put({ is: 'put out', waiting, problems: [] });
        hangUp?.();
        hangUp = undefined;
        return clearTimeout(timer);
      }
      put(
        error instanceof OutOfReach
          ? { is: 'no server', waiting, problems: [] }
          : { is: 'stopped', waiting, problems: toldOf(error) },
      );
      later(wait);
      wait = Math.min(LONGEST_MS, wait * 2);
    }
  };
  const now = (): Promise<void> => {
    if (trying === undefined) {
      trying = attempt().finally(() => {
        trying = undefined;
        if (unheard) tell(arrivals);
        unheard = false;
      });
      return trying;
    }
    next ??= trying.then(() => {
      next = undefined;
      return now();
    });
    return next;
  };
  const later = (ms: number): void => {
    clearTimeout(timer);
    timer = setTimeout(() => void now(), ms);
  };
  const wrote = async (): Promise<void> => {
    const waiting = await count();
    if (waiting === state.waiting && !expected) return;
    expected = false;
    const { is } = state;
    put({
      waiting,
      is: is === 'all sent' && waiting > 0 ? 'to send' : is === 'to send' && waiting === 0 ? 'all sent' : is,
    });
    if (waiting > 0) void now();
  };

  const unwatch = app.watch(() => {
    if (trying) unheard = true;
    else tell(arrivals);
    clearTimeout(shown);
    shown = setTimeout(() => void wrote().catch(() => undefined), SHOWN_MS); // a book that cannot be read says so to whoever asks it something
  });
  const listen = () =>
    remote.listen(
      () => void now(),
      () => void now(),
    );
  let hangUp: (() => void) | undefined = listen();
  await wrote().catch(() => undefined);
  void now();
  return {
    state: () => state,
    onChange: listener => added(listeners, listener),
    onArrived: listener => added(arrivals, listener),
    expect(facts) {
      expected = true;
      put({ waiting: state.waiting + facts, ...(state.is === 'all sent' && { is: 'to send' as const }) });
    },
    wrote,
    now,
    giveAll() {
      mayGiveAll = true;
      return now();
    },
    async seenSetBack() {
      put({ setBack: undefined });
      if (state.met !== undefined) await keepMet(state.met);
    },
    stop() {
      clearTimeout(timer);
      clearTimeout(shown);
      unwatch();
      hangUp?.();
    },
  };
}

/** Two teams that began from one export share their starts, and are two all the same. */
export const isSame = (here: Theirs, there: Theirs): boolean =>
  sameBook(here.starts, there.starts) &&
  (here.team === undefined || there.team === undefined || here.team === there.team);

function aheadOf(now: Date, theirs: string | undefined): number | undefined {
  const ahead = theirs === undefined ? 0 : now.getTime() - Date.parse(theirs);
  return Math.abs(ahead) > CLOCK_SLACK_MS ? ahead : undefined;
}

/** A server that was set back to an old copy holds less than it did: what it lacks is sent again. */
function hold(numbers: Record<string, number>, ends: ChainEnds): void {
  for (const device of Object.keys(numbers)) delete numbers[device];
  for (const [device, { seq }] of Object.entries(ends)) numbers[device] = seq;
}

function toldOf(error: unknown): readonly Problem[] {
  if (error instanceof Answered) return error.problems;
  const why = error instanceof Error ? error.message : String(error);
  const toDo = error instanceof Error && 'remedy' in error ? String(error.remedy) : undefined;
  return [
    {
      code: 'book',
      where: 'server',
      message: meetingWords.twoBooksCould(why),
      remedy: meetingWords.whatWasWrittenIsKeptOn(toDo),
    },
  ];
}

function added(all: Set<() => void>, listener: () => void): () => void {
  all.add(listener);
  return () => all.delete(listener);
}
