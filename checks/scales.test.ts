/**
 * Scales: shares, centre of gravity, its height from a raised axle, ballast and the least mass. The rows were worked
 * outside the project with numpy and scipy (weighted centroid, forward simulation with a rotation matrix, least-energy
 * plane fit, HiGHS for the linear programme); no numeric textbook example could be had. The warning about unequal radii
 * is from the abstract of SAE 2004-01-1076. Asked through the functions that the subject itself uses.
 */
import { describe } from 'vitest';
import {
  centre,
  cgHeight,
  cgHeightEqualWheels,
  leastBallast,
  leastReading,
  response,
  shares,
  splitBallast,
} from '../src/numbers/index.ts';
import rows from './rows/scales.json' with { type: 'json' };
import { type Given, list, type Numbers, number, type Row, runRows } from './rows.ts';

const stance = (given: Given) => ({
  wheelbase: number(given, 'L'),
  frontTrack: number(given, 'tF'),
  rearTrack: number(given, 'tR'),
});

function percent(given: Given): Numbers {
  const [frontLeft = Number.NaN, frontRight = Number.NaN, rearLeft = Number.NaN, rearRight = Number.NaN] = list(
    given,
    'kg',
  );
  const readings = { frontLeft, frontRight, rearLeft, rearRight };
  const { front, left, cross } = shares(readings);
  const at = centre(readings, stance(given));
  return {
    total: frontLeft + frontRight + rearLeft + rearRight,
    front: front * 100,
    left: left * 100,
    cross_FR_RL: cross * 100,
    xFromRear_m: at.forward,
    yLeft_m: at.left,
  };
}

const raised = (given: Given) => ({
  mass: number(given, 'W_kg'),
  wheelbase: number(given, 'L_m'),
  frontLevel: number(given, 'WF0_kg'),
  frontRaised: number(given, 'WF1_kg'),
  frontRadius: number(given, 'rF_m'),
  rearRadius: number(given, 'rR_m'),
  rise: number(given, 'H_m'),
});

function height(given: Given): Numbers {
  const asked = raised(given);
  const { height, tilt } = cgHeight(asked);
  return { h_m: height, tilt_deg: (tilt * 180) / Math.PI, h_commonFormula_m: cgHeightEqualWheels(asked) };
}

function sensitivity(given: Given): Numbers {
  const asked = raised(given);
  const more = { ...asked, frontRaised: asked.frontRaised + number(given, 'more_kg') };
  return { dh_mm: 1000 * (cgHeight(more).height - cgHeight(asked).height) };
}

function added(given: Given): Numbers {
  const place = { forward: number(given, 'x'), left: number(given, 'y') };
  const { frontLeft, frontRight, rearLeft, rearRight } = response(number(given, 'm'), place, stance(given));
  return { dkg: [frontLeft, frontRight, rearLeft, rearRight] };
}

function split(given: Given): Numbers {
  const [m1, m2] = splitBallast(
    { mass: number(given, 'base_kg'), at: number(given, 'xBase') },
    number(given, 'm'),
    [number(given, 'x1'), number(given, 'x2')],
    number(given, 'target') * number(given, 'L'),
  );
  return { m1, m2 };
}

function least(given: Given): Numbers {
  const target = number(given, 'front') * number(given, 'L');
  const side = number(given, 'yTarget');
  const { masses, total } = leastBallast({
    mass: number(given, 'base_kg'),
    least: number(given, 'minTotal'),
    most: list(given, 'max'),
    aims: [
      { now: number(given, 'x'), at: list(given, 'places_x'), low: target, high: target },
      { now: number(given, 'y'), at: list(given, 'places_y'), low: side, high: side },
    ],
  });
  return { m: masses, totalBallast: total };
}

const decision = (given: Given): Numbers => ({
  acceptAt_kg: leastReading(number(given, 'limit'), number(given, 'u'), number(given, 'p')),
});

const ANSWERS: Readonly<Record<string, (given: Given) => Numbers>> = {
  'cw.percent': percent,
  'cgh.1': height,
  'cgh.2': height,
  'cgh.3': height,
  'cgh.sensitivity': sensitivity,
  'ballast.response': added,
  'ballast.two': split,
  'ballast.lp': least,
  'weight.decision': decision,
};

describe('scales: shares, centre of gravity, ballast, least mass', () => {
  runRows(rows as unknown as readonly Row[], (given, { id }) => {
    const answer = ANSWERS[id];
    if (answer === undefined) throw new Error(`no answer for ${id}: add it to ANSWERS`);
    return answer(given);
  });
});
