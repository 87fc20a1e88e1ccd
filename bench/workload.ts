/** A fixed piece of arithmetic [ms]: a measure of how busy the machine is, so that times of two runs can be compared. */
import { median } from './measure.ts';

const ROUNDS = 20_000_000;

export const workload = (): Promise<number> =>
  median(3, () => {
    let x = 1;
    for (let n = 0; n < ROUNDS; n++) x = (Math.imul(x, 1_664_525) + 1_013_904_223) | 0;
    return x;
  });
