/** Factors between units: worked from the exact definitions with rational numbers, and as printed in NIST SP 811 (2008), App. B.8. */
import { describe } from 'vitest';
import { type Dimension, inUnit, parseQuantity } from '../src/quantity/index.ts';
import rows from './rows/unit.json' with { type: 'json' };
import { type Row, runRows } from './rows.ts';

describe('unit: from one to another', () => {
  runRows(rows as readonly Row[], ({ written, to, dimension }) => {
    const parsed = parseQuantity(written, dimension as Dimension | undefined);
    if (!parsed.ok) throw new Error(parsed.remedy);
    return { value: inUnit(parsed.value.si, String(to), parsed.value.dimension) };
  });
});
