/** The question about the rear track, in trade words. */
import { z } from 'zod';
import { quantity, uncertain } from './subject.ts';

const size = (meaning: string, example: string) => uncertain('length', meaning, example);

export const schema = z.strictObject({
  'bearing faces': size('over the outer faces of the two outer bearings', '655 mm'),
  'bearing face left': size(
    'middle of the kart to the outer face of the left bearing; half of bearing faces when not given',
    '327.5 mm',
  ).optional(),
  'hub length': size('inner end of hub to wheel mounting face, both sides', '75 mm').optional(),
  'hub length left': size('inner end of the left hub to its wheel mounting face', '75 mm').optional(),
  'hub length right': size('inner end of the right hub to its wheel mounting face', '75 mm').optional(),
  'tyre outboard': size(
    'wheel mounting face outward to the outer edge of the tyre, both sides',
    '149.95 mm',
  ).optional(),
  'tyre outboard left': size('left wheel mounting face outward to the outer edge of the tyre', '149.95 mm').optional(),
  'tyre outboard right': size(
    'right wheel mounting face outward to the outer edge of the tyre',
    '149.95 mm',
  ).optional(),
  'axle length': size('whole length of the axle', '1040 mm').optional(),
  'axle beyond bearing left': size(
    'left bearing face to the end of the axle; an axle in the middle when not given',
    '192.5 mm',
  ).optional(),
  'overall rear width': size('wanted width over the tyres, at axle height', '1397 mm').optional(),
  'measured width': size(
    'width over the tyres as it is now; mean of front and rear of the tyre',
    '1398.5 mm',
  ).optional(),
  gap: size('bearing face to inner end of hub as it is now, both sides', '146 mm').optional(),
  'gap left': size('left bearing face to inner end of the left hub as it is now', '146 mm').optional(),
  'gap right': size('right bearing face to inner end of the right hub as it is now', '146 mm').optional(),
  'width limit': quantity('length', 'largest width the rules allow', '1400 mm').optional(),
  'tape marks': z.enum(['1/8 in', '1/16 in', '1/32 in']).optional(),
  confidence: quantity('ratio', 'chance wanted of being inside the limit', '95 %').optional(),
  'tape scale': quantity('length', 'limits ± of the tape itself over the width', '0.5 mm').optional(),
  'tape reading': quantity('length', 'limits ± of reading one end of the tape', '0.5 mm').optional(),
  spread: quantity('length', 'standard deviation of repeated readings of the width', '0.6 mm').optional(),
  readings: quantity('count', 'how many repeated readings', '3').optional(),
  'temperature band': quantity(
    'temperature-difference',
    'limits ± of the temperature of kart and tape',
    '5 K',
  ).optional(),
});
export type Input = z.output<typeof schema>;
