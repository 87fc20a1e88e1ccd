/** Toe, squareness and string in numbers worked outside the project with plane trigonometry and coordinates. */
import { describe } from 'vitest';
import { fourLengths, stringBias, toeAngle } from '../src/numbers/index.ts';
import rows from './rows/alignment.json' with { type: 'json' };
import { type Given, type Numbers, number, type Row, runRows } from './rows.ts';

const DEGREE = Math.PI / 180;

function answer(given: Given, { id }: Row): Numbers {
  if (id.startsWith('toe')) {
    const angle = toeAngle(number(given, 'toeTotal_mm'), number(given, 'D_mm')) / DEGREE;
    return { perWheel_deg: angle, total_deg: 2 * angle };
  }
  if (id.startsWith('string')) return { bias_deg: stringBias(number(given, 'off'), number(given, 'span')) / DEGREE };
  const place = {
    wheelbase: number(given, 'L'),
    yaw: number(given, 'yaw_deg') * DEGREE,
    offset: number(given, 'y0_mm'),
  };
  const lengths = fourLengths(place, { kingpins: number(given, 'wk'), axle: number(given, 'wr') });
  return {
    D_FLRR: lengths.diagonalFromLeft,
    D_FRRL: lengths.diagonalFromRight,
    side_L: lengths.sideLeft,
    side_R: lengths.sideRight,
  };
}

describe('alignment: toe, squareness, string', () => {
  runRows(rows as readonly Row[], answer);
});
