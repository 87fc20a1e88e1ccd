/**
 * JCGM 100:2008 (GUM) and JCGM 106:2012, ILAC-G8:09/2019, a worked stack-up and numbers computed outside the project.
 * How each value was obtained stands in its row; the full texts of both guides were not at hand, so that what is quoted
 * from them is marked by who quotes it, or `memory`.
 */
import { describe } from 'vitest';
import {
  acceptance,
  chanceInside,
  combine,
  type Link,
  normalBelow,
  rootSumSquare,
  scoreFor,
  sum,
  tapeLinks,
  worstCase,
} from '../src/numbers/index.ts';
import rows from './rows/tolerance.json' with { type: 'json' };
import { type Given, list, type Numbers, number, type Row, runRows } from './rows.ts';

const chain = (given: Given): Numbers => {
  const links: readonly Link[] =
    typeof given.n === 'number'
      ? Array.from({ length: given.n }, () => ({ times: 1, size: 0, half: number(given, 'tol') }))
      : list(given, 'tol').map((half, n) => ({
          times: list(given, 'coef')[n] ?? Number.NaN,
          size: list(given, 'nominal')[n] ?? Number.NaN,
          half,
        }));
  return { nominal: sum(links), wc: worstCase(links), rss: rootSumSquare(links) };
};

const gum = (given: Given): Numbers => {
  const links = list(given, 'u_nm').map(
    (standard, n): Link => ({ times: 1, size: 0, standard, freedom: list(given, 'dof')[n] ?? Number.NaN }),
  );
  const { u, freedom } = combine(links);
  return { uc_nm: u, uc_unrounded: u, dof: freedom };
};

/** Conformance of a reading; with several chances wanted, the score each needs. */
const conformance = (given: Given): Numbers => {
  if (Array.isArray(given.pc)) return { z: list(given, 'pc').map(p => scoreFor(p)) };
  const limits = { ...(given.TL === undefined ? {} : { min: number(given, 'TL') }), max: number(given, 'TU') };
  return { pc: chanceInside(number(given, 'y'), number(given, 'u'), limits) };
};

/** Above which reading a limit is broken beyond doubt: the guard band lies outside, so it is a lower limit for rejection. */
const speed = (given: Given): Numbers => {
  const z = scoreFor(number(given, 'p'));
  // u grows with the reading v: v - z urel v = limit
  const reading = number(given, 'limit') / (1 - z * number(given, 'urel'));
  const guarded = acceptance({ min: number(given, 'limit') }, number(given, 'urel') * reading, number(given, 'p'));
  return { acceptLimit: guarded.min ?? Number.NaN };
};

const budget = (given: Given): Numbers => {
  const links = tapeLinks({
    width: number(given, 'y') / 1000,
    scale: number(given, 'scaleHalf') / 1000,
    reading: number(given, 'readHalf') / 1000,
    spread: number(given, 's') / 1000,
    readings: number(given, 'n'),
    temperature: number(given, 'dTHalf'),
  });
  const { u } = combine(links);
  const most = acceptance({ max: 1.4 }, u, 0.95).max ?? Number.NaN;
  return { uc_mm: u * 1000, pc_1400: chanceInside(sum(links), u, { max: 1.4 }), accept95_mm: most * 1000 };
};

/** A reading just accepted with a guard band of k u: the chance that it is over the limit all the same. */
const guard = (given: Given): Numbers => ({ pfa: 1 - chanceInside(-number(given, 'k'), 1, { max: 0 }) });

const normal = (given: Given): Numbers => ({ p: list(given, 'x').map(normalBelow) });

const ANSWERS: readonly (readonly [RegExp, (given: Given) => Numbers])[] = [
  [/^chain\.track/, budget],
  [/^chain/, chain],
  [/^gum/, gum],
  [/^jcgm106\.speed/, speed],
  [/^jcgm106/, conformance],
  [/^guard/, guard],
  [/^normal/, normal],
];

describe('tolerance: chains, uncertainty, conformance', () => {
  runRows(rows as readonly Row[], (given, { id }) => {
    const answer = ANSWERS.find(([pattern]) => pattern.test(id))?.[1];
    if (answer === undefined) throw new Error(`no answer for ${id}: add its family to ANSWERS`);
    return answer(given);
  });
});
