import { readFileSync } from 'node:fs';
import { describe, expect, it, test } from 'vitest';
import { facts, minute } from '../../../test/random-kart.ts';
import { kartFrom, templateKarts } from '../../../test/template-karts.ts';
import { type Fact, fold, type Payload } from '../../book/index.ts';
import type { Kart } from '../../kart/index.ts';
import { readPriors } from '../../life/index.ts';
import { leftOutToo } from '../fault-tree/index.ts';
import { readRetentions } from '../retentions/index.ts';
import { lookedAt } from './hands.ts';
import { weakLinks } from './index.ts';

const read = (file: string): string => readFileSync(new URL(`../../../data/${file}`, import.meta.url), 'utf8');
const retentions = readRetentions(read('retentions.yaml'));
const priors = readPriors(read('priors.yaml'));

/** Two rods that back each other up, one clip each. */
const kart = kartFrom(`
parts:
  pedal: { kind: brake pedal, system: brakes }
  left: { kind: brake push rod, system: brakes, joints: { lock nut: none, clevis pins: { second: none } } }
  right: { kind: brake push rod, system: brakes, joints: { lock nut: none, clevis pins: { second: none } } }
functions:
  stop: { severity: 1, hazard: no brakes, needs: { all of: [pedal, { any of: [left, right] }] } }
`);
const one: Kart = {
  ...kart,
  functions: {
    stop: { name: 'stop', severity: 1, hazard: 'no brakes', needs: { allOf: [{ part: 'left' }, { part: 'right' }] } },
  },
};
const [LEFT, RIGHT] = ['left/clevis pins', 'right/clevis pins'] as const;

type Done = { readonly what: Payload; readonly by?: string; readonly at: number };
const book = (...done: readonly Done[]): readonly Fact[] =>
  facts(done.map(({ what }) => what)).map((fact, n) => {
    const { by = 'A. Bench', at = 0 } = done[n] ?? {};
    return { ...fact, by, at: minute(at), recorded: minute(at) } as Fact;
  });
const made = (joint: string, at: number, by?: string): Done => ({
  what: { kind: 'made', joint },
  at,
  ...(by ? { by } : {}),
});
const look = (item: string, at: number, by?: string): Done => ({
  what: { kind: 'checked', item, result: 'pass', secondLook: true },
  at,
  ...(by ? { by } : {}),
});
const of = (kartOf: Kart, ...done: readonly Done[]) => {
  const [hazard] = weakLinks(kartOf, fold(book(...done)), { now: minute(5000), retentions, priors }).hazards;
  const hands = hazard?.singlePoints.find(({ id }) => id.startsWith('one pair of hands'));
  return { hands, chance: hands?.likely?.chance ?? 0, whole: hazard?.atLeast?.chance ?? Number.NaN };
};
const P = 0.002; // of a spring clip, data/retentions.yaml

describe('one pair of hands on joints that back each other up', () => {
  it('is an event that alone is enough, as likely as that the second step is left out with the first', () => {
    const { hands, chance } = of(kart, made(LEFT, 0), made(RIGHT, 4));
    expect(hands?.sentence).toBe(
      'One pair of hands stands between you and no brakes: clevis pins of left and right, made by A. Bench within 4 min, looked at once.',
    );
    expect(chance).toBeCloseTo(P * leftOutToo(P, 'high'), 15);
    expect(hands).toMatchObject({ sort: 'shared', couldAdd: [] });
  });

  it('counts less when another looked, when time lay between, and not at all when two made them', () => {
    const once = of(kart, made(LEFT, 0), made(RIGHT, 4));
    const other = of(kart, made(LEFT, 0), made(RIGHT, 4), look(LEFT, 30, 'B. Other'), look(RIGHT, 31, 'B. Other'));
    const half = of(kart, made(LEFT, 0), made(RIGHT, 4), look(LEFT, 30, 'B. Other'));
    const apart = of(kart, made(LEFT, 0), made(RIGHT, 400));
    const two = of(kart, made(LEFT, 0), made(RIGHT, 4, 'B. Other'));
    expect(other.chance).toBeCloseTo(P * leftOutToo(P, 'low'), 15);
    expect(half.chance).toBe(once.chance); // the one that nobody else looked at decides
    expect(apart.chance).toBeCloseTo(P * leftOutToo(P, 'moderate'), 15);
    expect(two.hands).toBeUndefined();
    expect([once, apart, other, two].map(({ whole }) => whole)).toEqual(
      [once, apart, other, two].map(({ whole }) => whole).toSorted((a, b) => b - a),
    );
  });

  it('says who made them, how far apart, and who looked', () => {
    const says = (...done: readonly Done[]) =>
      of(kart, ...done).hands?.says.replace('one pair of hands: clevis pins of left and right, ', '');
    expect(of(kart, made(LEFT, 0), made(RIGHT, 4)).hands?.id).toBe(
      'one pair of hands: brake push rod, clevis pins, a. bench',
    );
    expect(says(made(LEFT, 0), made(RIGHT, 400))).toBe('made by A. Bench at different times, looked at once');
    expect(says(made(LEFT, 0), made(RIGHT, 60))).toBe('made by A. Bench at different times, looked at once');
    expect(says(made(LEFT, 0), made(RIGHT, 59))).toBe('made by A. Bench within 59 min, looked at once');
    expect(says(made(LEFT, 0), made(RIGHT, 0, ' a. bench '))).toBe('made by A. Bench within 1 min, looked at once');
    expect(says(made(LEFT, 0), made(RIGHT, 4), look(LEFT, 30, 'B. Other'))).toBe(
      'made by A. Bench within 4 min, looked at twice, by two people or looked at once',
    );
    expect(of(kart, made(LEFT, 0), made(RIGHT, 10)).chance).toBeCloseTo(P * leftOutToo(P, 'high'), 15); // still at once
  });

  it('is as likely as the less likely of its joints, and the other with it', () => {
    const joint = kart.joints[RIGHT];
    if (!joint) throw new Error('the kart has it');
    const uneven = { ...kart, joints: { ...kart.joints, [RIGHT]: { ...joint, retention: 'R-clip' } } }; // 0.004
    expect(of(uneven, made(LEFT, 0), made(RIGHT, 4)).chance).toBeCloseTo(P * leftOutToo(P, 'high'), 15);
  });

  it('takes two retentions of a joint together for what lets go there', () => {
    const strapped: Kart = {
      ...kart,
      joints: Object.fromEntries(
        Object.entries(kart.joints).map(([id, joint]) => [id, { ...joint, second: 'strap round the clevis' }]),
      ),
    };
    const done = [made(LEFT, 0), made(RIGHT, 4)];
    const q = 0.02; // of the strap as a second
    const both = leftOutToo(P, 'high') * P; // one look: high dependence of the strap on the clip
    const pair = both + (1 - both) * (P - both) * (q - both);
    expect(of(strapped, ...done).chance).toBeCloseTo(pair * leftOutToo(pair, 'high'), 15);
  });

  it('is looked for among those that k of many need: where too few are left, and none alone is enough', () => {
    const parts = ['left', 'right', 'pedal'].map(part => ({ part }));
    const needing = (k: number): Kart => ({
      ...kart,
      functions: { stop: { name: 'stop', severity: 1, hazard: 'no brakes', needs: { kOf: k, of: parts } } },
    });
    const done = [made(LEFT, 0), made(RIGHT, 4)];
    expect(of(needing(1), ...done).hands).toBeUndefined(); // the pedal is left
    expect(of(needing(2), ...done).hands?.says).toContain('clevis pins of left and right');
    expect(of(needing(3), ...done).hands).toBeUndefined(); // each alone is enough
  });

  it('is a guess by the published table, and lies on no one corner', () => {
    expect(of(kart, made(LEFT, 0), made(RIGHT, 4)).hands).toMatchObject({
      system: 'brakes',
      corner: 'whole',
      unknown: null,
      likely: {
        basis:
          'Only our starting guess: NUREG/CR-1278 table 20-17 (memory); which word for which look is common practice.',
      },
    });
  });

  it('is taken for one pair where nobody wrote down whose they were', () => {
    const { hands, chance } = of(kart);
    expect(hands?.id).toBe('one pair of hands: brake push rod, clevis pins');
    expect(chance).toBeCloseTo(P * leftOutToo(P, 'high'), 15);
    expect(hands?.says).toContain('nobody wrote down who made them');
  });

  it('adds nothing where each joint is enough alone, nor where one of them is open', () => {
    expect(of(one, made(LEFT, 0), made(RIGHT, 4)).hands).toBeUndefined();
    const opened: Done = { what: { kind: 'loosened', joint: LEFT }, at: 9 };
    expect(of(kart, made(LEFT, 0), made(RIGHT, 4), opened).hands).toBeUndefined();
  });

  it('is seen on the karts of the templates, where brakes are made in pairs', () => {
    const found = templateKarts().flatMap(each =>
      weakLinks(each, fold([]), { now: minute(0), retentions, priors }).hazards.flatMap(({ singlePoints }) =>
        singlePoints.filter(({ id }) => id.startsWith('one pair of hands')),
      ),
    );
    expect(found.length).toBeGreaterThan(0);
    for (const { says, sentence } of found) {
      expect(says).toMatch(/^one pair of hands: .+ of .+ and .+, nobody wrote down who made them$/);
      expect(sentence).toMatch(/^One pair of hands stands between you and .+: .+\.$/);
    }
  });
});

describe('a second look by the one who made it', () => {
  const level = (...done: readonly Done[]) => {
    const joint = kart.joints[LEFT];
    if (!joint) throw new Error('the kart has it');
    return lookedAt(kart, fold(book(...done)), joint, { now: minute(5000), retentions });
  };
  const both = [made(LEFT, 0), made(RIGHT, 3)] as const;

  test('within minutes is one look; later it is another; in another order it is worth what a second person is', () => {
    expect(level(made(LEFT, 0), look(LEFT, 10)).dependence).toBe('high');
    expect(level(made(LEFT, 0), look(LEFT, 11)).dependence).toBe('moderate');
    expect(level(...both, look(LEFT, 60), look(RIGHT, 61)).dependence).toBe('moderate');
    const turned = level(...both, look(RIGHT, 60), look(LEFT, 61));
    expect(turned).toMatchObject({ dependence: 'low', says: 'looked at twice, by one person in another order' });
  });

  test('by another person, whenever, is one by two people; a name written otherwise is no other person', () => {
    expect(level(made(LEFT, 0), look(LEFT, 1, 'B. Other'))).toMatchObject({
      dependence: 'low',
      says: 'looked at twice, by two people',
    });
    expect(level(made(LEFT, 0), look(LEFT, 1, ' a. BENCH ')).dependence).toBe('high');
  });

  test('is none while nobody looked, and none any more once a look failed', () => {
    const none = { verified: false, dependence: 'high', says: 'not looked at since' };
    expect(level()).toEqual(none);
    expect(level(made(LEFT, 0))).toEqual({ verified: true, dependence: 'high', says: 'looked at once' });
    const failed: Done = { what: { kind: 'checked', item: LEFT, result: 'fail', why: 'bent' }, at: 5 };
    expect(level(made(LEFT, 0), failed)).toEqual(none);
    expect(level(made(LEFT, 0), { what: { kind: 'loosened', joint: LEFT }, at: 5 })).toEqual(none);
    expect(level(made(LEFT, 0, ' A. Bench'), look(LEFT, 11, 'A. Bench'))).toEqual({
      verified: true,
      dependence: 'moderate',
      says: 'looked at twice, by one person',
    });
  });

  test('is in another order only by one walk of one person, and where both neighbours changed', () => {
    const NUT = 'right/lock nut';
    const one = 'looked at twice, by one person';
    const walk = (...done: readonly Done[]) => level(...both, made(NUT, 4), ...done).says;
    expect(level(...both, look(RIGHT, 60), look(LEFT, 60 + 1440)).says).toBe(one); // another day
    expect(level(made(LEFT, 0), made(RIGHT, 3, 'B. Other'), look(RIGHT, 60, 'B. Other'), look(LEFT, 61)).says).toBe(
      one,
    );
    expect(level(...both, look(RIGHT, 60, 'B. Other'), look(LEFT, 61)).says).toBe(one);
    expect(walk(look(NUT, 60), look(LEFT, 61), look(RIGHT, 62))).toBe(one); // the same comes after it
    expect(walk(look(LEFT, 60), look(NUT, 61), look(RIGHT, 62))).toBe(one); // the same comes before it
    expect(walk(look(RIGHT, 60), look(LEFT, 61), look(NUT, 62))).toBe(`${one} in another order`);
    // what was done before the joints were last opened is no first walk
    const before = [made(RIGHT, 0), made(LEFT, 1)];
    const opened = [LEFT, RIGHT].map((joint, n): Done => ({ what: { kind: 'loosened', joint }, at: 2 + n }));
    const again = [made(LEFT, 5), made(RIGHT, 6), look(LEFT, 60), look(RIGHT, 61)];
    expect(level(...before, ...opened, ...again).says).toBe(one);
  });
});
