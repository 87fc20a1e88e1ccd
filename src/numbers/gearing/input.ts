/** The question about gearing, in trade words. */
import { z } from 'zod';
import { quantity, uncertain } from '../subject.ts';
import { several } from './several.ts';

const turning = (meaning: string, example: string) => quantity('rotational-speed', meaning, example);

export const DRIVES = ['gearbox', 'direct'] as const;

export const schema = z.strictObject({
  drive: z
    .enum(DRIVES)
    .meta({ description: 'gearbox: primary drive and gears; direct: the front sprocket turns with the crankshaft' }),
  'primary ratio': quantity('ratio', 'crankshaft to clutch: driven over driving teeth', '75/19').optional(),
  gears: several('ratio', 'driven over driving teeth or as a number, first gear first', '33/13 29/16 27/18').optional(),
  'front sprocket': quantity('count', 'teeth, at the engine', '17'),
  'rear sprocket': quantity('count', 'teeth, on the axle', '25'),
  'rolling circumference': uncertain(
    'length',
    'of a rear tyre, rolled on the ground with the driver in; may be left out beside a log',
    '860 mm ± 5 mm',
  ).optional(),
  'engine speed': turning('at which the speed of each gear is shown, such as your shift', '13000 rpm'),
  'logged engine speed': turning('read at one moment of a straight, with logged speed', '12500 rpm').optional(),
  'logged speed': quantity('speed', 'over the ground at that moment', '110 km/h').optional(),
  'logged gear': quantity('count', 'the gear at that moment; not in direct drive', '6').optional(),
  'wanted engine speed': turning('that is wanted at wanted speed', '13200 rpm').optional(),
  'wanted speed': quantity('speed', 'such as the end of the longest straight', '115 km/h').optional(),
  'wanted gear': quantity('count', 'the gear used there; not in direct drive', '6').optional(),
  'front sprockets owned': several('count', 'teeth of each', '16 17 18').optional(),
  'rear sprockets owned': several('count', 'teeth of each', '22..28').optional(),
  limiter: turning('highest engine speed its maker allows; with torque curve', '13500 rpm').optional(),
  'torque curve': z
    .array(
      z.strictObject({
        at: turning('engine speed', '11000 rpm'),
        torque: quantity('torque', 'at the crankshaft', '24.5 N·m'),
      }),
    )
    .max(60)
    .optional(),
  'driveline efficiency': quantity('ratio', 'ground over crankshaft; 92 % when not given', '92 %').optional(),
  mass: quantity('mass', 'kart and driver; for drag', '180 kg').optional(),
  'drag area': quantity('area', 'drag coefficient × frontal area, from a coast-down', '0.55 m²').optional(),
  'rolling resistance': quantity('ratio', 'rolling force over weight, from a coast-down', '2.5 %').optional(),
  'air density': quantity('density', 'of the day', '1.2 kg/m³').optional(),
});
export type Input = z.output<typeof schema>;

export const DRAG = ['mass', 'drag area', 'rolling resistance', 'air density'] as const;
export const OWNED = ['front sprockets owned', 'rear sprockets owned'] as const;
