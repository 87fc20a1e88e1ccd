/**
 * Which main jet for the air of now, from one that was right: a band, and the jet to fit.
 *
 *   by theory J1 = J0 q, q area ratio for numbers by flow, √q for numbers by bore;  by the paddock rule J1 = J0 ρ1/ρ0;
 *   learned J1 = J0 (ρ1/ρ0)^k, k within its interval;  each times what fuel, oil and ethanol ask for
 * J number of the jet, ρ density [kg/m³], k exponent [1]. The wanted jet is the richer end of the band; fitted is the next
 * size up in the box. Leaner: one size at most, never under the smallest jet logged as good unless told to, and only where
 * the doubt of the air does not reach up to the next size. Common practice: jet-caution.
 * Valid: full throttle, same engine, pipe, plug and needle. What is not known gives no jet at all.
 */
import type { Learned } from './learn.ts';
import { areaRatio, boreRatio, type JetAir, paddockRatio } from './theory.ts';

export type Numbering = 'diameter' | 'flow' | 'not known';

export type JetQuestion = {
  readonly jet: number; // that was right then
  readonly numbering: Numbering;
  readonly was: JetAir;
  readonly now: JetAir;
  /** Standard uncertainty of density now over then [1]; 0 when not given. */
  readonly doubt?: number;
  /** Area the jet needs for what changed besides air, now over then [1]; 1 when not given. */
  readonly need?: number;
  readonly box?: readonly number[];
  /** Smallest jet logged as good; the jet itself where nothing smaller was logged. */
  readonly smallestGood?: number;
  /** Somebody decided to go below it. */
  readonly below?: boolean;
  readonly learned?: Learned;
};

export type Direction = 'richer' | 'keep' | 'leaner';
export type JetAdvice =
  | { readonly kind: 'fit'; readonly jet: number; readonly direction: Direction; readonly heldBy?: Held }
  | { readonly kind: 'none rich enough'; readonly largest: number }
  /** No box was given: this size or the next above it. */
  | { readonly kind: 'at least'; readonly number: number; readonly direction: Direction; readonly heldBy?: Held };
/** Why the step to a leaner jet is smaller than the band allows. */
export type Held = 'one size at a time' | 'smallest good jet' | 'doubt of the air';

export type JetBand = {
  readonly kind: 'band';
  readonly low: number; // leanest of the band
  readonly high: number; // richest: what is wanted
  readonly theory: readonly [number, number];
  readonly paddock: number;
  readonly learned?: readonly [number, number];
  /** The log has not seen such air: band and log together. */
  readonly beyondLog: boolean;
  /** Mixture with the jet as it is, by theory, over what it was [1]: under 1 leaner, the seizure side. */
  readonly mixture: number;
  readonly ratio: number; // density now over then [1]
  readonly advice: JetAdvice;
};
export type NoBand = { readonly kind: 'not known'; readonly why: string };

export function jetBand(asked: JetQuestion): JetBand | NoBand {
  const { jet, was, now, need = 1, doubt = 0 } = asked;
  const sizes = [jet, was.density, now.density, need];
  const dry = [was.dry ?? 1, now.dry ?? 1];
  if (![...sizes, ...dry].every(size => size > 0 && Number.isFinite(size)))
    return { kind: 'not known', why: 'jet or air is not known: keep the richer jet until it is' };
  if (!(doubt >= 0 && Number.isFinite(doubt)))
    return { kind: 'not known', why: 'how well the air is known is not known' };
  const ratio = now.density / was.density;
  const area = areaRatio(was, now) * need;
  const byNumber: readonly number[] = {
    diameter: [boreRatio(area)],
    flow: [area],
    'not known': [boreRatio(area), area],
  }[asked.numbering];
  const theory = ends(byNumber.map(each => jet * each));
  const extra = ends(
    asked.numbering === 'flow' ? [need] : asked.numbering === 'diameter' ? [Math.sqrt(need)] : [need, Math.sqrt(need)],
  );
  const paddocks = extra.map(more => jet * paddockRatio(ratio) * more);
  const paddock = Math.max(...paddocks);
  const log = fromLog(asked, extra);
  const rules = [...theory, ...paddocks];
  const [low, high] = ends(log === undefined ? rules : log.beyond ? [...rules, ...log.span] : log.span);
  const found = { low, high, theory, paddock, ratio, mixture: 1 / area, beyondLog: log?.beyond ?? false };
  return {
    kind: 'band',
    ...found,
    ...(log ? { learned: log.span } : {}),
    advice: adviceFor(asked, high, high * (1 + 2 * doubt)),
  };
}

const ends = (values: readonly number[]): readonly [number, number] => [Math.min(...values), Math.max(...values)];

/** How far beyond what it has seen the log is still trusted [1]; common practice. */
const BEYOND = 0.02;

function fromLog({ jet, was, now, learned }: JetQuestion, extra: readonly number[]) {
  if (learned === undefined) return undefined;
  const dry = learned.by === 'dry air';
  const [before, after] = dry ? [was.dry, now.dry] : [was.density, now.density];
  if (before === undefined || after === undefined) return undefined; // a log of dry air says nothing of air known only whole
  const span = ends([learned.low, learned.high].flatMap(k => extra.map(more => jet * (after / before) ** k * more)));
  const [least, most] = learned.seen;
  return { span, beyond: after < least * (1 - BEYOND) || after > most * (1 + BEYOND) };
}

/** `wanted` richest of the band; `surely` the same at the rich end of the doubt of the air. */
function adviceFor(asked: JetQuestion, wanted: number, surely: number): JetAdvice {
  const { jet, box = [] } = asked;
  if (box.length === 0) return withoutBox(asked, wanted, surely);
  const sizes = [...new Set([...box, jet])].toSorted((a, b) => a - b);
  const next = (number: number): number | undefined => sizes.find(size => size >= number - LAST_BIT);
  if (wanted > jet * (1 + slack(asked)) + LAST_BIT) {
    const up = next(wanted);
    if (up === undefined) return { kind: 'none rich enough', largest: sizes.at(-1) ?? jet };
    return { kind: 'fit', jet: up, direction: up > jet ? 'richer' : 'keep' };
  }
  const down = next(wanted) ?? jet;
  if (down >= jet) return { kind: 'fit', jet, direction: 'keep' };
  const sure = Math.min(next(surely) ?? jet, jet);
  const oneDown = sizes[sizes.indexOf(jet) - 1] ?? jet;
  const good = asked.below ? 0 : Math.min(asked.smallestGood ?? jet, jet);
  const fitted = Math.max(sure, oneDown, next(good) ?? jet);
  return {
    kind: 'fit',
    jet: fitted,
    direction: fitted < jet ? 'leaner' : 'keep',
    ...heldBy({ down, fitted, good, oneDown }),
  };
}

function heldBy(p: { down: number; fitted: number; good: number; oneDown: number }): { readonly heldBy?: Held } {
  if (p.fitted <= p.down) return {};
  if (p.good > p.down && p.fitted >= p.good && p.good >= p.oneDown) return { heldBy: 'smallest good jet' };
  return { heldBy: p.fitted === p.oneDown ? 'one size at a time' : 'doubt of the air' };
}

function withoutBox(asked: JetQuestion, wanted: number, surely: number): JetAdvice {
  const { jet, smallestGood = jet, below } = asked;
  if (wanted > jet * (1 + slack(asked)) + LAST_BIT) return { kind: 'at least', number: wanted, direction: 'richer' };
  if (wanted >= jet) return { kind: 'at least', number: jet, direction: 'keep' };
  const good = below ? 0 : Math.min(smallestGood, jet);
  const number = Math.min(Math.max(surely, good), jet);
  const held: Held | undefined =
    number <= wanted ? undefined : number === good ? 'smallest good jet' : 'doubt of the air';
  return { kind: 'at least', number, direction: number < jet ? 'leaner' : 'keep', ...(held ? { heldBy: held } : {}) };
}

/** A change no instrument shows is none, yet never more than a hundredth [1]. */
const slack = ({ doubt = 0 }: JetQuestion): number => Math.min(2 * doubt, 0.01);

/** Two numbers that are the same but for the last bits. */
const LAST_BIT = 1e-9;
