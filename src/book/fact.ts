/**
 * A fact: one thing that happened, as a paper log would hold it. Never edited, never deleted (SPEC B4); a wrong one is
 * struck by a later one. The rules are numbered in SPEC.md beside this file.
 */
import { z } from 'zod';
import { CORNERS, GRADES, POSTURES } from '../kart/index.ts';
import { BARRED, NAMES, OUT, PERSONAL } from './personal.ts';

/** The formats in which facts lie: 1, sealed as a whole; 2, what may name a person sealed apart (personal.ts). */
export const FACT_FORMATS = [1, 2] as const;
export const FACT_FORMAT = 2;

const id = z.string().min(1).max(64);
const name = z.string().min(1).max(200);
const words = z.string().min(1).max(4000);
/** RFC 3339 instant in UTC, so that text order is time order: 2026-11-25T15:45:17.000Z */
export const instant = z.iso.datetime({ precision: 3 });
const amount = z.number().finite().nonnegative();
const celsius = z.number().finite();
const sha256 = z.string().length(64); // hex
const photo = sha256;
export const TYRES = ['front left', 'front right', 'rear left', 'rear right'] as const;
export type Tyre = (typeof TYRES)[number];

/** A reading as it was taken: the text the person gave, what it is in SI, and with what it was read. */
export const reading = z.strictObject({
  text: z.string().min(1).max(100),
  si: z.number().finite(),
  unit: z.string().max(20), // the unit of `text`
  instrument: z.string().max(100).optional(),
  resolution: z.number().finite().positive().optional(), // SI
});
export type Reading = z.infer<typeof reading>;

/** ° north, ° east: WGS 84. */
const place = z.tuple([z.number().min(-90).max(90), z.number().min(-180).max(180)]);
const gate = z.strictObject({ left: place, right: place }); // as the driver sees it
/** What stands against comparing a lap as it is. */
export const LAP_DOUBTS = ['hole at the gate', 'hole inside', 'may be more than one lap', 'stood still'] as const;
/** A full lap, or with `way` a way out to the first crossing or in from the last. */
const timedLap = z.strictObject({
  time: amount.positive(), // s
  spread: amount, // s, one standard deviation
  way: z.enum(['out', 'in']).optional(),
  outing: z.number().int().positive().optional(), // from 1
  sectors: z.array(amount.nullable()).max(30).optional(), // s; null on both sides of a gate that was not crossed
  doubts: z.array(z.enum(LAP_DOUBTS)).optional(),
  marked: z.literal(true).optional(), // by a person, as not counting: traffic, a mistake
});
export type TimedLap = z.infer<typeof timedLap>;
/** Once round, from gate to gate. */
export const isFull = (lap: TimedLap): boolean => lap.way === undefined;
export type BookGate = z.infer<typeof gate>;
/** Where a log's columns stand, as a person chose them: role to heading and unit. */
const columns = z.strictObject({
  signature: z.string().min(1).max(2000), // of the header line
  roles: z.record(z.string().max(20), z.strictObject({ heading: name, unit: z.string().max(20).optional() })),
});

const impact = z.strictObject({ corner: z.enum(CORNERS), severity: z.enum(['knock', 'hit', 'crash']) });

/** [from, how many] of the letters of a text, as UTF-16 counts them. */
const bar = z.tuple([z.number().int().nonnegative(), z.number().int().positive()]);
/** What is taken out of one fact. */
const redaction = z.strictObject({
  fact: id,
  names: z.array(z.enum(NAMES)).optional(),
  bars: z.partialRecord(z.enum(BARRED), z.array(bar).max(1000)).optional(), // blacked out, letter by letter
  out: z.array(z.enum(OUT)).optional(), // as a whole
  bones: sha256.optional(), // of what stays, for a fact of format 1
});
export type Redaction = z.infer<typeof redaction>;

const payloads = [
  /** The kart file as it stands from here on; the text itself, so that any past day can be asked again. */
  z.strictObject({ kind: z.literal('kart filed'), text: z.string().max(2_000_000) }),
  /** An event that is coming (or came): what it will ask of the kart. Same name again replaces it. */
  z.strictObject({
    kind: z.literal('event'),
    event: name,
    from: instant,
    until: instant.optional(),
    track: name.optional(),
    minutes: amount, // expected running, minutes
    laps: amount.optional(),
    wet: z.boolean().optional(),
  }),
  /** Put on. `fresh`: not the one that came off but another; its hours so far are carried in. */
  z.strictObject({
    kind: z.literal('fitted'),
    part: name,
    fresh: z.boolean().optional(),
    serial: z.string().max(100).optional(),
    carriedMinutes: amount.optional(),
    carriedLaps: amount.optional(),
  }),
  z.strictObject({ kind: z.literal('taken off'), part: name, why: words.optional() }),
  z.strictObject({ kind: z.literal('moved'), part: name, serial: z.string().max(100).optional(), to: name }),
  z.strictObject({
    kind: z.literal('ran'),
    event: name.optional(),
    session: name.optional(),
    minutes: amount,
    laps: amount.optional(),
    wet: z.boolean().optional(),
    impact: impact.optional(),
    track: name.optional(),
    conditions: words.optional(),
    meterHours: amount.optional(), // what the hour meter reads afterwards
  }),
  z.strictObject({
    kind: z.literal('checked'),
    item: name,
    result: z.enum(['pass', 'fail', 'not possible']),
    reading: reading.optional(),
    secondLook: z.boolean().optional(),
    why: words.optional(), // the defect, or why it could not be done
  }),
  /** A joint made: pulled to its torque, or its retention put in. */
  z.strictObject({
    kind: z.literal('made'),
    joint: name,
    reading: reading.optional(),
    secondLook: z.boolean().optional(),
    second: z.enum(['in place', 'not fitted']).optional(),
    why: words.optional(),
  }),
  /** A joint opened without taking its part off. */
  z.strictObject({ kind: z.literal('loosened'), joint: name, why: words.optional() }),
  /** A dimension or adjustment brought to a value. */
  z.strictObject({ kind: z.literal('set'), item: name, reading: reading.optional(), why: words.optional() }),
  z.strictObject({
    kind: z.literal('found'),
    part: name,
    item: name.optional(),
    defect: words,
    grade: z.enum(GRADES),
    photo: photo.optional(),
  }),
  z.strictObject({ kind: z.literal('mended'), found: id, how: words }),
  /** What failed while the kart ran: the part itself, or the joint that let go. */
  z.strictObject({
    kind: z.literal('failed'),
    part: name,
    joint: name.optional(), // left out: the part itself
    how: words, // as it was seen afterwards
    event: name.optional(),
    session: name.optional(),
    lap: z.number().int().positive().optional(),
    afterMinutes: amount.optional(), // run-minutes of the part by then; left out: those on record
    lost: z.array(name).max(50).optional(), // functions of the kart that went with it
    stopped: z.boolean().optional(), // the kart
    impact: impact.optional(),
    wouldHaveHeld: words.optional(),
    photo: photo.optional(),
  }),
  /** Items that somebody wants looked at again, whatever was passed before. */
  z.strictObject({
    kind: z.literal('look asked'),
    items: z.array(name).min(1).max(1000),
    why: words,
    failed: id.optional(), // what failed elsewhere
    second: name.optional(), // a second retention that these joints are to have, and have not yet
  }),
  z.strictObject({ kind: z.literal('put on'), posture: z.enum(POSTURES) }),
  z.strictObject({ kind: z.literal('set-up'), changes: z.record(name, z.string().max(200)), why: words.optional() }),
  z.strictObject({ kind: z.literal('tyres'), set: name, cycles: amount.optional(), note: words.optional() }),
  z.strictObject({ kind: z.literal('fuel mixed'), litres: amount, oilMillilitres: amount, note: words.optional() }),
  z.strictObject({
    kind: z.literal('weather'),
    celsius: z.number().finite().optional(),
    pascal: amount.optional(), // absolute, as it was read
    /** Which pressure that is: of the place, or brought down to the sea. Unknown when left out, and asked for. */
    pressureIs: z.enum(['station', 'QNH', 'sea level']).optional(),
    elevation: z.number().finite().optional(), // m above the sea, where it was read
    trackCelsius: celsius.optional(), // of the surface
    humidity: z.number().min(0).max(1).optional(),
    /** How far the instruments may be off, each way. */
    within: z.strictObject({ celsius: amount, pascal: amount, humidity: amount }).partial().optional(),
    track: name.optional(),
    note: words.optional(),
  }),
  /** What plug and piston said of the mixture after full throttle. */
  z.strictObject({ kind: z.literal('plug read'), says: z.enum(['lean', 'right', 'rich']), note: words.optional() }),
  /** Tread temperatures by probe at once after a run: toward the kart, middle, away from it. */
  z.strictObject({
    kind: z.literal('treads probed'),
    celsius: z.partialRecord(z.enum(TYRES), z.strictObject({ inside: celsius, middle: celsius, outside: celsius })),
    note: words.optional(),
  }),
  /** Filled in less drained, over these laps; the laps of the run before it when left out. */
  z.strictObject({
    kind: z.literal('fuel used'),
    litres: amount.positive(),
    laps: amount.optional(),
    note: words.optional(),
  }),
  /** What the laps of a run were, from a log or from a stopwatch (SPEC B28 to B31). */
  z.strictObject({
    kind: z.literal('laps'),
    file: z.string().length(64).optional(), // sha-256 of the log, hex; a stopwatch has none
    fileKept: z.literal(false).optional(), // the log was too large to be kept
    name,
    laps: amount, // full ones
    timed: z.enum(['by log', 'by hand']).optional(),
    times: z.array(timedLap).max(5000).optional(), // as driven
    run: id.optional(), // the `ran` they belong to
    event: name.optional(),
    session: name.optional(),
    track: name.optional(),
    from: instant.optional(), // when the log begins
    minutes: amount.optional(), // of moving
    metres: amount.optional(), // driven
    gates: z.array(gate).max(30).optional(), // start and finish first
    columns: columns.optional(),
  }),
  /** How long parts of a kind last, as a person or their maker says it, in running hours; one answer or both. */
  z.strictObject({
    kind: z.literal('life expected'),
    of: name, // a kind of the kart file
    halfHours: amount.positive().optional(), // by which half of them are gone
    tenthHours: amount.positive().optional(), // by which one in ten is
    /** The tenth is the service interval of the maker. */
    interval: z.boolean().optional(),
    why: words.optional(), // from what it is known
  }),
  /** How many lie in the spares box, counted there and then. */
  z.strictObject({ kind: z.literal('spares counted'), of: name, count: z.number().int().min(0).max(999) }),
  z.strictObject({ kind: z.literal('note'), text: words, part: name.optional() }),
  /** A person signs; `open` is what stood open at that moment, as it was shown. */
  z.strictObject({
    kind: z.literal('released'),
    event: name.optional(),
    signer: name,
    verdict: z.enum(['fit', 'not fit', 'not known']),
    open: z.array(z.string().max(500)),
    statement: words,
  }),
  z.strictObject({ kind: z.literal('struck'), fact: id, why: words }),
  /** What names a person is taken out of these facts and these files (SPEC B35 to B39); it never says the name itself. */
  z.strictObject({
    kind: z.literal('redacted'),
    as: z.string().min(1).max(40), // the name that stands there from now on
    facts: z.array(redaction).min(1).max(500),
    files: z.array(sha256).max(1000).optional(), // photos and logs that nobody keeps any more
  }),
] as const;

export const payload = z.discriminatedUnion('kind', payloads);
export type Payload = z.infer<typeof payload>;
export type FactKind = Payload['kind'];
export const FACT_KINDS = payloads.map(p => p.shape.kind.value) as readonly FactKind[];

const envelope = {
  v: z.literal(FACT_FORMATS),
  id,
  kart: name,
  at: instant, // when it happened
  recorded: instant, // when it was written
  by: name,
  device: name,
  seq: z.number().int().positive(), // 1, 2, 3 ... per device
  prev: z.string().length(64), // hash of this device's fact before; 64 zeros for its first
  salt: z.string().min(16).max(64).optional(), // format 2: random, so that no name can be tried against its digest
  gone: z.partialRecord(z.enum(PERSONAL), sha256.nullable()).optional(), // redacted: digests; null, of format 1, none
  salts: z.partialRecord(z.enum(PERSONAL), sha256).optional(), // redacted: of what stayed
};
type Envelope = z.infer<z.ZodObject<typeof envelope>>;

/** Everything of a fact but its own hash. */
export type Unhashed = Payload & Envelope;
export type Fact = Unhashed & { readonly hash: string };
export type FactOf<K extends FactKind> = Extract<Fact, { kind: K }>;

/** Validates one fact that came from outside. Strict: an unknown key is an error, not ignored. */
export const fact = z.discriminatedUnion(
  'kind',
  payloads.map(p => p.extend({ ...envelope, hash: z.string().length(64) })) as unknown as [
    (typeof payloads)[0],
    ...(typeof payloads)[number][],
  ],
) as unknown as z.ZodType<Fact>;
