/** Ignition timing as the dial gauge reads it, from the degrees on the sheet and the crank of this engine. */
import { dropBelowTop } from '../../numbers/index.ts';
import { formatQuantity } from '../../quantity/index.ts';
import { dimensionsFor, type Refine, without } from './model.ts';

export const ignitionTiming: Refine = (own, _item, kart) => {
  const found = dimensionsFor(kart, { 'ignition timing': 'angle', stroke: 'length', 'rod length': 'length' });
  if ('missing' in found) return without(own, found.missing);
  const { 'ignition timing': angle, stroke, 'rod length': rod } = found.of;
  const drop = dropBelowTop({ stroke, rod }, -angle);
  if (!(rod > stroke / 2 && drop > 0 && drop < stroke))
    return without(own, ['stroke', 'rod length', 'ignition timing'], 'no crank has these figures');
  return {
    ...own,
    target: { si: drop, unit: 'mm', text: `${formatQuantity(drop, 'mm', 2)} before top` },
    say: [
      ...own.say,
      `${formatQuantity(angle, '°', 1)} before top with ${formatQuantity(stroke, 'mm')} stroke and ${formatQuantity(rod, 'mm')} rod. More advance than the maker's can hole the piston.`,
    ],
  };
};
