/**
 * What this page knows of one kart: every answer is worked out here, on the device, from its own book, and what a person
 * says is written there first. The server is met behind it, whenever it is in reach.
 */
import {
  type AlikeAnswer,
  type FactLine,
  type KartRead,
  type Opening,
  type PlainApp,
  type Problem,
  type Queries,
  type Recorded,
  Refusal,
  type SecondWanted,
} from '../app/index.ts';
import type { Fact } from '../book/index.ts';
import type { Kart, LibraryTexts } from '../kart/index.ts';
import type { KartBook } from '../life/index.ts';
import type { PageBook } from './book/in-worker.ts';
import { ALONE, type Crew, isAlone } from './plan/crew.ts';
import { createPlanner, type Planner } from './plan/planner.ts';
import type { Search } from './plan/search.ts';
import { problemsOf } from './problems-of.ts';
import type { Gathered } from './slow-questions/ask.ts';
import { isFresh, isLongAgo, type Snapshot, shownOf, type View } from './view.ts';
import {
  type Draft,
  refusedFor,
  type Saying,
  type Signed,
  sheetOfBefore,
  type Written,
  writtenFrom,
} from './written.ts';

export type { Snapshot } from './view.ts';

export type PhotoKept =
  | { readonly kind: 'kept'; readonly hash: string }
  | { readonly kind: 'refused'; readonly problems: readonly Problem[] };

export type Session = {
  view(): View;
  onChange(listener: () => void): () => void;
  /** @param opening what is shown till the book has been read */
  open(kart: string, opening?: Promise<Opening | undefined>): Promise<void>;
  /** Works everything out again where it is of a while ago: days make items due by themselves. */
  lookAgain(): Promise<void>;
  /** @param more `recorded` is called the moment it is in the book, before the page is worked out again. */
  write(drafts: readonly Draft[], more?: Saying & { readonly recorded?: () => void }): Promise<Written>;
  /**
   * The same for a step that was done as the plan asks: once it is in the book the next one is there, and the plan is made anew behind it.
   * @param shown called in the same go, so that what follows from it is drawn with it
   */
  finish(step: string, drafts: readonly Draft[], more: Saying, shown: () => void): Promise<Written>;
  /** Anything longer that writes into the book of this kart; the page is worked out again afterwards. */
  busy<T>(work: (app: PlainApp, kart: string) => Promise<T>): Promise<T>;
  /** A look at whatever is of the kind of what a fact says failed. */
  askForLooks(fact: string, all: boolean): Promise<Written>;
  /** Keeps a photo in the book; its hash is what a find names. */
  keepPhoto(photo: Blob): Promise<PhotoKept>;
  /** @param signature `seen` is what stood open on the page that was signed; `recorded` as for `write` */
  sign(signature: Signed, recorded: () => void): Promise<Written>;
  wantSecond(wanted: SecondWanted): Promise<Written>;
  /** What this device knows by itself of the karts of its book. */
  readonly ask: {
    own(): Queries;
    /** Every entry of the kart that is shown, newest first. */
    whole(): Promise<readonly FactLine[]>;
    alike(fact: string): Promise<AlikeAnswer>;
    /** Events ahead and the service each asks for, as an iCalendar file. */
    calendar(): Promise<string>;
    /** Another kart of the book, whose record counts too. */
    book(kart: string): Promise<KartBook>;
    /** A photo or a log of the book; undefined when it cannot be had here. */
    file(hash: string): Promise<Blob | undefined>;
    /** What the text of a kart file reads as. */
    read(text: string): Promise<KartRead>;
    /** What kart files are read with: kinds, templates, rule sets. */
    library(): Promise<LibraryTexts>;
    /** Everything, for a worker beside the page. */
    gathered(): Promise<Gathered>;
    problems(error: unknown): readonly Problem[];
  };
  readonly book: {
    /** Tries to meet the server now. */
    meet(): Promise<void>;
    /** All of it as text. */
    export(): Promise<string>;
    /** @see Sync */
    giveAll(): Promise<void>;
    /** @see Sync */
    seenSetBack(): Promise<void>;
    /** An empty one; this one stays on the device. */
    beginAnew(): void;
    /** Asks for the code that lets this device in. */
    letIn(): void;
  };
  /** @see Planner */
  readonly planner: Pick<Planner, 'setCrew' | 'again' | 'stop' | 'seen'>;
};

/** What this device keeps and does by itself. */
export type Device = {
  readonly who: () => string;
  readonly crewOf: (kart: string) => Crew;
  readonly search: Search;
  /** Once what is asked for by now stands on the screen; returns the way to stop it. */
  readonly afterPaint: (work: () => void) => () => void;
  readonly beginAnew: () => void;
  readonly letIn: () => void;
};

/** A step that is written sooner leaves the page without a word: saying so would take longer than the writing. */
const NOTICED_MS = 150;

export function createSession(book: PageBook, device: Device): Session {
  const { who, crewOf, search, afterPaint, beginAnew, letIn } = device;
  const { app, sync } = book;
  let view: View = {
    karts: [],
    isRead: false,
    writing: false,
    sync: sync.state(),
    kept: book.kept,
    trouble: [],
    crew: ALONE,
    searching: false,
  };
  let name = '';
  let wanted = '';
  let kart: Kart | undefined;
  let facts = 0;
  let finishes = 0;
  let isFinishing = false;
  let here = (): void => undefined;
  /** The book itself has been read: what is said before then waits for it. */
  const read = new Promise<void>(done => {
    here = done;
  });
  let turn: Promise<void> = Promise.resolve();
  const listeners = new Set<() => void>();

  const change = (part: Partial<View>): void => {
    view = { ...view, ...part };
    for (const listener of listeners) listener();
  };

  const factsOf = async (of: string): Promise<readonly Fact[]> => (await app.facts(of)).map(({ fact }) => fact);
  const searchHere: Parameters<typeof createPlanner>[0] = (job, hear) => {
    let stopped = false;
    let stop = (): void => {
      stopped = true;
    };
    factsOf(job.kart.name).then(
      facts => {
        if (!stopped) stop = search({ ...job, facts }, hear);
      },
      (error: unknown) => stopped || hear({ problems: problemsOf(error) }),
    );
    return () => stop();
  };
  const planner = createPlanner(searchHere, crewOf, planned => change(shownOf(planned, view.snapshot)));

  const painted = (): Promise<void> => new Promise(done => afterPaint(done));
  /** Works everything out again from what the book holds by now. One at a time, in order. */
  const catchUp = (anew = false): Promise<void> => {
    turn = turn.then(async () => {
      try {
        const { snapshot: seen, stood } = view;
        const holds = !anew && stood === undefined && seen?.kart.name === name && isFresh(seen);
        const before = finishes;
        const mayArrive = sync.state().is === 'looking';
        const asked = wanted;
        const shown = holds ? { kart: name, facts } : undefined;
        const { karts, kart: line, answers } = await book.look([asked, name], shown); // till it has come, the one at hand
        if (answers !== undefined) await painted(); // taken over by now; it is drawn in a turn of its own, and a thumb gets in between
        kart = answers?.kart ?? kart;
        if (line === undefined && mayArrive) return; // from the server; it is looked for again once that was met
        if (line === undefined) {
          name = '';
          here();
          return change({ karts, isRead: true, trouble: [], picked: undefined, snapshot: undefined, stood: undefined });
        }
        if (answers === undefined || kart === undefined) {
          if (view.trouble.length > 0 || view.picked !== undefined) change({ trouble: [], picked: undefined });
          return;
        }
        if (before !== finishes) return; // another step was done meanwhile, and is caught up with next
        if (wanted === '') wanted = line.name; // one that is filed later never takes its place
        name = line.name; // what is said is said of the kart that is seen
        here();
        const snapshot = { ...answers, kart };
        facts = line.facts;
        const drawn = shownOf(planner.arrived(snapshot), snapshot);
        const picked = [asked, line.name].includes(wanted) ? undefined : wanted;
        change({ karts, isRead: true, trouble: [], stood: undefined, picked, ...drawn });
      } catch (error) {
        here();
        change({ trouble: problemsOf(error) });
      }
    });
    return turn;
  };
  let stopWaiting = (): void => undefined;
  let isNews = false;
  /** What was asked for is painted first; several in a row are caught up with once. */
  const catchUpSoon = (anew: boolean): void => {
    isNews ||= anew;
    stopWaiting();
    stopWaiting = afterPaint(() => {
      void catchUp(isNews);
      isNews = false;
    });
  };
  book.onNews(() => catchUpSoon(true));
  let stopSaying = (): void => undefined;
  sync.onChange(() => {
    view = { ...view, sync: sync.state(), kept: book.kept };
    stopSaying(); // how it stands with the server is no reason to let a thumb wait
    stopSaying = afterPaint(() => change({}));
    if (name === '' && view.sync.is !== 'looking') void catchUp();
  });

  /** The kart that a person saw who says something now; what is said of a sheet of before waits for the book, and is never written of another kart. */
  const kartSeen = async (step?: string): Promise<string> => {
    const { snapshot, stood } = view;
    await read;
    if (view.karts.every(one => one.name !== wanted)) wanted = name; // who goes on with this one stays with it
    if (stood === undefined) return name;
    await turn;
    const isToDo = view.snapshot?.plan.steps.some(one => one.key === step && one.state !== 'done');
    if (snapshot?.kart.name !== name || (step !== undefined && isToDo !== true)) throw new Refusal([sheetOfBefore()]);
    return name;
  };
  const busy: Session['busy'] = async work => {
    const seen = kartSeen();
    change({ writing: true });
    try {
      const done = await work(app, await seen);
      await sync.wrote().catch(() => undefined); // it is in the book, and counted when the server is met
      await catchUp();
      return done;
    } finally {
      change({ writing: false });
    }
  };
  const writing = async (
    work: (app: PlainApp, kart: string) => Promise<Recorded>,
    recorded = () => {},
  ): Promise<Written> => {
    try {
      const done = busy(async (app, kart) => {
        const said = await work(app, kart);
        if (said.kind === 'recorded') recorded();
        return said;
      });
      return writtenFrom(await done);
    } catch (error) {
      return refusedFor(error);
    }
  };
  const rarely = () => import('./book/rarely.ts');

  return {
    view: () => view,
    planner,
    busy,
    onChange(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    async open(which, opening) {
      if (which !== wanted && view.snapshot !== undefined) change({ picked: which });
      wanted = which;
      void opening?.then(early => {
        if (early?.answers === undefined || view.snapshot !== undefined || !isAlone(crewOf(early.answers.kart.name)))
          return;
        const { karts, answers } = early;
        change({ karts, snapshot: answers, stood: answers.fitness.at });
      });
      await catchUp();
    },
    async lookAgain() {
      if (view.snapshot === undefined || isFresh(view.snapshot)) return;
      // What is shown till then is of before.
      if (isLongAgo(view.snapshot)) change({ stood: view.snapshot.fitness.at });
      await catchUp();
    },
    // By whoever says it, not whoever has the device once the book is read.
    write: (drafts, { recorded, ...more } = {}, by = who()) =>
      writing((to, kart) => to.record(kart, drafts, { by, ...more }), recorded),
    async finish(step, drafts, more, shown) {
      if (isFinishing) return { kind: 'refused', problems: [], asksAgain: false }; // a thumb that taps twice
      isFinishing = true;
      const by = who();
      const slow = setTimeout(() => change({ writing: true }), NOTICED_MS);
      try {
        const of = await kartSeen(step);
        const written = writtenFrom(await app.record(of, drafts, { by, ...more }));
        const { snapshot } = view;
        if (written.kind === 'refused' || snapshot?.kart.name !== of) return written; // another one was picked meanwhile
        finishes++;
        const { sync: seen } = view;
        sync.expect(written.facts.length);
        const lines = written.facts.map(fact => ({ fact, struck: null })).toReversed();
        const facts = [...lines, ...snapshot.facts];
        const entries = snapshot.entries + lines.length;
        change({
          // As the worker will say it; said with the step, which never stands there beside `all sent`.
          sync: {
            ...seen,
            waiting: seen.waiting + lines.length,
            ...(seen.is === 'all sent' && { is: 'to send' as const }),
          },
          ...shownOf(planner.finished(step), { ...snapshot, facts, entries }),
          writing: false,
        });
        shown();
        return written;
      } catch (error) {
        return refusedFor(error);
      } finally {
        isFinishing = false;
        clearTimeout(slow);
        if (view.writing) change({ writing: false });
        catchUpSoon(false);
      }
    },
    askForLooks: (fact, all, by = who()) =>
      writing(async (to, kart) => (await rarely()).looks(to, kart, { fact, all, by })),
    wantSecond: second => writing(async (to, kart) => (await rarely()).second(to, kart, second)),
    async sign(signature, recorded, event = eventOf(view.snapshot)) {
      const signed = await writing((to, kart) => to.release(kart, { ...signature, ...event }), recorded);
      // What stands otherwise by now may do so because of the time alone.
      if (signed.kind === 'refused' && signed.problems.some(({ code }) => code === 'stands otherwise'))
        await catchUp(true);
      return signed;
    },
    async keepPhoto(photo) {
      try {
        const bytes = new Uint8Array(await photo.arrayBuffer());
        return { kind: 'kept', hash: await app.putFile(bytes, photo.type || 'application/octet-stream') };
      } catch (error) {
        return { kind: 'refused', problems: problemsOf(error) };
      }
    },
    ask: {
      own: () => app,
      async whole() {
        await read;
        return (await app.facts(name)).toReversed();
      },
      alike: async fact => (await rarely()).alike(app, name, fact),
      calendar: () => read.then(() => book.calendar(name)),
      book: async kart => ({ kart: await app.kart(kart), facts: await factsOf(kart) }),
      file: hash => book.file(hash),
      read: text => app.read(text),
      library: () => book.library(),
      gathered: async () => (await rarely()).gathered(app),
      problems: problemsOf,
    },
    book: {
      meet: () => sync.now(),
      export: () => app.exportBook(),
      giveAll: () => sync.giveAll(),
      seenSetBack: () => sync.seenSetBack(),
      beginAnew,
      letIn,
    },
  };
}

const eventOf = (snapshot: Snapshot | undefined): { event?: string } => {
  const event = snapshot?.fitness.event;
  return event === undefined || event === null ? {} : { event };
};
