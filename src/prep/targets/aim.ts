/**
 * To which number: the one place that says what an item is aimed at and what a pass must lie between. The step shows it,
 * a reading is judged by it, and a pass outside it is refused.
 */
import type { Item, ItemMeasure, Joint, Kart } from '../../kart/index.ts';
import type { Measure } from '../../quantity/index.ts';
import { brakeBias } from './brake-bias.ts';
import { ignitionTiming } from './ignition-timing.ts';
import { leastMass } from './least-mass.ts';
import { leastSquish } from './least-squish.ts';
import { type Aim, type Bound, dimensionOfSide, type Figures, type Numbers, shown } from './model.ts';
import { hubEngagement, rearTrack } from './rear-track.ts';
import { toe } from './toe.ts';
import { weightShares } from './weight-shares.ts';

const NUMBERS: Numbers = {
  'rear-track': rearTrack,
  'hub-engagement': hubEngagement,
  'brake-bias': brakeBias,
  toe,
  'least-mass': leastMass,
  'weight-shares': weightShares,
  'ignition-timing': ignitionTiming,
  'least-squish': leastSquish,
  'compression-trend': own => own, // said of the readings together, which the record holds
};

export function aimOf(kart: Kart, item: Item): Aim {
  const { measure } = item;
  const torque = item.joint === undefined ? undefined : kart.joints[item.joint]?.torque;
  if (torque) return aimOfTorque(torque, item);
  if (!measure) return { target: null, tolerance: null, unit: null, say: [] };
  const own = ownFigures(kart, item, measure);
  const figures = measure.number === undefined ? own : NUMBERS[measure.number](own, item, kart);
  return finished(withinRule(kart, measure, figures), measure.unit);
}

/** What a pass must lie between; an end that is not there is open. */
export function limitsOf(kart: Kart, item: Item): { readonly min?: Measure; readonly max?: Measure } {
  const { min, max } = aimOf(kart, item);
  return { ...(min && { min: min.at }), ...(max && { max: max.at }) };
}

/** The figures of the item itself; a target it does not have is the dimension of the kart it is a reading of. */
function ownFigures(kart: Kart, item: Item, { target, min, max, number, dimension }: ItemMeasure): Figures {
  const wanted = number === undefined && dimension !== undefined ? dimensionOfSide(kart, item, dimension) : undefined;
  const aimed = target ?? wanted;
  return {
    target: aimed ? shown(aimed) : null,
    ...(min && { min: { at: min, why: item.source } }),
    ...(max && { max: { at: max, why: item.source } }),
    say: [],
  };
}

function aimOfTorque(torque: NonNullable<Joint['torque']>, { measure }: Item): Aim {
  const [min, max] = [measure?.min ?? torque.min, measure?.max ?? torque.max];
  const range = min.si === max.si ? min.text : `${min.text} to ${max.text}`;
  const text = torque.computed ? `${range}, computed` : range;
  return {
    target: { si: (min.si + max.si) / 2, unit: max.unit, text },
    tolerance: { min: shown(min), max: shown(max), text },
    unit: max.unit,
    min: { at: min, why: torque.source },
    max: { at: max, why: torque.source },
    say: [],
  };
}

/** The tighter of what was found and the rule set's own limit; a target never lies beyond it. */
function withinRule(kart: Kart, { rule }: ItemMeasure, figures: Figures): Figures {
  const limit = rule === undefined ? undefined : kart.rules?.limits[rule];
  if (!limit) return figures;
  const bound = (at: Measure | undefined): Bound | undefined => at && { at, why: limit.source };
  const min = tighter(figures.min, bound(limit.min), (a, b) => a >= b);
  const max = tighter(figures.max, bound(limit.max), (a, b) => a <= b);
  const target = figures.target;
  const passed =
    target && (max && !(target.si <= max.at.si) ? max : min && !(target.si >= min.at.si) ? min : undefined);
  return {
    ...figures,
    target: passed ? shown(passed.at) : target,
    ...(min && { min }),
    ...(max && { max }),
  };
}

const tighter = (own: Bound | undefined, rule: Bound | undefined, closer: (a: number, b: number) => boolean) =>
  own && rule ? (closer(own.at.si, rule.at.si) ? own : rule) : (own ?? rule);

function finished(figures: Figures, unit: string): Aim {
  const { min, max } = figures;
  const text =
    min && max
      ? `${min.at.text} to ${max.at.text}`
      : [min && `at least ${min.at.text}`, max && `at most ${max.at.text}`].filter(Boolean).join('');
  const tolerance = min || max ? { min: min ? shown(min.at) : null, max: max ? shown(max.at) : null, text } : null;
  return { ...figures, tolerance, unit };
}
