/**
 * What this page knows of one kart: its facts, and every answer worked out here, in the browser, from them by the same
 * core that runs on the server. The server only keeps the facts and says when more arrived.
 */
import {
  type Answers,
  createQueries,
  type KartLine,
  type Kept,
  type Problem,
  type Queries,
  type SecondWanted,
} from '../app/index.ts';
import type { KartBook } from '../life/index.ts';
import type { PlanDifference } from '../prep/index.ts';
import { ALONE, type Crew } from './plan/crew.ts';
import { createPlanner, type Planned, type Planner } from './plan/planner.ts';
import type { Search } from './plan/search.ts';
import type { Draft, Server, Written } from './server.ts';

/** Everything the sheets show, of one moment; facts newest first; the plan for the hands and times that were said. */
export type Snapshot = Answers;

export type View = {
  readonly karts: readonly KartLine[];
  readonly snapshot?: Snapshot;
  /** A fact is on its way to the book. */
  readonly writing: boolean;
  /** The line to the server: what is shown may be behind while it is down. */
  readonly line: 'open' | 'down';
  readonly trouble: readonly Problem[];
  readonly crew: Crew;
  /** A better plan is being looked for. */
  readonly searching: boolean;
  /** What the plan does otherwise than before, until somebody has read it. */
  readonly changed?: PlanDifference | undefined;
};

export type PhotoKept =
  | { readonly kind: 'kept'; readonly hash: string }
  | { readonly kind: 'refused'; readonly problems: readonly Problem[] };

export type Session = {
  view(): View;
  onChange(listener: () => void): () => void;
  open(kart: string): Promise<void>;
  write(drafts: readonly Draft[], more?: { readonly sure?: boolean; readonly at?: string }): Promise<Written>;
  /** A look at whatever is of the kind of what a fact says failed. */
  askForLooks(fact: string, all: boolean): Promise<Written>;
  /** Keeps a photo in the book; its hash is what a find names. */
  keepPhoto(photo: Blob): Promise<PhotoKept>;
  sign(statement: string, signer: string, sure: boolean): Promise<Written>;
  wantSecond(wanted: SecondWanted): Promise<Written>;
  /** What this device knows by itself of the kart that is open, and asks of others' records through the server. */
  readonly ask: {
    own(): Queries | undefined;
    server<T>(what: string, ask?: Readonly<Record<string, string>>): Promise<T>;
    /** Another kart of the book, whose record counts too. */
    book(kart: string): Promise<KartBook>;
    isDown(error: unknown): boolean;
    problems(error: unknown): readonly Problem[];
  };
  /** @see Planner */
  readonly planner: Pick<Planner, 'setCrew' | 'again' | 'stop' | 'seen'>;
};

/** What this device keeps and does by itself. */
export type Device = {
  readonly who: () => string;
  readonly crewOf: (kart: string) => Crew;
  readonly search: Search;
};

export function createSession(server: Server, { who, crewOf, search }: Device): Session {
  let view: View = { karts: [], writing: false, line: 'open', trouble: [], crew: ALONE, searching: false };
  let name = '';
  let kept: Kept[] = [];
  let queries: Queries | undefined;
  let close = (): void => undefined;
  let turn: Promise<void> = Promise.resolve();
  const listeners = new Set<() => void>();

  const change = (part: Partial<View>): void => {
    view = { ...view, ...part };
    for (const listener of listeners) listener();
  };

  const planner = createPlanner(search, crewOf, planned => change(shown(planned, view.snapshot)));

  /** Fetches what came since the last row and works everything out again. One at a time, in order. */
  const catchUp = (): Promise<void> => {
    const mine = name;
    turn = turn.then(async () => {
      if (mine !== name || queries === undefined) return;
      try {
        const more = await server.facts(mine, kept.at(-1)?.row ?? 0);
        if (mine !== name) return;
        if (more.length === 0 && view.snapshot?.kart.name === mine && isFresh(view.snapshot)) {
          if (view.line !== 'open' || view.trouble.length > 0) change({ line: 'open', trouble: [] });
          return;
        }
        kept = [...kept, ...more];
        const answers = await queries.answers(mine);
        const snapshot = { ...answers, facts: answers.facts.toReversed() };
        if (mine === name) change({ line: 'open', trouble: [], ...shown(planner.arrived(answers), snapshot) });
      } catch (error) {
        change(server.isDown(error) ? { line: 'down' } : { trouble: server.problems(error) });
      }
    });
    return turn;
  };

  const writing = async (send: () => Promise<Written>): Promise<Written> => {
    change({ writing: true });
    try {
      const written = await send();
      if (written.kind === 'written') await catchUp();
      return written;
    } catch (error) {
      if (server.isDown(error)) change({ line: 'down' });
      return { kind: 'refused', problems: server.problems(error), asksAgain: false };
    } finally {
      change({ writing: false });
    }
  };

  return {
    view: () => view,
    planner,
    onChange(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    async open(wanted) {
      close();
      try {
        const karts = await server.karts();
        name = karts.find(k => k.name === wanted)?.name ?? karts[0]?.name ?? '';
        change({ karts, line: 'open', trouble: [] });
      } catch (error) {
        change(server.isDown(error) ? { line: 'down' } : { trouble: server.problems(error) });
      }
      kept = [];
      const mine = name;
      queries = createQueries({
        source: {
          read: async (after = 0, limit = Number.POSITIVE_INFINITY) => kept.filter(k => k.row > after).slice(0, limit),
        },
        reader: server.reader(mine),
        clock: { now: () => new Date() },
      });
      close = server.listen(
        () => void catchUp(),
        up => change({ line: up ? 'open' : 'down' }),
      );
      if (mine !== '') await catchUp();
    },
    write: (drafts, more = {}) => writing(() => server.write(name, drafts, { by: who(), ...more })),
    askForLooks: (fact, all) => writing(() => server.askForLooks(name, { fact, all, by: who() })),
    async keepPhoto(photo) {
      try {
        return { kind: 'kept', hash: await server.putFile(photo) };
      } catch (error) {
        return { kind: 'refused', problems: server.problems(error) };
      }
    },
    wantSecond: wanted => writing(() => server.wantSecond(name, wanted)),
    ask: {
      own: () => queries,
      server: (what, given = {}) => server.answer(name, what, given),
      book: kart => server.book(kart),
      isDown: error => server.isDown(error),
      problems: error => server.problems(error),
    },
    sign: (statement, signer, sure) =>
      writing(() => server.sign(name, { signer, statement, sure, ...eventOf(view.snapshot) })),
  };
}

const shown = ({ plan, problems, ...how }: Planned, snapshot: Snapshot | undefined): Partial<View> => ({
  ...how,
  ...(snapshot && { snapshot: { ...snapshot, plan } }),
  ...(problems.length > 0 && { trouble: problems }),
});

/** What a page worked out less than a minute ago still holds when no fact came since: only days make items due by themselves. */
const isFresh = (snapshot: Snapshot): boolean => Date.now() - Date.parse(snapshot.fitness.at) < 60_000;

const eventOf = (snapshot: Snapshot | undefined): { event?: string } => {
  const event = snapshot?.fitness.event;
  return event === undefined || event === null ? {} : { event };
};
