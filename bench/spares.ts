/** The exact choice of spares among 30 kinds under a budget of money and one of kilograms, several lots; the slowest counts. */
import { type Choices, chooseSpares } from '../src/life/index.ts';
import { type Figure, median, ms } from './measure.ts';
import { seeded } from './random.ts';

const LOTS = 10;
const KINDS = 30;

export async function spares(): Promise<readonly Figure[]> {
  const each: number[] = [];
  for (let seed = 1; seed <= LOTS; seed++) {
    const kinds = lot(seed);
    for (const [money, kilograms] of [
      [300, 10],
      [800, 20],
      [1500, 15],
    ] as const)
      each.push(await median(3, () => chooseSpares(kinds, { money, kilograms })));
  }
  return [{ what: `spares, ${KINDS} candidates, exact, the slowest of ${each.length}`, value: ms(Math.max(...each)) }];
}

/** Up to three spares of each, failing by chance alone. */
function lot(seed: number): Choices {
  const { below } = seeded(seed);
  return Array.from({ length: KINDS }, () => {
    const [price, mass, mean] = [5 + below(200), (1 + below(40)) / 10, (1 + below(400)) / 1000];
    let [term, sum] = [Math.exp(-mean), 0];
    return Array.from({ length: 4 }, (_, n) => {
      sum += term;
      term *= mean / (n + 1);
      return { value: Math.log(sum), money: n * price, mass: n * mass };
    });
  });
}
