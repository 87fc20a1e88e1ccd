/** What second retentions are chosen for karts so small that every choice can be reckoned by hand. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { facts, minute } from '../../../test/random-kart.ts';
import { kartFrom } from '../../../test/template-karts.ts';
import { fold, type Payload } from '../../book/index.ts';
import type { Joint, Kart } from '../../kart/index.ts';
import { readPriors } from '../../life/index.ts';
import { readRetentions } from '../retentions/index.ts';
import { secondRetentions } from './second-retentions.ts';
import { looksOf } from './weak-links.ts';

const read = (file: string): string => readFileSync(new URL(`../../../data/${file}`, import.meta.url), 'utf8');
const ask = {
  now: minute(9000),
  retentions: readRetentions(read('retentions.yaml')),
  priors: readPriors(read('priors.yaml')),
};

/** Push rods, each on two clevis pins with a spring clip and nothing behind it. */
const rods = (functions: string, pins = '{ second: none }'): Kart =>
  kartFrom(`
parts:
  pedal: { kind: brake pedal, system: brakes }
${['a', 'b', 'c', 'd']
  .map(
    name =>
      `  ${name}: { kind: brake push rod, system: brakes, joints: { lock nut: none, clevis pins: ${name === 'a' ? pins : '{ second: none }'} } }`,
  )
  .join('\n')}
functions:
${functions}
`);
const [A, B, C] = ['a/clevis pins', 'b/clevis pins', 'c/clevis pins'] as const;
const withJoint = (kart: Kart, id: string, over: Partial<Joint>): Kart => {
  const joint = kart.joints[id];
  if (!joint) throw new Error(`kart must have ${id}`);
  return { ...kart, joints: { ...kart.joints, [id]: { ...joint, ...over } } };
};
const choose = (kart: Kart, budget: { money?: number; minutes?: number } = {}, said: readonly Payload[] = []) =>
  secondRetentions(kart, fold(facts(said)), ask, budget);
const fitted = (kart: Kart, budget: { money?: number; minutes?: number } = {}) =>
  choose(kart, budget).chosen.fittings.map(({ joint, retention }) => [joint, retention]);

/** Declared the other way round: steering before brakes. */
const ONE_EACH = `
  steer: { severity: 2, needs: b }
  stop: { severity: 1, needs: a }`;

const P = 0.002; // a spring clip lets go over one event
/** Both at once, of moderate dependence (1 + 6 P) / 7, NUREG/CR-1278 table 20-17 (memory). */
const FORGOTTEN = (1 + 6 * P) / 7;
/** Clip and strap work differently: only what one pair of hands forgets they have in common. */
const strapped = (p = P, q = 0.02): number => {
  const both = FORGOTTEN * p;
  return both + (1 - both) * (p - both) * (q - both);
};
/** Two clips: besides, one in ten failures of theirs comes from the same cause. */
const clipped = (p = P, q = 0.03): number => {
  const both = (1 - (1 - FORGOTTEN) * (1 - 0.1)) * p;
  return both + (1 - both) * (p - both) * (q - both);
};

describe('a second retention for one rod', () => {
  const one = '  stop: { severity: 1, needs: a }';

  it('is the clip where there are minutes for that alone, the strap where there are more', () => {
    expect(fitted(rods(one), { minutes: 3.9 })).toEqual([]);
    expect(fitted(rods(one), { minutes: 4 })).toEqual([[A, 'second clip']]); // 2 pins of 2 min
    expect(fitted(rods(one), { minutes: 6 })).toEqual([[A, 'strap round the clevis']]); // 2 of 3 min
    expect(fitted(rods(one), { money: 3.9 })).toEqual([]); // 2 of 2
    expect(fitted(rods(one), { money: 4 })).toEqual([[A, 'strap round the clevis']]);
  });

  it('is told with what it costs, what it needs and what it takes away', () => {
    const { budget, chosen, candidates } = choose(rods(one), { minutes: 4, money: 4 });
    expect(budget).toEqual({ minutes: 4, money: 4 });
    const fitting = {
      ...{ joint: A, item: A, part: 'a', system: 'brakes', corner: 'whole', place: { x: 0, y: 0 } },
      ...{ retention: 'second clip', needs: 'a pin long enough for a second groove or hole' },
      ...{ money: 4, minutes: 4, singleOf: 1 },
    };
    expect(chosen).toEqual({
      fittings: [fitting],
      ...{ money: 4, minutes: 4, singlesLeft: { severity1: 0, severity2: 0 } },
      hazards: [
        {
          ...{ function: 'stop', severity: 1, from: P, to: expect.closeTo(clipped(), 15) },
          words: 'from 2 to 0.51 of 1,000',
        },
      ],
    });
    expect(candidates).toEqual([
      fitting,
      expect.objectContaining({ joint: A, retention: 'strap round the clevis', money: 4, minutes: 6 }),
    ]);
    expect(choose(rods(one)).budget).toEqual({ minutes: null, money: null });
    expect(choose(rods(one)).chosen.hazards[0]?.to).toBeCloseTo(strapped(), 15);
  });

  it('says what five minutes more would bring, and nothing where they bring no more', () => {
    const { more } = choose(rods(one), { minutes: 1 });
    expect(more).toMatchObject({
      minutes: 5,
      outcome: { minutes: 6, fittings: [{ retention: 'strap round the clevis' }] },
    });
    expect(choose(rods(one), { minutes: 0 }).more).toMatchObject({ outcome: { minutes: 4 } });
    expect(choose(rods(one), { minutes: 6 }).more).toBeNull();
  });

  it('shows each step of the way once, from nothing to all', () => {
    expect(choose(rods(one), { minutes: 0 }).frontier).toEqual([
      { minutes: 0, money: 0, singlesLeft: { severity1: 1, severity2: 0 }, hazards: [] },
      expect.objectContaining({ minutes: 4, money: 4, singlesLeft: { severity1: 0, severity2: 0 } }),
      expect.objectContaining({ minutes: 6, money: 4 }),
    ]);
    expect(choose(rods(one), { money: 0 }).frontier.map(({ minutes }) => minutes)).toEqual([0]);
  });

  it('is refused for a budget below nothing, and none is chosen for nothing', () => {
    expect(() => choose(rods(one), { money: -1 })).toThrow('secondRetentions: money must be 0 or more, got -1');
    expect(() => choose(rods(one), { minutes: Number.NaN })).toThrow('minutes must be 0 or more, got NaN');
    expect(choose(rods(one), { money: 0, minutes: 0 })).toMatchObject({
      budget: { money: 0, minutes: 0 },
      chosen: { fittings: [], money: 0, minutes: 0 },
    });
  });

  it('is the same where the looks at the kart were made before', () => {
    const kart = rods(one);
    const looks = looksOf(kart, fold([]), ask);
    expect(secondRetentions(kart, fold([]), { ...ask, looks })).toEqual(choose(kart));
  });
});

describe('second retentions for several rods', () => {
  it('go to the brakes before the steering, and both are told worst first', () => {
    const kart = rods(ONE_EACH);
    const { chosen } = choose(kart, { minutes: 4 });
    expect(chosen.fittings.map(({ joint }) => joint)).toEqual([A]);
    expect(chosen.singlesLeft).toEqual({ severity1: 0, severity2: 1 });
    expect(chosen.hazards.map(one => one.function)).toEqual(['stop']);
    const all = choose(kart).chosen;
    expect(all.singlesLeft).toEqual({ severity1: 0, severity2: 0 });
    expect(all.hazards.map(one => one.function)).toEqual(['stop', 'steer']);
    expect(choose(kart, { minutes: 0 }).chosen.singlesLeft).toEqual({ severity1: 1, severity2: 1 });
  });

  it('go to where less of the worst is left, once no joint alone is enough', () => {
    const kart = rods(`
  breathe: { severity: 4, needs: { any of: [c, d] } }
  stop: { severity: 1, needs: { any of: [a, b] } }`);
    const { chosen, candidates } = choose(kart, { minutes: 6 });
    expect(chosen.fittings.map(({ joint }) => joint)).toEqual([A]);
    expect(candidates.map(({ singleOf }) => singleOf)).toEqual(Array(8).fill(null));
    expect(chosen.singlesLeft).toEqual({ severity1: 0, severity2: 0 });
    const hands = (P * (1 + P)) / 2; // one pair of hands made both, high dependence
    const whole = (a: number): number => 1 - (1 - hands) * (1 - a * P);
    expect(chosen.hazards.map(({ function: name, from, to }) => [name, from, to])).toEqual([
      ['stop', expect.closeTo(whole(P), 15), expect.closeTo(whole(strapped()), 15)],
    ]);
    const all = choose(kart, { minutes: 24 }).chosen;
    expect(all.fittings.length).toBe(4);
    expect(all.hazards.map(({ severity }) => severity)).toEqual([1, 4]);
  });

  it('say of a joint the worst that it alone is enough for', () => {
    const kart = rods(`
  steer: { severity: 2, needs: { all of: [a, b] } }
  stop: { severity: 1, needs: { all of: [a, { any of: [b, c] }] } }`);
    const single = (id: string) => choose(kart).candidates.find(({ joint }) => joint === id)?.singleOf;
    expect([A, B, C].map(single)).toEqual([1, 2, null]);
  });

  it('are asked for in at most forty steps: where all take 216 minutes, every ten', () => {
    const kart = withJoint(rods(`  stop: { severity: 1, needs: { all of: [a, b] } }`), B, { count: 70 });
    // a strap on a (6); with it a clip on b (140), then a strap (210); a clip on a alone (4) falls between two steps
    expect(choose(kart).frontier.map(({ minutes }) => minutes)).toEqual([0, 6, 146, 216]);
  });
});

describe('a joint is left alone', () => {
  const joints = (kart: Kart, ...said: Payload[]) => [
    ...new Set(choose(kart, {}, said).candidates.map(({ joint }) => joint)),
  ];

  it('where it has a second that counts, or where no function hangs on it', () => {
    expect(joints(rods(ONE_EACH))).toEqual([A, B]);
    expect(joints(rods(ONE_EACH, '{ second: strap round the clevis }'))).toEqual([B]);
    expect(joints(rods(ONE_EACH, '{ second: witness mark }'))).toEqual([A, B]);
  });

  it('where it is in work, until that is done', () => {
    const made: Payload = { kind: 'made', joint: A };
    expect(joints(rods(ONE_EACH), made, { kind: 'loosened', joint: A })).toEqual([B]);
    expect(joints(rods(ONE_EACH), made, { kind: 'loosened', joint: A }, made)).toEqual([A, B]);
  });

  it('where nothing goes with it, and then it does not count among what is left', () => {
    const kart = withJoint(rods(ONE_EACH), A, { kind: 'bond' });
    expect(joints(kart)).toEqual([B]);
    expect(choose(kart, { minutes: 0 }).chosen.singlesLeft).toEqual({ severity1: 0, severity2: 1 });
  });

  it('not where nobody guessed how often its first lets go: it is a single point all the same', () => {
    const kart = withJoint(rods(ONE_EACH), A, { retention: 'good will' });
    const { chosen } = choose(kart, { minutes: 4 });
    expect(chosen).toMatchObject({
      fittings: [{ joint: A, singleOf: 1 }],
      singlesLeft: { severity1: 0, severity2: 1 },
      hazards: [],
    });
  });
});
