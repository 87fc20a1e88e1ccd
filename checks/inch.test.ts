/** Exact inch arithmetic, 1 in = 25.4 mm (1959), worked with rational numbers outside the project. */
import { describe } from 'vitest';
import { inchFraction } from '../src/quantity/index.ts';
import rows from './rows/inch.json' with { type: 'json' };
import { number, type Row, runRows } from './rows.ts';

describe('inch: the nearest mark of a tape', () => {
  runRows(rows as readonly Row[], given => {
    const { whole, num, den, errorMetres } = inchFraction(number(given, 'mm') / 1000, number(given, 'den'));
    // The rows count in the tape's own divisions, the project in lowest terms.
    return { whole, num: (num * number(given, 'den')) / den, errorMm: errorMetres * 1000 };
  });
});
