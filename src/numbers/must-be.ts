import type { Measure } from '../quantity/index.ts';
import type { InputProblem } from './subject.ts';

/** A problem when a given measure does not keep a condition (a not-a-number never does); nothing when none was given. */
export const mustBe = (
  path: string,
  measure: Measure | undefined,
  expected: string,
  holds: (si: number) => boolean,
  remedy: string,
): InputProblem | undefined =>
  measure === undefined || holds(measure.si) ? undefined : { path, expected, got: measure.text, remedy };
