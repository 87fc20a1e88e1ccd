/** The question about drag, in trade words: a speed trace of a kart that rolls out. */
import { z } from 'zod';
import { quantity, uncertain } from '../subject.ts';

const row = z.strictObject({
  time: quantity('time', 'on the logger', '0.5 s'),
  speed: quantity('speed', 'there', '96 km/h'),
});
const trace = (meaning: string) => z.array(row).max(2000).describe(meaning);

export const schema = z.strictObject({
  'first run points': trace('rolling out, clutch in, straight, level; times and speeds as logged'),
  'return run points': trace('the same stretch the other way').optional(),
  mass: uncertain('mass', 'kart with driver, as it rolled', '180 kg ± 0.5 kg'),
  'turning mass': quantity(
    'mass',
    'what wheels, axle and discs add by turning; 3 % of the mass when not given',
    '5 kg',
  ).optional(),
  'air density': uncertain('density', 'of that hour; "air" works it out', '1.20 kg/m³ ± 0.01 kg/m³'),
  wind: quantity('speed', 'along the stretch, the most felt', '1 m/s').optional(),
  'speed from': quantity('speed', 'for the time between two speeds', '100 km/h').optional(),
  'speed to': quantity('speed', 'and down to', '50 km/h').optional(),
  power: quantity('power', 'most at the crankshaft, for the speed at which it is used up', '34 kW').optional(),
  efficiency: quantity('ratio', 'share of it that reaches the ground', '90 %').optional(),
});
export type Input = z.output<typeof schema>;
export type Trace = Input['first run points'];
