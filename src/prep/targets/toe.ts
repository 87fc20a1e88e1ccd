/** Toe in millimetres, over the diameter at which this kart is read. Toe-out is above 0, as it is written down. */
import { toeAtDiameter } from '../../numbers/index.ts';
import { formatQuantity, type Measure } from '../../quantity/index.ts';
import type { Bound, Refine } from './model.ts';
import { dimensionsFor, without } from './model.ts';

/** '1.96 mm toe-out', '2 mm toe-in', '0 mm'. */
export const toeText = (si: number): string => {
  if (Math.abs(si) < 5e-6) return '0 mm';
  return `${formatQuantity(Math.abs(si), 'mm')} ${si > 0 ? 'toe-out' : 'toe-in'}`;
};

export const toe: Refine = (own, _item, kart) => {
  const found = dimensionsFor(kart, { 'wanted toe diameter': 'length', 'measuring diameter': 'length' });
  if ('missing' in found) return without(own, found.missing);
  const { 'wanted toe diameter': meant, 'measuring diameter': read } = found.of;
  const over = (si: number): number => toeAtDiameter(si, meant, read);
  const moved = (at: Measure): Measure => ({
    si: over(at.si),
    unit: 'mm',
    dimension: 'length',
    text: toeText(over(at.si)),
  });
  const bound = ({ at, why }: Bound): Bound => ({ at: moved(at), why });
  const diameter = formatQuantity(read, 'mm');
  return {
    ...own,
    target: own.target && {
      si: over(own.target.si),
      unit: 'mm',
      text: `${toeText(over(own.target.si))} over ${diameter}`,
    },
    ...(own.min && { min: bound(own.min) }),
    ...(own.max && { max: bound(own.max) }),
    say: [
      ...own.say,
      `Both wheels together, read over ${diameter}, toe-out above 0. The wanted ${own.target ? toeText(own.target.si) : 'toe'} is meant over ${formatQuantity(meant, 'mm')}.`,
    ],
  };
};
