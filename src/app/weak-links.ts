/** What would hurt us, and which second retentions to fit: the answer, and the facts that make one of them a job. */
import type { State } from '../book/index.ts';
import { readPriors } from '../life/index.ts';
import {
  additionsFor,
  type Hazard,
  looksOf,
  readRetentions,
  readRiskScheme,
  type Season,
  type SecondRetentions,
  seasonOf,
  secondRetentions,
  type WeakLinks,
  type WeakLinksAsk,
  weakLinks,
} from '../risk/index.ts';
import { eventOf, type ForEvent, given } from './asking.ts';
import { withSecond } from './kart-text.ts';
import { booksOf } from './life.ts';
import { Refusal, refuse } from './problem.ts';
import type { Queries } from './queries.ts';
import type { Recorded, Written } from './record.ts';
import { suggestion } from './words.ts';

export type WeakLinksQuestion = ForEvent & {
  /** What there is for second retentions: minutes, and money in the owner's own. Left out: as much as it takes. */
  readonly minutes?: number;
  readonly money?: number;
  /** Events of the season that codes go by; left out: those of the book in the year that is asked about, one at least. */
  readonly season?: number;
};
export type WeakLinksAnswer = Omit<WeakLinks, 'hazards'> & {
  readonly hazards: readonly (Hazard & { readonly season: Season | null })[];
  readonly seconds: SecondRetentions;
};
/** Texts of `data/retentions.yaml`, `data/priors.yaml` and `data/severity.yaml`; without the last there are no codes. */
export type RiskTexts = { readonly retentions: string; readonly priors: string; readonly severity?: string };

/** Throws `Refusal` for a kart, an event or a moment that the book does not hold, and for a budget below 0. */
export async function weakLinksOf(
  queries: Queries,
  name: string,
  { minutes, money, season, event: named, ...at }: WeakLinksQuestion,
  texts: RiskTexts,
): Promise<WeakLinksAnswer> {
  mustBeBudget({ minutes, money });
  mustBeSeason(season);
  const [kart, state, fit] = [
    await queries.kart(name, at),
    await queries.state(name, at),
    await queries.fitness(name, at),
  ];
  const event = eventOf(state, fit.at, named);
  const ask: WeakLinksAsk = {
    now: fit.at,
    ...given({ event }),
    retentions: readRetentions(texts.retentions),
    priors: readPriors(texts.priors),
    books: await booksOf(queries, at),
  };
  const once = { ...ask, looks: looksOf(kart, state, ask) };
  const links = weakLinks(kart, state, once);
  const scheme = texts.severity === undefined ? undefined : readRiskScheme(texts.severity);
  const events = season ?? Math.max(1, eventsOfYear(state, fit.at));
  return {
    ...links,
    hazards: links.hazards.map(hazard => ({ ...hazard, season: scheme ? seasonOf(scheme, hazard, events) : null })),
    seconds: secondRetentions(kart, state, once, given({ minutes, money })),
  };
}

const eventsOfYear = ({ events }: State, at: string): number =>
  Object.values(events).filter(({ from }) => from.slice(0, 4) === at.slice(0, 4)).length;

function mustBeSeason(events: number | undefined): void {
  if (events === undefined || (Number.isInteger(events) && events >= 1)) return;
  throw new Refusal([
    refuse(
      'wrong shape',
      'season',
      `Expected so many events of a season, a whole number of 1 or more, got ${events}.`,
      'Leave it out to take those of the book in this year.',
    ),
  ]);
}

function mustBeBudget(budget: { readonly minutes: number | undefined; readonly money: number | undefined }): void {
  const wrong = Object.entries(budget).filter(([, value]) => value !== undefined && !(value >= 0));
  if (wrong.length > 0)
    throw new Refusal(
      wrong.map(([name, value]) =>
        refuse(
          'wrong shape',
          name,
          `Expected ${name} of 0 or more, got ${value}.`,
          `Leave ${name} out, or give a number.`,
        ),
      ),
    );
}

export type SecondWanted = Written & { readonly joint: string; readonly retention: string };
type Book = Pick<Queries, 'kart' | 'facts'> & {
  record(kart: string, payloads: readonly unknown[], ask: Written): Promise<Recorded>;
};

/**
 * A second retention that is wanted: the kart file says from now on that the joint has it, and a look is asked for until
 * it is there: nothing has failed. Both are written at once or not at all. The check is then due and in the plan; making the joint passes it.
 */
export async function wantSecond(
  book: Book,
  name: string,
  { joint: id, retention, ...written }: SecondWanted,
  texts: RiskTexts,
): Promise<Recorded> {
  const kart = await book.kart(name);
  const joint = kart.joints[id];
  const part = joint && kart.parts[joint.part];
  if (!joint || !part)
    return refusedAs(
      'unknown joint',
      'joint',
      `Expected a joint of kart "${name}", got "${id}".`,
      `Use part/joint as weak-links names it.${suggestion(id, Object.keys(kart.joints))}`,
    );
  const names = additionsFor(joint, readRetentions(texts.retentions)).map(one => one.retention.name);
  if (!names.includes(retention))
    return refusedAs(
      'wrong shape',
      'retention',
      `Expected a second retention that goes with a ${joint.kind}, got "${retention}".`,
      names.length === 0
        ? 'None is usual there: look twice, and replace it in time.'
        : `There are: ${names.join(', ')}.${suggestion(retention, names)}`,
    );
  const [filed] = await book.facts(name, { kinds: ['kart filed'], last: 1 });
  if (filed?.fact.kind !== 'kart filed') throw new Error(`wantSecond: kart ${name} must have its file, got none`);
  const text = withSecond(filed.fact.text, {
    part: part.id,
    joint: joint.name,
    second: retention,
    accept: `${kart.items[joint.item]?.accept ?? joint.retention}; ${retention} in place`,
  });
  const why = `${retention} wanted as second retention, not fitted yet`;
  const due = { kind: 'look asked', items: [joint.item], why, second: retention };
  return book.record(name, [{ kind: 'kart filed', text }, due], written);
}

const refusedAs = (...problem: Parameters<typeof refuse>): Recorded => ({
  kind: 'refused',
  problems: [refuse(...problem)],
});
