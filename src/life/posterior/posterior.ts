/**
 * Record and guess weighed together: every Weibull life with its weight, and what follows from all of them.
 * Predictions are means over all lives, never those of the most likely one, which understates risk with few failures.
 */
import { ended, type Life } from '../life.ts';
import { type Evidence, evidenceOf, type Weibull } from '../weibull/index.ts';
import { type Lattice, latticeOf } from './density.ts';
import type { Prior } from './prior.ts';

/** How much of it is the guess: alone, mostly, or weighed down by the record. */
export type Basis = 'starting guess' | 'mostly starting guess' | 'own record';

export type Posterior = Lattice & {
  readonly kind: 'posterior';
  readonly prior: Prior;
  readonly units: number;
  readonly failures: number;
  readonly basis: Basis;
};
export type NotKnown = { readonly kind: 'unknown'; readonly why: string };

/** The record still says next to nothing of the shape: common practice. */
const HARDLY_NARROWED = 0.9;

/** From about so many failures on a record tells its shape itself. Common practice. */
const ENOUGH = 10;
/** Any shape from 0.4 to 8, the ends of the classes in data/priors.yaml, taken as 5 and 95 % points. */
const OPEN: Prior = { shape: { median: 1.8, spread: 0.91 }, source: 'none, any shape from 0.4 to 8' };

/**
 * @param prior what is guessed; undefined where nobody guessed
 * @param lives the record, the part asked about among them at the age it has now
 * @returns unknown where nothing bears a probability: no guess of the shape and few failures, or none of the scale and no failure
 */
export function posteriorOf(prior: Prior | undefined, lives: readonly Life[]): Posterior | NotKnown {
  const of = evidenceOf(lives);
  const failures = lives.filter(ended).length;
  if (prior === undefined && failures >= ENOUGH) return posteriorOf(OPEN, lives);
  if (prior === undefined)
    return notKnown(
      `Nobody guessed how these fail, and ${failures} on record that failed are too few to tell: it takes ${ENOUGH}.`,
    );
  mustBeGuess('shape', prior.shape);
  if (prior.scale) mustBeGuess('scale', prior.scale);
  else if (failures === 0)
    return notKnown('Nobody said how long these last and none has failed: there is nothing to reckon a chance from.');
  const lattice = latticeOf(prior, of);
  return { kind: 'posterior', prior, units: of.units, failures, basis: basisOf(prior, of, lattice), ...lattice };
}

const notKnown = (why: string): NotKnown => ({ kind: 'unknown', why });

function mustBeGuess(what: string, { median, spread }: Prior['shape']): void {
  if (!(median > 0 && spread > 0 && Number.isFinite(median) && Number.isFinite(spread)))
    throw new Error(`posteriorOf: ${what} must have median and spread above 0, got ${median} and ${spread}`);
}

function basisOf(prior: Prior, of: Evidence, lattice: Lattice): Basis {
  if (of.units === 0) return 'starting guess';
  return momentsOf(lattice).sdLnShape > HARDLY_NARROWED * prior.shape.spread ? 'mostly starting guess' : 'own record';
}

/** The mean of something over all lives. */
export function expected({ shapes, scales, weights }: Lattice, of: (life: Weibull) => number): number {
  let sum = 0;
  const columns = scales.length;
  const scale = scales.map(Math.exp);
  for (let row = 0; row < shapes.length; row++) {
    const shape = Math.exp(shapes[row] as number);
    for (let column = 0; column < columns; column++) {
      const weight = weights[row * columns + column] as number;
      if (weight > 0) sum += weight * of({ shape, scale: scale[column] as number });
    }
  }
  return sum;
}

/**
 * The share of new ones that last to an age, over all lives; with `from`, of those that had reached that age.
 * Made once, asked often: one exponential a life.
 */
export function lastingOf({ shapes, scales, weights }: Lattice): (age: number, from?: number) => number {
  const columns = scales.length;
  const rates = weights.map((_, n) =>
    Math.exp(-Math.exp(shapes[Math.floor(n / columns)] as number) * (scales[n % columns] as number)),
  );
  return (age, from = 0) => {
    let sum = 0;
    for (let row = 0; row < shapes.length; row++) {
      const shape = Math.exp(shapes[row] as number);
      const grown = age ** shape - from ** shape;
      for (let n = row * columns; n < (row + 1) * columns; n++) {
        const weight = weights[n] as number;
        if (weight > 1e-20) sum += weight * Math.exp(-grown * (rates[n] as number));
      }
    }
    return sum;
  };
}

export type Moments = {
  readonly meanShape: number;
  readonly meanLnShape: number;
  readonly sdLnShape: number;
  readonly meanLnScale: number;
  readonly sdLnScale: number;
  readonly correlation: number; // of ln shape and ln scale
};

export function momentsOf({ shapes, scales, weights }: Lattice): Moments {
  let [a, b, m, bb, mm, bm] = [0, 0, 0, 0, 0, 0];
  const [b0, m0] = [shapes[shapes.length >> 1] as number, scales[scales.length >> 1] as number];
  for (let n = 0; n < weights.length; n++) {
    const weight = weights[n] as number;
    const lnShape = shapes[Math.floor(n / scales.length)] as number;
    const [x, y] = [lnShape - b0, (scales[n % scales.length] as number) - m0];
    a += weight * Math.exp(lnShape);
    b += weight * x;
    m += weight * y;
    bb += weight * x * x;
    mm += weight * y * y;
    bm += weight * x * y;
  }
  const [sdLnShape, sdLnScale] = [Math.sqrt(bb - b * b), Math.sqrt(mm - m * m)];
  return {
    meanShape: a,
    meanLnShape: b0 + b,
    sdLnShape,
    meanLnScale: m0 + m,
    sdLnScale,
    correlation: (bm - b * m) / (sdLnShape * sdLnScale),
  };
}
