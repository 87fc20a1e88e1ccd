/**
 * Retention: ISO 1234 (as reprinted), twists of safety wire (NASM33540 as quoted), FAA AC 43.13-1B and US Army rules for
 * wiring, and the pound-force by definition. How each value was obtained stands in its row.
 */
import { describe } from 'vitest';
import { pinForHole, twistsFor, WIRE_RULES } from '../src/numbers/index.ts';
import { parseQuantity } from '../src/quantity/index.ts';
import rows from './rows/retention.json' with { type: 'json' };
import { type Given, type Numbers, number, type Row, runRows } from './rows.ts';

const IN = 0.0254; // m
const inches = (metres: number): number => metres / IN;

const pin = (given: Given): Numbers => {
  const found = pinForHole(number(given, 'nominal_mm') / 1000);
  return { dMin_mm: (found?.least ?? Number.NaN) * 1000, dMax_mm: (found?.most ?? Number.NaN) * 1000 };
};

const twists = (given: Given): Numbers => {
  const found = twistsFor(number(given, 'wire_in') * IN);
  return { min: found?.least ?? Number.NaN, max: found?.most ?? Number.NaN };
};

const rules = (): Numbers => ({
  wireMin_in: inches(WIRE_RULES.usual),
  holeForWireMin_in: inches(WIRE_RULES.smallHole),
  smallWire_in: inches(WIRE_RULES.small),
  smallWireHole_in: WIRE_RULES.smallHoles.map(inches),
  smallWireMaxSpacing_in: inches(WIRE_RULES.smallSpacing),
  maxSpan_in: inches(WIRE_RULES.longestSpan),
  wideSpacing_in: WIRE_RULES.wide.map(inches),
  wideMaxUnits: WIRE_RULES.wideHeads,
  seriesMaxWire_in: inches(WIRE_RULES.longestWire),
});

const pigtail = (): Numbers => ({
  minTurns: WIRE_RULES.pigtailTurns[0],
  maxTurns: WIRE_RULES.pigtailTurns[1],
  len_in: WIRE_RULES.pigtail.map(inches),
});

const pounds = (given: Given): Numbers => {
  const read = parseQuantity(`${number(given, 'lbf')} lbf`, 'force');
  return { N: read.ok ? read.value.si : Number.NaN };
};

const ANSWERS: readonly (readonly [RegExp, (given: Given) => Numbers])[] = [
  [/^cotter/, pin],
  [/^wire\.tpi/, twists],
  [/^wire\.rules/, rules],
  [/^wire\.pigtail/, pigtail],
  [/^tie/, pounds],
];

describe('retention: pins, wire, straps', () => {
  runRows(rows as readonly Row[], (given, { id }) => {
    const answer = ANSWERS.find(([pattern]) => pattern.test(id))?.[1];
    if (answer === undefined) throw new Error(`no answer for ${id}: add its family to ANSWERS`);
    return answer(given);
  });
});
