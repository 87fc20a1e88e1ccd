/** What stands against one field of this question, in words. */
import { formatQuantity } from '../../quantity/index.ts';
import { wrong } from '../asked.ts';
import type { InputProblem, Uncertain } from '../subject.ts';

export { wrong };

export const mustGive = (path: string, expected: string, example: string): InputProblem =>
  wrong(path, expected, 'nothing', `add it, for example "${example}"`);

export const outside = (
  path: string,
  measure: Uncertain,
  [low, high]: readonly [number, number],
  remedy: string,
): readonly InputProblem[] =>
  measure.si >= low && measure.si <= high
    ? []
    : [
        wrong(
          path,
          `${formatQuantity(low, measure.unit)} to ${formatQuantity(high, measure.unit)}`,
          measure.text,
          remedy,
        ),
      ];

const NEEDED = {
  temperature: ['the temperature of the air', '21 °C'],
  pressure: ['the pressure of the air', '985 hPa'],
  'pressure is': ['which pressure was read: "station", "QNH" or "sea level"', 'station'],
} as const;

/** Temperature, pressure and its kind belong together. */
export const incomplete = (path: string, read: Readonly<Record<string, unknown>>): readonly InputProblem[] =>
  Object.entries(NEEDED).flatMap(([key, [expected, example]]) =>
    read[key] === undefined ? [mustGive(`${path}/${key}`, expected, example)] : [],
  );
