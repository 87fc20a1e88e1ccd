import type { Measure } from '../quantity/index.ts';
import { engagement, gapFor, narrowest, type Side } from './axle-stack.ts';

export type RearTrackTarget = {
  readonly gapLeft: number; // bearing face to inner end of hub [m]
  readonly gapRight: number;
  readonly engagementLeft: number; // axle inside the hub [m]; under 0.04 m is too little (common practice)
  readonly engagementRight: number;
  readonly width: number; // what the gaps give [m]: the wanted width, or the limit where that is less
};

/** What is missing from the kart's dimensions; `why` when it is there and cannot be. */
export type NoTarget = { readonly missing: readonly string[]; readonly why?: string };

const NEEDED = [
  'overall rear width',
  'bearing faces',
  'hub length left',
  'hub length right',
  'tyre outboard left',
  'tyre outboard right',
  'axle length',
] as const;

/**
 * Bearing-to-hub gaps for the kart's own dimensions, axle in the middle, and never a width beyond the rule set's limit.
 * A dimension that is not a length above zero counts as missing.
 */
export function rearTrackTarget(
  dimensions: Readonly<Record<string, Measure>>,
  limitMax?: Measure,
): RearTrackTarget | NoTarget {
  const length = (name: (typeof NEEDED)[number]): number => {
    const measure = dimensions[name];
    return measure?.dimension === 'length' && measure.si > 0 ? measure.si : Number.NaN;
  };
  const missing = NEEDED.filter(name => Number.isNaN(length(name)));
  if (missing.length > 0) return { missing };
  const bearing = length('bearing faces') / 2;
  const left: Side = { bearing, hub: length('hub length left'), outboard: length('tyre outboard left') };
  const right: Side = { bearing, hub: length('hub length right'), outboard: length('tyre outboard right') };
  const width = Math.min(length('overall rear width'), limitMax?.si ?? Number.POSITIVE_INFINITY);
  const gapLeft = gapFor(left, width / 2);
  const gapRight = gapFor(right, width / 2);
  const beyond = length('axle length') / 2 - bearing;
  const engagementLeft = engagement(left, gapLeft, beyond);
  const engagementRight = engagement(right, gapRight, beyond);
  if (gapLeft < 0 || gapRight < 0)
    return {
      missing: ['overall rear width'],
      why: `a hub would stand in its bearing: with these lengths the width is ${Math.ceil(narrowest(left, right) * 1000)} mm or more`,
    };
  if (engagementLeft <= 0 || engagementRight <= 0)
    return {
      missing: ['axle length'],
      why: 'a hub would not reach the axle: check axle length, hub lengths and width',
    };
  return { gapLeft, gapRight, engagementLeft, engagementRight, width };
}
