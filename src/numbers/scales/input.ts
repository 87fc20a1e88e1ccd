/** The question about the scales, in trade words. */
import { z } from 'zod';
import { quantity, uncertain } from '../subject.ts';

const reading = (wheel: string, example: string) =>
  uncertain('mass', `scale under the ${wheel} wheel, as the driver sits`, example).optional();

const place = z.strictObject({
  name: z.string().min(1).max(100),
  forward: quantity('length', 'forward of the rear axle', '300 mm'),
  left: quantity('length', 'left of the middle of the kart; right is below 0', '-250 mm'),
  most: quantity('mass', 'most that fits there, or the mass of the piece', '8 kg'),
});

export const schema = z.strictObject({
  'front left': reading('front left', '36.0 kg ± 0.1 kg'),
  'front right': reading('front right', '39.5 kg ± 0.1 kg'),
  'rear left': reading('rear left', '51.0 kg ± 0.1 kg'),
  'rear right': reading('rear right', '54.5 kg ± 0.1 kg'),
  total: uncertain(
    'mass',
    'kart and driver on one scale; in place of the four, or to compare',
    '181 kg ± 0.2 kg',
  ).optional(),
  wheelbase: uncertain('length', 'middle of front contact to middle of rear contact', '1045 mm').optional(),
  'front track': quantity('length', 'middle of left contact to middle of right contact, front', '1080 mm').optional(),
  'rear track': quantity('length', 'middle of left contact to middle of right contact, rear', '1170 mm').optional(),
  'front raised': uncertain(
    'mass',
    'both front scales together with the rear wheels raised',
    '81.0 kg ± 0.1 kg',
  ).optional(),
  rise: uncertain('length', 'how far the supports under the rear wheels were raised', '300 mm').optional(),
  'front wheel radius': uncertain('length', 'ground to the middle of the front axle, loaded', '128 mm').optional(),
  'rear wheel radius': uncertain('length', 'ground to the middle of the rear axle, loaded', '139 mm').optional(),
  'front target': uncertain('ratio', 'wanted front share', '42.5 % ± 0.2 %').optional(),
  'left target': uncertain('ratio', 'wanted left share', '50 % ± 0.2 %').optional(),
  'least mass': quantity('mass', 'least mass the rules allow, kart and driver', '180 kg').optional(),
  'fuel to burn': uncertain('volume', 'what will be used until the flag', '4 l ± 0.5 l').optional(),
  'fuel density': uncertain('density', '0.745 kg/l ± 0.03 kg/l when not given', '0.745 kg/l ± 0.01 kg/l').optional(),
  'standard uncertainty': quantity('mass', 'of the total, in place of the limits of each scale', '0.2 kg').optional(),
  confidence: quantity('ratio', 'chance wanted of being heavy enough', '95 %').optional(),
  places: z.array(place).max(2000).optional(),
  'bolt diameter': quantity('length', 'least ballast bolt of the rule set', '8 mm').optional(),
  'bolts a block': quantity('count', 'least bolts through a block', '2').optional(),
  'largest block': quantity('mass', 'largest block of the rule set', '5 kg').optional(),
  'mass a bolt': quantity('mass', 'most mass a bolt may hold', '4 kg').optional(),
});
export type Input = z.output<typeof schema>;

export const WHEELS = ['front left', 'front right', 'rear left', 'rear right'] as const;
export const RAISED = ['front raised', 'rise', 'front wheel radius', 'rear wheel radius'] as const;
export const STANCE = ['wheelbase', 'front track', 'rear track'] as const;
