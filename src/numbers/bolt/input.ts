/** The question about a bolt, in trade words. */
import { z } from 'zod';
import { quantity, uncertain } from '../subject.ts';
import { METHODS } from './scatter.ts';

export const schema = z.strictObject({
  thread: z
    .string()
    .max(40)
    .meta({ description: 'as marked; without a pitch the coarse one', examples: ['M8x1.25', '1/4-28 UNF'] }),
  class: z
    .string()
    .max(40)
    .meta({
      description: 'class or grade on the head of the bolt, not of the nut',
      examples: ['8.8', 'grade 5', 'A2-70'],
    })
    .optional(),
  threads: z
    .enum(['dry', 'oiled'])
    .meta({ description: 'dry and clean, or oiled; taken as oiled when not given' })
    .optional(),
  torque: quantity('torque', 'torque of the joint, without the running torque of a locking nut', '20 N·m').optional(),
  preload: quantity('force', 'wanted preload, in place of a torque', '15 kN').optional(),
  'dry figure': quantity(
    'torque',
    "a maker's figure for dry threads that would be used on oiled ones",
    '20 N·m',
  ).optional(),
  'nut factor': uncertain('ratio', 'K where it was measured; else 0.20 dry, 0.15 oiled', '0.20 ± 0.02').optional(),
  'thread friction': quantity('ratio', 'coefficient between the threads', '0.12').optional(),
  'head friction': quantity(
    'ratio',
    'coefficient under the head or nut; as thread friction when not given',
    '0.12',
  ).optional(),
  'face diameter': quantity('length', 'outer diameter of the face under the head', '11.63 mm').optional(),
  'hole diameter': quantity('length', 'diameter of the clearance hole', '9 mm').optional(),
  'yield share': quantity('ratio', 'share of yield for the highest preload', '90 %').optional(),
  method: z.enum(METHODS).meta({ description: 'how it is tightened; a torque wrench when not given' }).optional(),
  'locking nut': z.enum(['new', 'used']).meta({ description: 'a self-locking nut, new or used again' }).optional(),
  'running torque': quantity(
    'torque',
    'measured while the locking nut runs down, before it seats',
    '1.5 N·m',
  ).optional(),
});
export type Input = z.output<typeof schema>;
