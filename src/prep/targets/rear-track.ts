/** The gap from bearing to hub that gives the wanted rear width, what it may be off, and the axle that is then in the hub. */
import type { Item, Kart } from '../../kart/index.ts';
import { lengthText, onTape, type RearTrackTarget, rearTrackTarget } from '../../numbers/index.ts';
import { formatQuantity } from '../../quantity/index.ts';
import { type Bound, type Figures, type Refine, without, worked } from './model.ts';

/** How far a gap may be from the computed one [m]: left and right equal within 1 mm. Common practice. */
const WITHIN = 0.001;
/** Marks of the tape a width is set with. */
const TAPE = { inches: false, divisions: 16 };

export const rearTrack: Refine = (own, item, kart) => {
  const limit = kart.rules?.limits['overall rear width'];
  const answer = rearTrackTarget(kart.dimensions, limit?.max);
  if ('missing' in answer) return without(own, answer.missing, answer.why);
  const gap = isRight(kart, item) ? answer.gapRight : answer.gapLeft;
  // Both hubs out by the same: half of what is left to the limit of the class.
  const room = limit?.max === undefined ? Number.POSITIVE_INFINITY : (limit.max.si - answer.width) / 2;
  const under = onTape(gap, TAPE) - gap > room;
  // The mark of the tape that the step shows is never refused.
  const least = Math.min(gap - WITHIN, onTape(gap, TAPE, under));
  const stopped = room < WITHIN;
  const why = `${formatQuantity(WITHIN, 'mm')} from the computed gap, so that the sides are alike (common practice)`;
  const max: Bound = stopped
    ? {
        at: worked(gap + room, 'mm', 'length'),
        why: `with both sides so the kart is as wide as its class allows (${limit?.source ?? ''})`,
      }
    : { at: worked(gap + WITHIN, 'mm', 'length'), why };
  return {
    ...own,
    target: { si: gap, unit: 'mm', text: lengthText(gap, TAPE, under) },
    min: own.min ?? { at: worked(least, 'mm', 'length'), why },
    max: own.max && own.max.at.si < max.at.si ? own.max : max,
    say: [
      ...own.say,
      `Computed for ${formatQuantity(answer.width, 'mm')} over the tyres from the axle stack of the kart file. A pass lies within ${why}${stopped ? `, and not above ${max.at.text}: ${max.why}` : ''}.`,
    ],
  };
};

/** Axle inside the hub once the gap is right. */
export const hubEngagement: Refine = (own: Figures, item, kart) => {
  const answer = rearTrackTarget(kart.dimensions, kart.rules?.limits['overall rear width']?.max);
  if ('missing' in answer) return without(own, answer.missing, answer.why);
  const inside = engagementOf(answer, isRight(kart, item));
  const target = worked(inside, 'mm', 'length');
  const tooLittle = own.min !== undefined && !(inside >= own.min.at.si);
  return {
    ...own,
    target: tooLittle ? null : { si: target.si, unit: target.unit, text: target.text },
    say: [
      ...own.say,
      tooLittle
        ? `With the computed gap only ${target.text} of axle would be in this hub: a longer hub or a longer axle is needed.`
        : `${target.text} of axle is in the hub once its gap is right.`,
    ],
  };
};

const engagementOf = (answer: RearTrackTarget, right: boolean): number =>
  right ? answer.engagementRight : answer.engagementLeft;

const isRight = (kart: Kart, item: Item): boolean => kart.parts[item.part]?.corner === 'rear right';
