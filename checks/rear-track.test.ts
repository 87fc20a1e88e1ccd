/**
 * Rear axle arithmetic: common practice (55 in over the tyres, 5 3/4 in from bearing to hub) and a table worked outside
 * the project. Asked through the subject itself, as a person would, so that reading and refusing are checked with it.
 */
import { describe } from 'vitest';
import { subjects } from '../src/numbers/index.ts';
import rows from './rows/rear-track.json' with { type: 'json' };
import { type Given, type Numbers, number, type Row, runRows } from './rows.ts';

const subject = subjects.find(each => each.name === 'rear-track');

const WORDS = {
  B: 'bearing faces',
  L: 'hub length',
  e: 'tyre outboard',
  W: 'overall rear width',
  g: 'gap',
  axle: 'axle length',
  limit: 'width limit',
} as const;

function ask(given: Given): Extract<ReturnType<NonNullable<typeof subject>['ask']>, { kind: 'answer' }> {
  const input = Object.fromEntries(
    Object.entries(WORDS).flatMap(([symbol, word]) =>
      given[symbol] === undefined ? [] : [[word, `${given[symbol]} ${given.unit}`]],
    ),
  );
  const answer = subject?.ask(input);
  if (answer?.kind !== 'answer')
    throw new Error(`rear-track refused ${JSON.stringify(input)}: ${JSON.stringify(answer)}`);
  return answer;
}

const figure = (given: Given, name: string): number => {
  const size = given.unit === 'in' ? 0.0254 : 0.001;
  return (ask(given).figures[name]?.si ?? Number.NaN) / size;
};

/** The largest gap that is not rejected, found by halving; steps of 0.005 mm. */
function largestGap(given: Given): number {
  let [taken, rejected] = [100, 190];
  while (rejected - taken > 0.005) {
    const middle = (taken + rejected) / 2;
    if (ask({ ...given, g: middle }).notes.some(note => note.startsWith('Reject'))) rejected = middle;
    else taken = middle;
  }
  return taken;
}

function answer(given: Given): Numbers {
  if (given.mounted !== undefined)
    return { width: figure({ ...given, e: number(given, 'mounted') - number(given, 'inboard') }, 'width') };
  if (given.out !== undefined) {
    const gap = number(given, 'g');
    const { B = 0, L = 0, e = 0 } = given;
    const moved = subject?.ask({
      'bearing faces': `${B} mm`,
      'hub length': `${L} mm`,
      'tyre outboard': `${e} mm`,
      'gap left': `${gap + number(given, 'out')} mm`,
      'gap right': `${gap + (given.sides === 2 ? number(given, 'out') : 0)} mm`,
    });
    if (moved?.kind !== 'answer') throw new Error(`rear-track refused: ${JSON.stringify(moved)}`);
    return { change: (moved.figures.width?.si ?? Number.NaN) * 1000 - figure(given, 'width') };
  }
  if (given.longer !== undefined) {
    const longer = { ...given, L: number(given, 'L') + number(given, 'longer') };
    return { change: figure(longer, 'gap left') - figure(given, 'gap left') };
  }
  if (given.limit !== undefined) {
    const said = ask(given).notes.join(' ');
    return { over: Number(/over the limit by ([\d.]+) mm/.exec(said)?.[1]) };
  }
  if (given.g === undefined && given.W === undefined) return { largestGapTaken: largestGap(given) };
  return {
    gap: figure(given, 'gap left'),
    width: figure(given, 'width'),
    engaged: figure(given, 'engagement right'),
  };
}

describe('rear-track: gaps, widths, engagement', () => {
  runRows(rows as readonly Row[], answer);
});
