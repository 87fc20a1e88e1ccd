/** Random facts of a few karts, parts and devices, for properties: sealed, chained, and written in a world of bad clocks. */
import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { CHAIN_START, type ChainEnd, type Draft, type Fact, sealNext, TYRES } from '../../src/book/index.ts';
import { CORNERS, GRADES, POSTURES } from '../../src/kart/index.ts';

const START = Date.parse('2026-03-01T08:00:00.000Z');
const DEVICES = ['bench tablet', 'phone A', 'phone B'];
const KARTS = ['41', '7'];

const part = fc.constantFrom('rear hub left', 'rear wheel left', 'engine', 'constructor', '__proto__');
const joint = fc.constantFrom('rear hub left/pinch bolts', 'engine/clamp bolts');
const item = fc.oneof(fc.constantFrom('rear hub left/seat', 'front end/toe'), joint);
const words = fc.string({ minLength: 1, maxLength: 20, unit: 'grapheme' });
const amount = fc.integer({ min: 0, max: 240 }).map(quarter => quarter / 4); // exact in binary
const reading = fc.record(
  {
    text: fc.constantFrom('5 3/4 in', '146 mm', '20 N·m'),
    si: fc.double({ noNaN: true, noDefaultInfinity: true }),
    unit: fc.constantFrom('in', 'mm', 'N·m'),
    instrument: words,
  },
  { requiredKeys: ['text', 'si', 'unit'] },
);
const flag = fc.boolean();
/** Place of an earlier fact, as a fraction of those there are; turned into its id when facts are sealed. */
const earlier = fc.double({ min: 0, max: 1, noNaN: true }).map(fraction => `earlier ${fraction}`);
const k = <K extends string>(kind: K) => fc.constant(kind);
const some = { noNullPrototype: true } as const;

const payload = fc.oneof(
  fc.record({ kind: k('kart filed'), text: words }),
  fc.record(
    { kind: k('event'), event: words, from: fc.constant('2026-05-01T07:00:00.000Z'), minutes: amount, wet: flag },
    { requiredKeys: ['kind', 'event', 'from', 'minutes'], ...some },
  ),
  fc.record(
    { kind: k('fitted'), part, fresh: flag, serial: words, carriedMinutes: amount, carriedLaps: amount },
    { requiredKeys: ['kind', 'part'], ...some },
  ),
  fc.record({ kind: k('taken off'), part }),
  fc.record({ kind: k('moved'), part, to: fc.constantFrom(...KARTS) }),
  fc.record(
    {
      kind: k('ran'),
      minutes: amount,
      laps: amount,
      event: words,
      wet: flag,
      impact: fc.record({ corner: fc.constantFrom(...CORNERS), severity: fc.constantFrom('knock', 'hit', 'crash') }),
      meterHours: amount,
    },
    { requiredKeys: ['kind', 'minutes'], ...some },
  ),
  fc.record(
    {
      kind: k('checked'),
      item,
      result: fc.constantFrom('pass', 'fail', 'not possible'),
      reading,
      secondLook: flag,
      why: words,
    },
    { requiredKeys: ['kind', 'item', 'result'], ...some },
  ),
  fc.record(
    { kind: k('made'), joint, reading, secondLook: flag, second: fc.constantFrom('in place', 'not fitted') },
    { requiredKeys: ['kind', 'joint'], ...some },
  ),
  fc.record({ kind: k('loosened'), joint }),
  fc.record({ kind: k('set'), item, reading }, { requiredKeys: ['kind', 'item'], ...some }),
  fc.record({ kind: k('found'), part, defect: words, grade: fc.constantFrom(...GRADES) }),
  fc.record({ kind: k('mended'), found: earlier, how: words }),
  fc.record(
    {
      kind: k('failed'),
      part,
      joint,
      how: words,
      lap: fc.integer({ min: 1, max: 30 }),
      afterMinutes: amount,
      lost: fc.array(words, { maxLength: 2 }),
      stopped: flag,
      impact: fc.record({ corner: fc.constantFrom(...CORNERS), severity: fc.constantFrom('knock', 'hit', 'crash') }),
      wouldHaveHeld: words,
    },
    { requiredKeys: ['kind', 'part', 'how'], ...some },
  ),
  fc.record(
    { kind: k('look asked'), items: fc.array(item, { minLength: 1, maxLength: 3 }), why: words, failed: earlier },
    { requiredKeys: ['kind', 'items', 'why'], ...some },
  ),
  fc.record({ kind: k('put on'), posture: fc.constantFrom(...POSTURES) }),
  fc.record({ kind: k('set-up'), changes: fc.dictionary(fc.constantFrom('toe', 'rear sprocket'), words, some) }),
  fc.record(
    { kind: k('weather'), celsius: amount, pascal: amount, pressureIs: fc.constantFrom('station', 'QNH', 'sea level') },
    { requiredKeys: ['kind'], ...some },
  ),
  fc.record({ kind: k('plug read'), says: fc.constantFrom('lean', 'right', 'rich') }),
  fc.record({
    kind: k('treads probed'),
    celsius: fc.dictionary(
      fc.constantFrom(...TYRES),
      fc.record({ inside: amount, middle: amount, outside: amount }),
      some,
    ),
  }),
  fc.record({ kind: k('fuel used'), litres: fc.constantFrom(0.5, 4.25), laps: amount }),
  fc.record(
    {
      kind: k('laps'),
      name: words,
      laps: amount,
      timed: fc.constantFrom('by log', 'by hand'),
      run: earlier,
      times: fc.array(fc.record({ time: fc.constantFrom(51.25, 62.5), spread: fc.constantFrom(0, 0.125) }), {
        maxLength: 3,
      }),
    },
    { requiredKeys: ['kind', 'name', 'laps'], ...some },
  ),
  fc.record(
    {
      kind: k('life expected'),
      of: part,
      halfHours: fc.constantFrom(20, 40.5),
      tenthHours: fc.constant(8),
      interval: flag,
    },
    { requiredKeys: ['kind', 'of', 'halfHours'], ...some },
  ),
  fc.record({ kind: k('spares counted'), of: part, count: fc.nat(5) }),
  fc.record({ kind: k('note'), text: words }),
  fc.record({ kind: k('struck'), fact: earlier, why: words }),
  fc.record({ kind: k('struck'), fact: earlier, why: words }),
);

const written = fc.record({
  payload,
  device: fc.constantFrom(...DEVICES),
  kart: fc.oneof({ weight: 4, arbitrary: k('41') }, k('7')),
  at: fc.integer({ min: 0, max: 5000 }),
  recorded: fc.integer({ min: 0, max: 5000 }),
  salted: fc.boolean(), // format 2, else format 1
  by: fc.constantFrom('A. Sample', 'B. Sample'),
});
type Written = typeof written extends fc.Arbitrary<infer T> ? T : never;

const instant = (minute: number): string => new Date(START + minute * 60_000).toISOString();

function sealed(all: readonly Written[]): readonly Fact[] {
  const ends = new Map<string, ChainEnd>();
  const facts: Fact[] = [];
  for (const { payload, device, kart, at, recorded, salted, by } of all) {
    const envelope = {
      id: `f${facts.length}`,
      kart,
      at: instant(at),
      recorded: instant(recorded),
      by,
      device,
      ...(salted && { salt: createHash('sha256').update(`${facts.length}`).digest('hex').slice(0, 32) }),
    };
    const fact = sealNext(ends.get(device) ?? CHAIN_START, { ...named(payload, facts), ...envelope } as Draft);
    ends.set(device, fact);
    facts.push(fact);
  }
  return facts;
}

/** A strike or a mend names a fact that was there; the first ever names one that never comes. */
function named(payload: Written['payload'], facts: readonly Fact[]): Written['payload'] {
  const pick = (text: string) => facts[Math.floor(Number(text.slice(8)) * facts.length)]?.id ?? 'never written';
  if (payload.kind === 'struck') return { ...payload, fact: pick(payload.fact) };
  if (payload.kind === 'mended') return { ...payload, found: pick(payload.found) };
  if (payload.kind === 'look asked' && payload.failed) return { ...payload, failed: pick(payload.failed) };
  return payload;
}

/** Whole books, in the order in which their devices wrote. */
export const books = fc.array(written, { maxLength: 60 }).map(sealed);
/** A book, and the same facts as they may arrive elsewhere: in any order, some more than once. */
export const arrivals = books.chain(facts =>
  fc.tuple(
    fc.constant(facts),
    fc.shuffledSubarray([...facts, ...facts.slice(0, 5)], { minLength: facts.length + Math.min(5, facts.length) }),
  ),
);
