/** The question about a retention, in trade words. */
import { z } from 'zod';
import { quantity } from '../subject.ts';

export const ASKED = ['split pin', 'safety wire', 'strap', 'spring clip', 'locking nut'] as const;
export type Asked = (typeof ASKED)[number];

const words = (description: string, example: string) =>
  z
    .string()
    .min(1)
    .max(200)
    .meta({ description, examples: [example] });

export const schema = z.strictObject({
  means: z.enum(ASKED).meta({ description: 'what is fitted' }).optional(),
  thread: z
    .string()
    .max(40)
    .meta({ description: 'thread it is on, for a split pin or a locking nut', examples: ['M8x1.25'] })
    .optional(),
  'hole diameter': quantity('length', 'diameter of the hole for pin or wire', '2 mm').optional(),
  'wire diameter': quantity('length', 'diameter of the wire', '0.8 mm').optional(),
  heads: quantity('count', 'how many heads are wired in series', '2').optional(),
  spacing: quantity('length', 'from head to head', '40 mm').optional(),
  'strap width': quantity('length', 'width of the strap', '4.8 mm').optional(),
  load: quantity('force', 'what the strap has to catch', '60 N').optional(),
  temperature: quantity('temperature', 'hottest the locking nut gets', '90 °C').optional(),
  'running torque': quantity('torque', 'what the locking nut takes to run down', '1 N·m').optional(),
  'part turns': z.boolean().meta({ description: 'the part turns about the bolt' }).optional(),
  first: words('the first retention, as a kart file names it', 'self-locking nut').optional(),
  second: words('the second retention', 'split pin').optional(),
});
export type Input = z.output<typeof schema>;

/** Which keys belong to which means. */
export const KEYS: Readonly<Record<Asked, readonly (keyof Input)[]>> = {
  'split pin': ['thread', 'hole diameter'],
  'safety wire': ['wire diameter', 'hole diameter', 'heads', 'spacing'],
  strap: ['strap width', 'load'],
  'spring clip': [],
  'locking nut': ['thread', 'temperature', 'running torque', 'part turns'],
};
