/**
 * The shape of every file: what keys there are and what stands behind them. Shapes never change a value, so that the
 * places kept beside it stay good. The `error` of each says what was expected, in words; validate.ts adds the rest.
 */
import { z } from 'zod';
import { LAPSE_EXPECTED, LAPSE_PATTERN } from './lapse.ts';
import { CORNERS, GRADES, JET_NUMBERS, NUMBERS, POSTURES, REASONS, SYSTEMS, WORK_ACTIONS } from './model.ts';

export const QUANTITY = 'a quantity with its unit, such as "1045 mm"';

/** A map whose keys are all known; validate.ts finds the known ones again in the message. */
const strict = <S extends z.core.$ZodLooseShape>(shape: S) =>
  z.strictObject(shape, {
    error: issue => (issue.code === 'unrecognized_keys' ? Object.keys(shape).join('\n') : 'a map of keys'),
  });

const words = (expected = 'text') => z.string({ error: expected }).min(1, { error: expected }).max(2000);
const name = z
  .string()
  .regex(/^(?!mate )(?!self$)[^\s/][^/\n]{0,89}$/, { error: 'a name of at most 90 letters without "/"' });
const named = <V extends z.ZodType>(value: V) => z.record(name, value, { error: 'a map of names' });
const list = <V extends z.ZodType>(value: V) => z.array(value, { error: 'a list, such as [one, two]' });
const oneOf = <const T extends readonly [string, ...string[]]>(values: T) =>
  z.enum(values, { error: `one of: ${values.join(', ')}` });
const flag = z.boolean({ error: 'true or false' });
const quantity = z.string({ error: QUANTITY }).max(100).describe('Number and unit: 1045 mm, 54 3/4 in, 20 N·m');
const range = z.string({ error: QUANTITY }).max(100).describe('A quantity or a range: 20 N·m, 18..22 N·m');
const minutes = z.number({ error: 'minutes, such as 2.5' }).min(0, { error: 'minutes, 0 or more' }).max(10_000);
const people = z
  .number({ error: 'how many people, 1 to 3' })
  .int({ error: 'a whole number of people' })
  .min(1, { error: 'at least 1 person' })
  .max(3, { error: 'at most 3 people' })
  .describe('How many people it takes; 1 when left out');
const none = z.literal('none');
const orNone = <V extends z.ZodType>(value: V) => z.union([value, none], { error: 'a map of keys, or none' });
const places = list(words('the name of a part'));
const ways = list(places.min(1, { error: 'at least one part' })).describe('Alternatives, each a list of parts');

const handling = strict({
  minutes,
  people: people.optional(),
  posture: oneOf([...POSTURES, 'any']).optional(),
  tools: list(words()).optional(),
  caution: words().optional(),
});

const measure = strict({
  unit: words('the unit a reading is asked in, such as mm'),
  target: quantity.optional(),
  min: quantity.optional(),
  max: quantity.optional(),
  plausible: range.optional().describe('Outside this range the reading is asked again'),
  rule: words().optional().describe('Key of a limit of the rule set'),
  number: oneOf(NUMBERS).optional().describe('Number that gives target and limits, from the dimensions of the kart'),
  dimension: words().optional().describe('Dimension of the kart this is a reading of'),
});

const item = strict({
  title: words(),
  action: oneOf(WORK_ACTIONS),
  how: words(),
  accept: words('the criterion, in words'),
  source: words('common practice; memory, ask the maker; or body and article'),
  grade: oneOf(GRADES),
  when: list(z.string({ error: LAPSE_EXPECTED }).regex(LAPSE_PATTERN, { error: LAPSE_EXPECTED })).min(1, {
    error: `at least one of ${LAPSE_EXPECTED}`,
  }),
  minutes,
  people: people.optional(),
  'needs off': ways.optional(),
  complete: flag.optional().describe('Only with every part on and every joint made'),
  posture: oneOf([...POSTURES, 'any']).optional(),
  'second look': flag.optional(),
  disturbs: list(words('the key of an item')).optional(),
  opens: list(words('the name of a joint')).optional(),
  measure: measure.optional(),
  tools: list(words()).optional(),
  consumables: list(words()).optional(),
  caution: words().optional(),
  reason: oneOf(REASONS).optional().describe('Number that says why it matters, from the dimensions of the kart'),
});
const itemOver = item.extend({ measure: measure.partial().optional() }).partial();

const joint = strict({
  kind: words('bolt, clamp, clip, pin, strap ...'),
  count: z.number({ error: 'a count, such as 2' }).int({ error: 'a whole number' }).min(1).max(999).optional(),
  thread: words().optional(),
  class: words('a property class in quotes, such as "8.8"').optional(),
  torque: range.optional().describe('20 N·m or 18..22 N·m; none takes it away'),
  source: words().optional().describe('Where the torque comes from'),
  retention: words('what holds it: self-locking nut, spring clip, witness mark ...'),
  second: words().optional().describe('A second retention that does not depend on the first; none takes it away'),
  'opened by': list(words('"set" and the key of an item')).optional(),
  carries: list(words('the name of a function'))
    .optional()
    .describe('Functions that end when it lets go; all of its part when left out'),
  check: itemOver.omit({ complete: true, opens: true }).optional(),
});
const jointOver = joint.partial();

const place = z.number({ error: 'a place, 1 or more' }).int({ error: 'a whole number' }).min(1).max(99);

const kindShape = strict({
  removable: flag.optional(),
  'take off': handling.optional(),
  refit: handling.optional(),
  disturbs: list(words('the key of an item')).optional(),
  'load path': strict({ front: place.optional(), rear: place.optional() })
    .optional()
    .describe('Its place on the way of a blow from a wheel into the frame, 1 the wheel'),
  joints: named(jointOver).optional(),
  items: named(itemOver).optional(),
});

const partShape = strict({
  kind: words('the name of a kind').optional(),
  system: oneOf(SYSTEMS).optional(),
  corner: oneOf(CORNERS).optional(),
  place: strict({ x: quantity.optional(), y: quantity.optional() })
    .optional()
    .describe('From the middle of the rear axle: x forward, y left'),
  removable: flag.optional(),
  behind: places.optional().describe('Parts that must be off first'),
  'behind one of': ways.optional(),
  'take off': handling.partial().optional(),
  refit: handling.partial().optional(),
  fits: named(quantity).optional(),
  carries: list(words('the name of a function')).optional(),
  disturbs: list(words('the key of an item')).optional(),
  joints: named(orNone(jointOver)).optional(),
  items: named(orNone(itemOver)).optional(),
  maker: words().optional(),
});

const NEED = 'the name of a part, or one of {all of: [..]}, {any of: [..]}, {2 of: [..]}';
export type NeedFile = string | { [group: string]: NeedFile[] };
const need: z.ZodType<NeedFile> = z
  .lazy(() =>
    z.union(
      [
        words('the name of a part'),
        z
          .record(
            z.string().regex(/^(?:all|any|[1-9]\d?) of$/, { error: 'all of, any of, or a number and of' }),
            list(need).min(1, { error: 'at least one part' }),
          )
          .refine(group => Object.keys(group).length === 1, { error: 'one group: all of, any of, or a number and of' }),
      ],
      { error: NEED },
    ),
  )
  .meta({ id: 'need' });

const functionShape = strict({
  severity: z
    .union([z.literal(1), z.literal(2), z.literal(3), z.literal(4)], { error: 'severity 1, 2, 3 or 4; 1 is the worst' })
    .describe('1 is the worst'),
  hazard: words('what there is without it, such as no brakes')
    .optional()
    .describe('What there is without it: no brakes'),
  needs: need,
});

const lifeShape = strict({
  'one in ten gone by': quantity.optional().describe('Running hours by which one in ten of these is gone: 12 h'),
  'half gone by': quantity.optional().describe('Running hours by which half of these are gone: 30 h'),
  source: words().optional().describe('Who says so: own experience, the maker'),
}).refine(life => life['one in ten gone by'] !== undefined || life['half gone by'] !== undefined, {
  error: '"one in ten gone by:", "half gone by:", or both',
});

const money = z
  .number({ error: 'an amount of money in your own, such as 85' })
  .min(0, { error: 'money, 0 or more' })
  .max(1_000_000);
const costsShape = strict({
  'lost weekend': money.optional().describe('What an event costs that a failure ends: entry, travel, tyres'),
  'accepted chance': quantity
    .optional()
    .describe('Of failing over one event, where it can hurt (severity 1 or 2): 1 %'),
  spares: named(
    strict({
      price: money.optional().describe('Of one new piece, in the money of the whole file'),
      mass: quantity.optional().describe('Of one piece: 1.4 kg'),
      change: quantity.optional().describe('Time to change one at the track: 15 min'),
      alike: flag.optional().describe('false: left and right differ, each part has spares of its own'),
      source: words().optional(),
    }),
  )
    .optional()
    .describe('By kind'),
});

const positive = z.number({ error: 'a number above 0' }).positive({ error: 'a number above 0' });
const teeth = list(
  z.number({ error: 'a whole number of teeth' }).int({ error: 'a whole number of teeth' }).min(8, {
    error: 'a sprocket of at least 8 teeth',
  }),
);

const engineShape = strict({
  primary: positive.optional().describe('Turns of the crankshaft for one of the clutch or gearbox input shaft: 3.90'),
  gears: list(positive).min(1, { error: 'at least one gear' }).optional().describe('Ratios from first to last gear'),
  torque: named(quantity).optional().describe('Full throttle torque at the crankshaft by speed: 8000 rpm: 18 N·m'),
  limiter: quantity.optional().describe('Highest speed its maker allows: 13500 rpm'),
  'mixing ratio': words('petrol to oil, such as 20:1')
    .optional()
    .describe('Petrol to oil by volume, as the maker of the engine writes it: 20:1'),
  'jets are numbered by': oneOf(JET_NUMBERS).optional().describe('What the number on a main jet means'),
  source: words().optional().describe('Where these figures come from'),
});

const boxShape = strict({
  'main jets': list(positive).optional(),
  'front sprockets': teeth.optional(),
  'rear sprockets': teeth.optional(),
});

const postureChange = strict({
  minutes: minutes.optional().describe('From any other posture'),
  from: z
    .partialRecord(oneOf(POSTURES), minutes, { error: 'a map of postures' })
    .optional()
    .describe('Minutes from one posture, where they differ'),
  people: people.optional(),
  source: words().optional(),
});
const posturesShape = strict({
  stand: postureChange.optional(),
  ground: postureChange.optional(),
  scales: postureChange.optional(),
  side: postureChange.optional(),
});

const whole = {
  invented: flag.optional().describe('true only for demo data'),
  rules: words('the id of a rule set').optional(),
  dimensions: named(quantity).optional(),
  parts: named(orNone(partShape)).optional(),
  functions: named(functionShape).optional(),
  engine: engineShape.optional(),
  box: boxShape.optional().describe('What is at hand to choose from at the track'),
  lives: named(lifeShape).optional().describe('How long parts last, as you expect it, by kind'),
  costs: costsShape.optional().describe('What parts and a lost weekend cost, in one money of your own'),
  postures: posturesShape
    .optional()
    .describe('Minutes to bring the kart into each posture; nobody works at it meanwhile'),
};

export const kartShape = strict({
  kart: z.literal(1, { error: 'the format of the file, 1' }).describe('Format of this file'),
  name: words('the name of the kart, in quotes if it is a number'),
  template: words('the name of a template').optional(),
  ...whole,
});
export const templateShape = strict({ template: words('the name of this template'), ...whole });
export const kindsShape = named(kindShape);
export const rulesShape = strict({
  id: words(),
  body: words('who issues the rules'),
  year: z.number({ error: 'a year' }).int().min(1900).max(2200),
  note: words(),
  limits: named(
    strict({ min: quantity.optional(), max: quantity.optional(), text: words().optional(), source: words() }),
  ),
});
export const instrumentsShape = named(
  strict({
    resolution: quantity.describe('The finest step it can be read to'),
    'in inches': quantity.optional().describe('The same where the reading is taken in inches'),
    'scale error': quantity.describe('Limits ± of its own scale: a quantity, or a share of the reading in %'),
    reads: oneOf(['once', 'twice']).optional().describe('twice where both ends of a length are read'),
    source: words(),
  }),
);

/** Used once all layers lie on one another: what an item, a joint and a handling must have in the end. */
export const wholeItem = item;
export const wholeJoint = joint;
export const wholeHandling = handling;

export type ItemFile = z.infer<typeof item>;
export type JointFile = z.infer<typeof joint>;
export type HandlingFile = z.infer<typeof handling>;
export type PartFile = z.infer<typeof partShape>;
export type KindFile = z.infer<typeof kindShape>;
export type EngineFile = z.infer<typeof engineShape>;
export type BoxFile = z.infer<typeof boxShape>;
export type CostsFile = z.infer<typeof costsShape>;
export type PosturesFile = z.infer<typeof posturesShape>;
export type LifeFile = z.infer<typeof lifeShape>;
export type FunctionFile = z.infer<typeof functionShape>;
export type TemplateFile = z.infer<typeof templateShape>;
export type KartFile = z.infer<typeof kartShape>;
export type RulesFile = z.infer<typeof rulesShape>;
export type InstrumentFile = z.infer<typeof instrumentsShape>[string];

/** JSON Schema (draft 7) of a kart file, for editors. */
export const jsonSchema = (): object => ({
  title: 'A Kartwright kart file',
  ...z.toJSONSchema(kartShape, { target: 'draft-7', io: 'input' }),
});
