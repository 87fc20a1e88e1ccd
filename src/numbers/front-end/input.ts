/** The question about the front end, in trade words. One key for both sides, or one each. Steering and turns: left +. */
import { z } from 'zod';
import { quantity } from '../subject.ts';
import { bodyFields, twistFields } from '../wheel-loads/input.ts';

const eachSide = <T extends z.ZodType>(name: string, field: T) => ({
  [name]: field,
  [`${name} left`]: field,
  [`${name} right`]: field,
});
const length = (meaning: string, example: string) => quantity('length', meaning, example).optional();
const angle = (meaning: string, example: string) => quantity('angle', meaning, example).optional();

const { wheelbase, ...body } = bodyFields;
const optionalBody = Object.fromEntries(Object.entries(body).map(([key, field]) => [key, field.optional()]));

export const schema = z.strictObject({
  ...eachSide('caster', angle('kingpin seen from the side, top rearward', '12°')),
  ...eachSide('kingpin inclination', angle('kingpin seen from the front, top inward', '11°')),
  ...eachSide('stub length', length('kingpin axis at hub height out to the middle plane of the wheel', '110 mm')),
  ...eachSide('hub forward', length('hub ahead of the kingpin axis; behind it below 0', '0 mm')),
  ...eachSide('tyre diameter', length('of the front tyre over its tread; the diameter, not the radius', '260 mm')),
  ...eachSide('camber', angle('wheel straight ahead, top outward above 0', '0°')),
  'tyre width': length('flat width of the front tread', '135 mm'),
  'steering angle': angle('turn of both kingpins, where no linkage is given', '10°'),
  wheelbase: wheelbase.optional(),
  'kingpin spacing': length('between the kingpin axes at hub height', '800 mm'),
  'inner angle': angle('wheel on the inside, read on a turn plate; both read, without sign', '12°'),
  'outer angle': angle('wheel on the outside at the same time', '10°'),
  'column angle': angle('turn of the steering column', '20°'),
  'column axis ahead': length('axis of the column ahead of the kingpins, at its arm; behind below 0', '-35 mm'),
  'column arm': length('axis of the column to the inner ends of the tie rods', '60 mm'),
  'column arm spread': angle('between the two inner ends, half to each side of straight back', '50°'),
  'column rake': angle('axis of the column out of the vertical, top rearward', '0°'),
  ...eachSide('arm back', length('outer end of the tie rod behind the kingpin; ahead below 0', '95 mm')),
  ...eachSide('arm in', length('outer end of the tie rod inward of the kingpin', '20 mm')),
  ...eachSide('arm drop', length('outer end of the tie rod below hub height', '0 mm')),
  'column arm drop': length('inner ends of the tie rods below hub height', '0 mm'),
  ...eachSide('tie rod', length('joint to joint; as long as holds the wheel straight when not given', '354.7 mm')),
  ...optionalBody,
  ...twistFields,
  'lateral acceleration': quantity('acceleration', 'across the kart, 0 or more', '1 g').optional(),
});
export type Input = z.output<typeof schema>;

export const LINKAGE = ['column axis ahead', 'column arm', 'column arm spread', 'arm back', 'arm in'] as const;
export const WEIGHT = ['mass', 'front share', 'cg height'] as const;
export const SPRINGS = ['front tyre stiffness', 'rear tyre stiffness', 'rear contact track'] as const;
