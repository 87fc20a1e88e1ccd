/** The question about tyres, in trade words. Each part can be asked alone. */
import { z } from 'zod';
import { quantity, uncertain } from '../subject.ts';
import { CORNERS_AND_AXLES } from './record.ts';

const gauge = (meaning: string, example: string) =>
  quantity('pressure-gauge', `${meaning}, as the gauge shows it`, example);
const around = (meaning: string) =>
  quantity(
    'pressure-absolute',
    `absolute pressure of the air ${meaning}; not the sea level figure of a forecast`,
    '1005 hPa',
  );
const warmth = (meaning: string, example: string) => quantity('temperature', meaning, example);
const tyre = z.enum(CORNERS_AND_AXLES).describe('one tyre, or an axle');
const surface = z.enum(['dry', 'wet']).describe('the track, and with it the tyre');

const run = z.strictObject({
  tyre,
  surface,
  cold: gauge('set cold', '0.60 bar'),
  'cold temperature': warmth('of the tyre when it was set', '15 °C'),
  hot: gauge('at once after the run', '0.85 bar'),
  'track temperature': warmth('of the surface', '24 °C'),
  laps: quantity('count', 'run', '12'),
  'ambient pressure': around('there on that day; the one of today when not given').optional(),
});
const wanted = z.strictObject({ tyre, hot: gauge('wanted hot', '0.85 bar') });
const tread = z.strictObject({
  tyre,
  inside: warmth('toward the kart', '62 °C'),
  middle: warmth('of the tread', '66 °C'),
  outside: warmth('away from the kart', '60 °C'),
});
const rolled = (side: string) =>
  uncertain('length', `${side} rear tyre, length on the ground over these turns, driver in`, '2604 mm');

export const schema = z.strictObject({
  'ambient pressure': around('at the track now').optional(),
  'track height': quantity(
    'length',
    'above the sea; shows a sea level figure taken for the one here',
    '120 m',
  ).optional(),
  'cold temperature': warmth('of the tyres when you set them', '16 °C').optional(),
  'track temperature': warmth('of the surface for this run', '26 °C').optional(),
  surface: surface.optional(),
  laps: quantity('count', 'planned for this run', '12').optional(),
  wanted: z.array(wanted).max(6).describe('hot pressures you want').optional(),
  record: z.array(run).max(2000).describe('runs of this kart with these tyres').optional(),
  'hot temperature': warmth('of the air in the tyre after a run, where the record does not say', '65 °C').optional(),
  water: z.enum(['none', 'liquid']).describe('liquid water in the tyre').optional(),
  'tyre volume': quantity('volume', 'of air in one tyre', '6 l').optional(),
  humidity: quantity('ratio', 'relative humidity of the air that was pumped in, not dried', '60 %').optional(),
  'least pressure': gauge('least the maker or the class allows', '0.50 bar').optional(),
  'set elsewhere': z
    .strictObject({ gauge: gauge('set there', '0.65 bar'), 'ambient pressure': around('there') })
    .describe('tyres set at another place or on another day, nothing let in or out')
    .optional(),
  rear: z
    .strictObject({
      'rolled left': rolled('left'),
      'rolled right': rolled('right'),
      turns: quantity('count', 'of the wheel over that length', '3'),
      'contact track': quantity('length', 'middle to middle of the rear tyres', '1140 mm'),
      'wanted radius': quantity('length', 'radius the axle should roll round by itself', '60 m').optional(),
    })
    .describe('roll-out and stagger')
    .optional(),
  treads: z.array(tread).max(6).describe('probe, at once after a hot lap').optional(),
  set: z
    .strictObject({
      'heat cycles': quantity('count', 'the set has had', '4').optional(),
      'most heat cycles': quantity('count', "the maker's or your own limit", '6').optional(),
      age: quantity('time', 'since it was made', '200 d').optional(),
      'most age': quantity('time', "the maker's or your own limit", '730 d').optional(),
    })
    .describe('how often and how long one set of tyres has been used')
    .optional(),
});
export type Input = z.output<typeof schema>;
export type RunInput = z.output<typeof run>;
