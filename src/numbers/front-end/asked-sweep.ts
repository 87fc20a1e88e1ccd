/** The sweep of a question, for its plot: one reading of the words, then plain numbers. */
import { siOf } from '../asked.ts';
import { frontEndOf } from './build.ts';
import { schema } from './input.ts';
import { frontEndSweep, type Sweep } from './sweep.ts';

/** At each turn of the steering [rad, left +]; undefined where the question itself would be refused by its schema. */
export function askedSweep(question: unknown, steer: readonly number[]): Sweep | undefined {
  const { success, data } = schema.safeParse(question);
  return success ? frontEndSweep(frontEndOf(data), steer, siOf(data, 'lateral acceleration', 0)) : undefined;
}
