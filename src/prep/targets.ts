/** To which number: the target and tolerance of a step, from the item, the rule set, or a number worked out for it. */
import type { Item, Kart } from '../kart/index.ts';
import { lengthText, onTape, rearTrackTarget } from '../numbers/index.ts';
import type { Measure } from '../quantity/index.ts';
import type { Shown, Step } from './model.ts';

type Aim = Pick<Step, 'target' | 'tolerance' | 'unit'>;

const shown = (m: Measure): Shown => ({ si: m.si, unit: m.unit, text: m.text });

export const aimOf = (kart: Kart, item: Item): Aim => {
  const joint = item.joint ? kart.joints[item.joint] : undefined;
  if (joint?.torque) {
    const { min, max } = joint.torque;
    const range = min.si === max.si ? min.text : `${min.text} to ${max.text}`;
    const text = joint.torque.computed ? `${range}, computed` : range;
    return {
      target: { si: (min.si + max.si) / 2, unit: max.unit, text },
      tolerance: { min: shown(min), max: shown(max), text },
      unit: max.unit,
    };
  }
  const m = item.measure;
  if (!m) return { target: null, tolerance: null, unit: null };
  const limit = m.rule ? kart.rules?.limits[m.rule] : undefined;
  const min = tighter(m.min, limit?.min, 'max');
  const max = tighter(m.max, limit?.max, 'min');
  const text = [min && `at least ${min.text}`, max && `at most ${max.text}`].filter(Boolean).join(', ');
  return {
    target: computed(kart, item) ?? (m.target ? shown(m.target) : null),
    tolerance: min || max ? { min: min ? shown(min) : null, max: max ? shown(max) : null, text } : null,
    unit: m.unit,
  };
};

/** The tighter of the item's own limit and the rule set's. */
const tighter = (own: Measure | undefined, rule: Measure | undefined, pick: 'min' | 'max'): Measure | undefined => {
  if (!own || !rule) return own ?? rule;
  return (pick === 'max' ? own.si >= rule.si : own.si <= rule.si) ? own : rule;
};

/** Marks of the tape a width is set with. */
const TAPE = { inches: false, divisions: 16 };

/**
 * A target that follows from the kart's dimensions. Rear track: the bearing-to-hub gap of this side, in mm and on a tape;
 * the mark below where the nearest one, set on both sides, would pass the limit of the rule set.
 */
const computed = (kart: Kart, item: Item): Shown | null => {
  if (item.measure?.number !== 'rear-track') return null;
  const limit = kart.rules?.limits['overall rear width']?.max;
  const answer = rearTrackTarget(kart.dimensions, limit);
  if ('missing' in answer) return null;
  const shownAs = (si: number, sides: number): Shown => {
    const over = answer.width + sides * (onTape(si, TAPE) - si) > (limit?.si ?? Number.POSITIVE_INFINITY);
    return { si, unit: 'mm', text: lengthText(si, TAPE, over) };
  };
  if (item.measure.dimension === 'overall rear width') return shownAs(answer.width, 1);
  const right = item.measure.dimension?.includes('right') || kart.parts[item.part]?.corner === 'rear right';
  return shownAs(right ? answer.gapRight : answer.gapLeft, 2);
};
