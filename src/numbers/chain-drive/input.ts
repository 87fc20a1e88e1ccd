/** The question about the chain, in trade words. Beside chain and sprockets any group may be left out. */
import { z } from 'zod';
import { quantity, uncertain } from '../subject.ts';
import { CHAINS } from './sizes.ts';

const size = (meaning: string, example: string) => quantity('length', meaning, example);

export const schema = z.strictObject({
  chain: z.enum(CHAINS).meta({ description: 'as stamped on its plates; 219 has a pitch of 7.774 mm, 35 of 9.525 mm' }),
  'front sprocket': quantity('count', 'teeth, at the engine', '17'),
  'rear sprocket': quantity('count', 'teeth, on the axle', '25'),
  'centre distance': size('middle of the front sprocket to middle of the axle', '230 mm').optional(),
  'room away': size('that the slots leave to move the engine away from the axle', '8 mm').optional(),
  'room toward': size('that they leave to move it toward the axle', '6 mm').optional(),
  'links now': quantity('count', 'of the chain at hand, joining link counted', '110').optional(),
  'measured length': uncertain(
    'length',
    'over the pitches below, pin to pin, pulled straight; the longest of several places',
    '256.2 mm ± 0.2 mm',
  ).optional(),
  'pitches measured': quantity('count', 'pitches in that length', '20').optional(),
  slack: size(
    'whole movement at mid-span, up and down, at the tightest place of a full turn, driver in',
    '18 mm',
  ).optional(),
  'out of line': size('sprocket faces from one straight-edge', '0.4 mm').optional(),
  power: quantity('power', 'that goes through the chain', '34 kW').optional(),
  'front sprocket speed': quantity(
    'rotational-speed',
    'of the sprocket itself, behind the gearbox',
    '3300 rpm',
  ).optional(),
  'chain mass': quantity('mass', 'of so many links as links now', '0.85 kg').optional(),
});
export type Input = z.output<typeof schema>;
