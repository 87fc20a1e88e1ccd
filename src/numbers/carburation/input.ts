/** The question about the main jet, in trade words. */
import { z } from 'zod';
import { mixRatio } from '../mix-ratio.ts';
import { quantity, uncertain } from '../subject.ts';
import { jetNumber, jetNumbers } from './jet-numbers.ts';

export const KINDS = ['station', 'QNH', 'sea level'] as const;

const air = z.strictObject({
  density: uncertain(
    'density',
    'of the air; in place of temperature and pressure',
    '1.180 kg/m³ ± 0.003 kg/m³',
  ).optional(),
  'dry-air density': quantity('density', 'the part of it that is dry air', '1.168 kg/m³').optional(),
  temperature: uncertain('temperature', 'in the shade, at the height of the carburettor', '21 °C ± 1 °C').optional(),
  pressure: uncertain(
    'pressure-absolute',
    'absolute, as the barometer or the report shows it',
    '985 hPa ± 1 hPa',
  ).optional(),
  'pressure is': z
    .enum(KINDS)
    .describe('station: read at the track; QNH: an airfield’s; sea level: a weather map or app')
    .optional(),
  humidity: uncertain(
    'ratio',
    'relative humidity; unknown is taken as all between 0 and 100 %',
    '60 % ± 5 %',
  ).optional(),
  elevation: uncertain('length', 'track above the sea; needed from QNH and sea level', '250 m ± 10 m').optional(),
});
export type AirInput = z.output<typeof air>;

const logged = z.strictObject({
  jet: jetNumber('main jet of that session', '165'),
  density: quantity('density', 'of the air then', '1.180 kg/m³'),
  'dry-air density': quantity('density', 'of its dry part', '1.168 kg/m³').optional(),
  plug: z.enum(['right', 'rich', 'lean', 'not read']).describe('what plug and piston said after full throttle'),
});

export const schema = z.strictObject({
  jet: jetNumber('main jet that was right in the air of then', '165'),
  'numbered by': z
    .enum(['diameter', 'flow', 'not known'])
    .describe('what the number on the jet means: its bore in 0.01 mm, a measured flow, or nobody knows'),
  'air then': air.describe('air in which this jet was right'),
  'air now': air.describe('air it is to be right in'),
  'jets in the box': jetNumbers('all sizes you have', '158 160 162 165 168 170').optional(),
  'smallest good jet': jetNumber('smallest that was ever logged as good; this one when not given', '162').optional(),
  'go below it': z.enum(['no', 'yes']).describe('a smaller jet than any logged as good: your decision').optional(),
  log: z.array(logged).max(1000).describe('sessions of this engine, to learn from').optional(),
  'fuel temperature then': quantity('temperature', 'in the tank', '18 °C').optional(),
  'fuel temperature now': quantity('temperature', 'in the tank', '32 °C').optional(),
  'oil then': mixRatio('mixing ratio when the jet was right').optional(),
  'oil now': mixRatio('mixing ratio now').optional(),
  'ethanol then': quantity('ratio', 'share of the petrol by volume when the jet was right', '0 %').optional(),
  'ethanol now': quantity('ratio', 'share of the petrol by volume now', '10 %').optional(),
  'needle jet': quantity('length', 'its bore, at the throttle in question', '2.68 mm').optional(),
  needle: quantity('length', 'thickness of the needle in it there', '1.90 mm').optional(),
  'main jet bore': quantity('length', 'needed with the needle unless the number is a diameter', '1.65 mm').optional(),
});
export type Input = z.output<typeof schema>;
