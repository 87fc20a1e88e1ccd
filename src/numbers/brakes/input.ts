/** The question about the brakes, in trade words. */
import { z } from 'zod';
import { quantity, uncertain } from '../subject.ts';

const size = (meaning: string, example: string) => quantity('length', meaning, example);
const share = (meaning: string, example: string) => quantity('ratio', meaning, example);

const wear = z.strictObject({
  now: size('thickness now, at the thinnest place; of a pad the friction material only', '4 mm'),
  new: size('thickness when new', '6 mm').optional(),
  limit: size("least thickness: the maker's; for a pad 2 mm when not given", '2 mm').optional(),
  'hours run': quantity('time', 'running since new', '6 h').optional(),
});
const circuit = z.strictObject({
  'master bore': size('diameter of the master cylinder', '16 mm'),
  'piston diameter': size('of a caliper piston', '24 mm'),
  'pistons a side': quantity('count', 'on one side of the disc', '1'),
  calipers: quantity('count', 'on this axle; front 2, rear 1 when not given', '2').optional(),
  'effective radius': size('middle of the axle to the middle of the pad', '55 mm').optional(),
  'disc diameter': size('outside of the swept ring, in place of effective radius', '150 mm').optional(),
  'pad height': size('of the pad along the radius, with disc diameter', '40 mm').optional(),
  'tyre diameter': size('rolling diameter', '256 mm'),
  'disc mass': quantity('mass', 'of one disc, the part that heats', '0.5 kg').optional(),
  pad: wear.optional(),
  disc: wear.optional(),
});
export type Circuit = z.output<typeof circuit>;
export type WearInput = z.output<typeof wear>;

export const schema = z.strictObject({
  'pedal force': quantity('force', 'of the foot on the pad', '350 N'),
  'pedal ratio': share('push-rod force over pedal force', '4.2').optional(),
  'pad to pivot': size('of the pedal, in place of pedal ratio', '210 mm').optional(),
  'rod to pivot': size('of the pedal', '50 mm').optional(),
  'bar spacing': size('between the clevises of the balance bar; with a front circuit', '60 mm').optional(),
  'bar offset': size('bearing from the middle toward the front clevis; toward the rear below 0', '3 mm').optional(),
  front: circuit.optional(),
  rear: circuit,
  'pad friction': uncertain('ratio', 'pad on disc', '0.40 ± 0.05'),
  efficiency: share('of pedal and hydraulics; 95 % when not given', '95 %').optional(),
  mass: quantity('mass', 'kart with driver', '181 kg'),
  wheelbase: size('front to rear axle', '1045 mm'),
  'front load share': share('of the weight standing still, driver in', '41.7 %'),
  'centre height': size('of the centre of mass with driver', '240 mm'),
  'tyre grip': share('braking force over load at the limit', '1.2'),
  'engine drag': quantity('force', 'of the shut throttle at the rear tyres; none when not given', '60 N').optional(),
  speed: quantity('speed', 'when braking begins', '100 km/h').optional(),
  'speed after': quantity('speed', 'when it ends; standstill when not given', '50 km/h').optional(),
  'reaction time': quantity('time', 'before the foot acts', '0.15 s').optional(),
  'rotating share': share('energy of wheels, axle and engine over the rest; 4 % when not given', '4 %').optional(),
});
export type Input = z.output<typeof schema>;
