/** Everything a face may ask. Each answer is of one moment, `at`, now when left out, and changes nothing. */
import { compareFacts, type Fact, type FactKind, type State } from '../book/index.ts';
import type { ItemId, Kart } from '../kart/index.ts';
import { type Due, dueList, nextEvent, type Plan } from '../prep/index.ts';
import { type Fitness, fitness } from '../risk/index.ts';
import { type At, eventOf, type ForEvent, given } from './asking.ts';
import { type PlanAsk, planOf, type Replanned, replanned } from './plan.ts';
import type { Clock, KartReader } from './ports.ts';
import { Refusal } from './problem.ts';
import { Shelf, type Source, type Standing } from './shelf.ts';
import { pastMoment } from './when.ts';

export type KartLine = {
  readonly name: string;
  readonly invented: boolean;
  readonly facts: number;
  readonly minutes: number; // run-minutes
  readonly last: string | null; // when something last happened
  readonly event: string | null; // the next one
};
export type FactFilter = At & {
  readonly kinds?: readonly FactKind[];
  /** Only facts about this part, joint or item. */
  readonly about?: string;
  readonly from?: string;
  /** Only the newest so many. */
  readonly last?: number;
};
/** A fact as the record shows it: a struck one stays to be seen, with who struck it and why. */
export type FactLine = { readonly fact: Fact; readonly struck: { readonly by: string; readonly why: string } | null };
export type DueAnswer = { readonly kart: string; readonly event: string | null; readonly due: readonly Due[] };
export type FitAnswer = Fitness & { readonly event: string | null; readonly at: string };
/** Every answer at one moment, worked out from one fold. */
export type Answers = {
  readonly kart: Kart;
  readonly state: State;
  readonly due: DueAnswer;
  readonly plan: Plan;
  readonly fitness: FitAnswer;
  readonly facts: readonly FactLine[];
};

export type Queries = {
  /** Every kart of the book, by name. */
  karts(ask?: At): Promise<readonly KartLine[]>;
  kart(name: string, ask?: At): Promise<Kart>;
  state(name: string, ask?: At): Promise<State>;
  /** What is due now, or would lapse during the event. */
  due(name: string, ask?: ForEvent): Promise<DueAnswer>;
  plan(name: string, ask?: PlanAsk): Promise<Plan>;
  /** What the plan of now does otherwise than the plan of a past moment. */
  replan(name: string, since: string, ask?: PlanAsk): Promise<Replanned>;
  fitness(name: string, ask?: ForEvent): Promise<FitAnswer>;
  /** All of these at once, for a face that shows them side by side. */
  answers(name: string, ask?: ForEvent): Promise<Answers>;
  /** Facts in the order they happened. */
  facts(name: string, filter?: FactFilter): Promise<readonly FactLine[]>;
  /** The facts about one item, joint or part. */
  history(name: string, item: ItemId, ask?: At): Promise<readonly FactLine[]>;
};

export const createQueries = (deps: { source: Source; reader: KartReader; clock: Clock }): Queries =>
  queriesOn(new Shelf({ store: deps.source, reader: deps.reader }), deps.clock);

export function queriesOn(shelf: Shelf, clock: Clock): Queries {
  const standing = (name: string, ask?: At): Promise<Standing> => standingAt(shelf, clock, name, ask);
  const facts = async (name: string, filter: FactFilter = {}): Promise<readonly FactLine[]> => {
    await shelf.refresh();
    const { past } = momentOf(filter, clock);
    return factLines(await shelf.facts(name), await shelf.state(name, past), past, filter);
  };
  return {
    async karts(ask = {}) {
      await shelf.refresh();
      const moment = momentOf(ask, clock);
      const lines = await Promise.all(shelf.names().map(name => kartLine(shelf, name, moment)));
      return lines.filter(line => line !== undefined);
    },
    kart: async (name, ask) => (await standing(name, ask)).kart,
    state: async (name, ask) => (await standing(name, ask)).state,
    due: async (name, ask = {}) => dueOf(await standing(name, ask), ask),
    plan: async (name, ask = {}) => planOf(await standing(name, ask), await shelf.facts(name), ask),
    async replan(name, since, ask = {}) {
      const [before, after] = [await standing(name, { at: since }), await standing(name, ask)];
      const facts = await shelf.facts(name);
      return replanned(before.now, planOf(before, facts, ask), planOf(after, facts, ask));
    },
    fitness: async (name, ask = {}) => fitnessOf(await standing(name, ask), ask),
    async answers(name, ask = {}) {
      const at = await standing(name, ask);
      const { kart, state, past } = at;
      const known = await shelf.facts(name);
      return {
        kart,
        state,
        due: dueOf(at, ask),
        plan: planOf(at, known, ask),
        fitness: fitnessOf(at, ask),
        facts: factLines(known, state, past, {}),
      };
    },
    facts,
    history: (name, item, ask = {}) => facts(name, { ...ask, about: item }),
  };
}

/** The kart and its state at the moment asked about. */
export async function standingAt(shelf: Shelf, clock: Clock, name: string, ask: At = {}): Promise<Standing> {
  await shelf.refresh();
  const { now, past } = momentOf(ask, clock);
  return shelf.at(name, now, past);
}

const dueOf = ({ kart, state, now }: Standing, ask: ForEvent): DueAnswer => {
  const event = eventOf(state, now, ask.event);
  return { kart: kart.name, event: event?.event ?? null, due: dueList(kart, state, { now, ...given({ event }) }) };
};

const fitnessOf = ({ kart, state, now }: Standing, ask: ForEvent): FitAnswer => {
  const event = eventOf(state, now, ask.event);
  return { ...fitness(kart, state, { now, ...given({ event }) }), event: event?.event ?? null, at: now };
};

/** The moment of a question, and whether it was asked for: only then is hidden what was written after it. */
type Moment = { readonly now: string; readonly past?: string };

function momentOf(ask: At, clock: Clock): Moment {
  const read = pastMoment(ask.at, clock.now());
  if ('problem' in read) throw new Refusal([read.problem]);
  return ask.at === undefined ? { now: read.at } : { now: read.at, past: read.at };
}

async function kartLine(shelf: Shelf, name: string, { now, past }: Moment): Promise<KartLine | undefined> {
  const state = await shelf.state(name, past);
  if (state.count === 0) return undefined; // it was not in the book yet
  const kart = await shelf.filed(name, state);
  return {
    name,
    invented: kart?.invented ?? false,
    facts: state.count,
    minutes: state.minutes,
    last: state.last?.at ?? null,
    event: nextEvent(state, now)?.event ?? null,
  };
}

function factLines(
  facts: readonly Fact[],
  { struck }: State,
  past: string | undefined,
  filter: FactFilter,
): readonly FactLine[] {
  const lines = facts
    .filter(fact => past === undefined || (fact.at <= past && fact.recorded <= past))
    .filter(fact => filter.from === undefined || fact.at >= filter.from)
    .filter(fact => filter.kinds === undefined || filter.kinds.includes(fact.kind))
    .filter(fact => filter.about === undefined || isAbout(fact, filter.about))
    .toSorted(compareFacts)
    .map(fact => ({ fact, struck: struck[fact.id] ?? null }));
  return filter.last === undefined ? lines : lines.slice(-filter.last);
}

/** Does the fact name this part, joint or item, or one of the part's joints or items? */
function isAbout(fact: Fact, id: string): boolean {
  const named = [
    'part' in fact ? fact.part : undefined,
    'joint' in fact ? fact.joint : undefined,
    'item' in fact ? fact.item : undefined,
    ...('items' in fact ? fact.items : []),
  ];
  return named.some(name => name === id || name?.startsWith(`${id}/`));
}
