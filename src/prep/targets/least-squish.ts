/** The least distance of piston and head: the engine's own figure, else what common practice keeps to. */
import { LEAST_SQUISH, SOLDER_LIMITS } from '../../numbers/index.ts';
import { formatQuantity } from '../../quantity/index.ts';
import { type Refine, worked } from './model.ts';

export const leastSquish: Refine = (own, _item, kart) => {
  const given = kart.dimensions['least squish'];
  const least = given?.dimension === 'length' && given.si > 0 ? given.si : LEAST_SQUISH;
  const from = least === given?.si ? 'the kart file' : 'common practice for 125 cm³; the maker’s figure wins';
  // A reading may be off by the limits of a calliper on crushed solder: what may be under counts as under.
  const min = { at: worked(least + SOLDER_LIMITS, 'mm', 'length'), why: from };
  return {
    ...own,
    min: own.min && own.min.at.si > min.at.si ? own.min : min,
    say: [
      ...own.say,
      `Least ${formatQuantity(least, 'mm')} (${from}), and ${formatQuantity(SOLDER_LIMITS, 'mm')} for the calliper on solder. Under it the piston can touch the head: not to be run.`,
    ],
  };
};
