/**
 * Chain: length and distance as a textbook's example is quoted in a paper, sizes from published tables, wear from two
 * makers' answers; the rest worked outside the project. How each value was obtained stands in its row.
 */
import { describe } from 'vitest';
import {
  CHAIN_SIZES,
  CHAINS,
  centreFor,
  chainLinks,
  chainPull,
  chainSpeed,
  chainWear,
  lengthOnCircles,
  linksAround,
  linksAroundShort,
  ownPull,
  pitchCircle,
  SLACK_SHARES,
  stretchLimit,
  wrapOf,
} from '../src/numbers/index.ts';
import rows from './rows/chain.json' with { type: 'json' };
import { type Given, type Numbers, number, type Row, runRows } from './rows.ts';

const teeth = (given: Given) => ({ front: number(given, 'z1'), rear: number(given, 'z2') });
const metres = (given: Given, name: string): number => number(given, name) / 1000;

function inPitches(given: Given): Numbers {
  const [round, centre] = [teeth(given), number(given, 'C_pitches')];
  if ('constant' in given) return { L: linksAroundShort(round, centre) };
  // The printed distance for 114 links is held here too: C 35.6.
  const back = centreFor(round, 114);
  if (Math.abs(back - 35.6) > 0.05) throw new Error(`114 links: printed 35.6 pitches, got ${back}`);
  return { L: linksAround(round, centre), L_exact_pitch_circle: lengthOnCircles(round, 1, centre) };
}

function around(given: Given): Numbers {
  const [round, pitch, centre] = [teeth(given), metres(given, 'pitch_mm'), metres(given, 'centre_mm')];
  const { exact, choices } = chainLinks({ round, pitch, centre });
  const [best] = choices;
  return {
    L: exact,
    L_exact_pitch_circle: lengthOnCircles(round, pitch, centre),
    even_links: best?.links ?? Number.NaN,
    centre_at_even_mm: (best?.centre ?? Number.NaN) * 1000,
    move_needed_mm: (best?.move ?? Number.NaN) * 1000,
  };
}

function worn(given: Given): Numbers {
  const [pitches, pitch] = [number(given, 'pitches'), metres(given, 'pitch_mm')];
  /** The length that is read as so much stretch: found by halving, through the function that reads it. */
  const lengthAt = (stretch: number): number => {
    let [low, high] = [0, 2 * pitches * pitch];
    for (let n = 0; n < 100; n++) {
      const length = (low + high) / 2;
      if (chainWear({ length, pitches, pitch, largest: 25 }).stretch < stretch) low = length;
      else high = length;
    }
    return high * 1000;
  };
  return { new_mm: lengthAt(0), at_1pct_mm: lengthAt(0.01), at_1p5pct_mm: lengthAt(0.015), at_3pct_mm: lengthAt(0.03) };
}

const wrap = (given: Given): Numbers => ({
  wrap_deg: (wrapOf(teeth(given), metres(given, 'pitch_mm'), metres(given, 'centre_mm')) * 180) / Math.PI,
});

function slack(given: Given): Numbers {
  const [low, high, more, most] = SLACK_SHARES.flat().map(share => share * number(given, 'span_mm'));
  return { low_mm: low ?? 0, high_mm: high ?? 0, pct4_mm: more ?? 0, pct6_mm: most ?? 0 };
}

function pull(given: Given): Numbers {
  const rotation = (number(given, 'rpm_front') * Math.PI) / 30;
  const speed = chainSpeed({ rotation, teeth: number(given, 'z'), pitch: metres(given, 'pitch_mm') });
  return {
    v_ms: speed,
    F_N: chainPull(number(given, 'kW') * 1000, speed),
    F_centrifugal_N: ownPull(number(given, 'kg_per_m'), speed),
  };
}

function size(given: Given): Numbers {
  const name = CHAINS.find(each => each === String(given.size).replace('ANSI', ''));
  if (name === undefined) throw new Error(`no chain is called ${String(given.size)}`);
  const { pitch, roller, inside } = CHAIN_SIZES[name];
  return { pitch_mm: pitch * 1000, roller_mm: roller * 1000, inner_width_mm: inside * 1000 };
}

const ANSWERS: readonly (readonly [RegExp, (given: Given) => Numbers])[] = [
  [/^chain\.r\d/, inPitches],
  [/^chain\.c\d/, around],
  [/^chain\.pd/, given => ({ pd_mm: pitchCircle(metres(given, 'pitch_mm'), number(given, 'z')) * 1000 })],
  [/^chain\.wear/, given => ({ limit_pct: stretchLimit(number(given, 'z_large')) * 100 })],
  [/^chain\.meas/, worn],
  [/^chain\.wrap/, wrap],
  [/^chain\.sag/, slack],
  [/^chain\.force/, pull],
  [/^chain\.dim/, size],
];

describe('chain: links, distance, wear, slack, pull, sizes', () => {
  runRows(rows as unknown as readonly Row[], (given, { id }) => {
    const answer = ANSWERS.find(([pattern]) => pattern.test(id))?.[1];
    if (answer === undefined) throw new Error(`no answer for ${id}: add its family to ANSWERS`);
    return answer(given);
  });
});
