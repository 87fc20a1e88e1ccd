/** All that is known of how long one part lasts: its chance, the record, the guess, when to replace it, and what it costs. */
import { functionsNeeding, type Kart, type Part } from '../../kart/index.ts';
import { ended } from '../life.ts';
import { kaplanMeier, weibullPaper } from '../plots/index.ts';
import { lastingOf, momentsOf, type Posterior, type Spread, spreadOf } from '../posterior/index.ts';
import { kindRecords, lifeNow } from '../record/index.ts';
import { type Costs, type Replacement, type RunningCost, replaceThisPart, runningCost } from '../replacement/index.ts';
import { rootBetween } from '../root.ts';
import { ageAtShare } from '../weibull/index.ts';
import { type LifeAsk, lineOf } from './line.ts';
import type { Known, LifeSheet } from './model.ts';

/** @param ask `cap` over the one of the kart file: the chance over one event that is put up with */
export function lifeSheet(kart: Kart, part: Part, ask: LifeAsk & { readonly cap?: number }): LifeSheet {
  const record = kindRecords(kart, ask)(part.kind);
  const { lives, prior } = record;
  const { hours } = ask;
  const now = lifeNow(kart, record, part);
  const line = lineOf(kart, part, record, hours);
  const made = record.posterior();
  const posterior = made.kind === 'posterior' ? made : undefined;
  const priced = costsFor(kart, part);
  const running = now && !ended(now) ? now : undefined;
  const replacement =
    posterior && running && hours !== undefined
      ? replaceThisPart(posterior, {
          age: running.age,
          hours,
          ...(priced.costs && { costs: priced.costs }),
          ...(line.severity !== null && { severity: line.severity }),
          ...capOf(kart, line.severity, ask.cap),
          ...limitOf(kart, part),
        })
      : null;
  return {
    ...line,
    hours: hours ?? null,
    record: {
      lives: lives.length,
      failed: lives.filter(ended).length,
      karts: [...new Set(lives.map(life => life.kart))],
      facts: [...new Set(lives.flatMap(life => life.facts))],
    },
    guess: prior?.source ?? null,
    survival: kaplanMeier(lives),
    median: posterior ? goneBy(posterior, 0.5) : null,
    tenth: posterior ? goneBy(posterior, 0.1) : null,
    shape: posterior ? shapeOf(posterior) : null,
    paper: posterior ? weibullPaper(lives, posterior, agesOf(posterior)) : null,
    replacement,
    cost: posterior && priced.costs ? costOf(posterior, priced.costs, replacement, hours, priced.counts) : null,
    lacking: [
      ...priced.lacking,
      ...(line.severity !== null && line.severity <= 2 && capOf(kart, line.severity, ask.cap).cap === undefined
        ? ['Its failure can hurt, and no chance is said that you put up with: "accepted chance: 1 %" under costs.']
        : []),
      ...(prior?.scale === undefined
        ? [`Nobody said how long it lasts: kartwright life guess "${part.kind}" --half HOURS --tenth HOURS.`]
        : []),
    ],
  };
}

/** The age by which a share of new ones is gone, over all lives that fit. */
function goneBy(posterior: Posterior, share: number): Known {
  const lasting = lastingOf(posterior);
  const { low, middle, high } = spreadOf(posterior, life => ageAtShare(life, share));
  let far = middle;
  while (1 - lasting(far) < share && far < 1e9 * middle) far *= 2;
  return { mean: rootBetween(age => 1 - lasting(age) - share, 0, far), low, high };
}

/** 5, 50 and 95 % points of a lognormal. */
const around = (ln: number, spread: number): Spread => ({
  low: Math.exp(ln - 1.645 * spread),
  middle: Math.exp(ln),
  high: Math.exp(ln + 1.645 * spread),
});

function shapeOf(posterior: Posterior): { readonly guessed: Spread; readonly now: Spread } {
  const { meanLnShape, sdLnShape } = momentsOf(posterior);
  const { median, spread } = posterior.prior.shape;
  return { guessed: around(Math.log(median), spread), now: around(meanLnShape, sdLnShape) };
}

/** From where next to none are gone to where next to all are. */
function agesOf(posterior: Posterior): { readonly from: number; readonly to: number } {
  const at = (share: number): number => spreadOf(posterior, life => ageAtShare(life, share)).middle;
  return { from: at(0.005), to: at(0.98) };
}

type Priced = { readonly costs: Costs | undefined; readonly counts: string; readonly lacking: readonly string[] };

/** A failure costs the part, and the weekend where it ends one. Unless both are known nothing is reckoned. */
function costsFor(kart: Kart, part: Part): Priced {
  const ends = functionsNeeding(kart, part.id).length > 0;
  const price = kart.costs?.spares[part.kind]?.price;
  const lost = kart.costs?.lostWeekend;
  const lacking = [
    ...(price === undefined ? [`Its price is not known: "spares: { ${part.kind}: { price: … } }" under costs.`] : []),
    ...(ends && lost === undefined ? ['What a lost weekend costs is not known: "lost weekend: …" under costs.'] : []),
  ];
  if (!(price !== undefined && price > 0 && (lost !== undefined || !ends)))
    return { costs: undefined, counts: '', lacking };
  return {
    costs: { planned: price, failure: price + (ends ? (lost ?? 0) : 0) },
    counts: ends ? `${price} for the part, ${lost} more where its failure ends a weekend` : `${price} for the part`,
    lacking,
  };
}

function capOf(kart: Kart, severity: number | null, asked: number | undefined): { readonly cap?: number } {
  if (asked !== undefined) return { cap: asked };
  const accepted = kart.costs?.acceptedChance;
  return accepted !== undefined && severity !== null && severity <= 2 ? { cap: accepted } : {};
}

/** Hours at which an item of the part asks for another one. */
function limitOf(kart: Kart, part: Part): { readonly limit?: number } {
  const limits = Object.values(kart.items).flatMap(item =>
    item.part === part.id && item.action === 'replace'
      ? item.when.flatMap(lapse => (lapse.on === 'hours' ? [lapse.limit] : []))
      : [],
  );
  return limits.length > 0 ? { limit: Math.min(...limits) } : {};
}

function costOf(
  posterior: Posterior,
  costs: Costs,
  replacement: Replacement | null,
  hours: number | undefined,
  counts: string,
): LifeSheet['cost'] {
  const age = replacement?.age !== undefined && replacement.age > 0 ? replacement.age : undefined;
  const perHour = runningCost(posterior, costs, age);
  const times = (by: number): RunningCost => ({
    mean: by * perHour.mean,
    low: by * perHour.low,
    high: by * perHour.high,
  });
  const when = age === undefined ? 'run until it fails' : `replaced at ${Number(age.toPrecision(3))} h`;
  return { perHour, perEvent: hours === undefined ? null : times(hours), counts: `${counts}; ${when}` };
}
