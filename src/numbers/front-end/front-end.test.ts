import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { askedSweep } from './asked-sweep.ts';
import { frontEnd } from './front-end.ts';
import { innerEnd, straightRod, turnPerLength } from './linkage.ts';
import { type FrontEnd, frontEndSweep, steerAtLift, steeringAngles, toeAgainstRod } from './sweep.ts';
import { kingpin, steered } from './wheel.ts';

const DEGREE = Math.PI / 180;
const wheel = { caster: 12 * DEGREE, inclination: 11 * DEGREE, stub: 0.11, forward: 0, radius: 0.13, camber: 0 };
const column = {
  centre: [-0.035, 0, 0],
  axis: [0, 0, 1],
  left: [-0.054, 0.025, 0],
  right: [-0.054, -0.025, 0],
} as const;
const rod = (side: 'left' | 'right') => {
  const out = side === 'left' ? 1 : -1;
  const bare = { pivot: [0, out * 0.4, 0], axis: kingpin(side, wheel), arm: [-0.095, -out * 0.02, 0] } as const;
  return { ...bare, length: straightRod(bare, innerEnd(column, side, 0)) };
};
const kart: FrontEnd = {
  left: wheel,
  right: wheel,
  wheelbase: 1.045,
  spacing: 0.8,
  linkage: { column, left: rod('left'), right: rod('right') },
  weight: {
    body: { mass: 181, wheelbase: 1.045, ahead: 0.4359, left: 0, heightFront: 0.24, heightRear: 0.24 },
    springs: { frame: 150 / DEGREE, frontTyre: 90_000, rearTyre: 110_000, frontTrack: 1.08, rearTrack: 1.17 },
  },
};

describe('the front end swept from lock to lock', () => {
  const angles = steeringAngles(25 * DEGREE, 101);
  const sweep = frontEndSweep(kart, angles, 15);
  it('has one number an angle in every array, all known but the Ackermann share straight ahead', () => {
    for (const [name, values] of Object.entries(sweep)) {
      expect(values, name).toHaveLength(angles.length);
      const unknown = values.filter(Number.isNaN).length;
      expect(unknown, name).toBe(name === 'ackermann' ? 1 : 0);
    }
    expect(angles[0]).toBeCloseTo(-25 * DEGREE, 12);
    expect(angles.at(-1)).toBeCloseTo(25 * DEGREE, 12);
  });
  it('mirrors itself: to the right as to the left, with the sides exchanged', () => {
    angles.forEach((_, n) => {
      const other = angles.length - 1 - n;
      expect(sweep.warp[n]).toBeCloseTo(-(sweep.warp[other] ?? 0), 9);
      expect(sweep.camberLeft[n]).toBeCloseTo(sweep.camberRight[other] ?? 0, 9);
      expect(sweep.riseLeft[n]).toBeCloseTo(sweep.riseRight[other] ?? 0, 9);
      expect(sweep.innerRear[n]).toBeCloseTo(sweep.innerRear[other] ?? 0, 5);
      if (n !== other) expect(sweep.ackermann[n]).toBeCloseTo(sweep.ackermann[other] ?? 0, 6);
    });
  });
  it('warps more and lightens the inner rear more, the further it is steered', () => {
    for (let n = 52; n < angles.length; n++) {
      expect(sweep.warp[n]).toBeGreaterThan(sweep.warp[n - 1] ?? 0);
      expect(sweep.innerRear[n]).toBeLessThan(sweep.innerRear[n - 1] ?? 0);
      expect(sweep.liftAt[n]).toBeLessThan(sweep.liftAt[n - 1] ?? 0);
    }
  });
  it('turns both kingpins alike without a linkage, and knows no load without a weight', () => {
    const bare = frontEndSweep({ left: wheel, right: wheel }, [0.1]);
    expect(bare.turnLeft).toEqual([0.1]);
    expect(bare.turnRight).toEqual([0.1]);
    expect(bare.innerRear[0]).toBeNaN();
    expect(bare.warp[0]).toBeCloseTo(steered('right', wheel, 0.1).rise - steered('left', wheel, 0.1).rise, 12);
  });
  it('does not invent a turn where the rods do not reach', () => {
    expect(frontEndSweep(kart, [2.5]).turnRight[0]).toBeNaN();
  });
});

describe('the steering that lifts the inner rear wheel', () => {
  it('is where its load is nothing, alike to both sides, and less the faster the turn', () => {
    const at = (side: 'left' | 'right', lateral: number) => steerAtLift(kart, side, lateral, 30 * DEGREE) ?? Number.NaN;
    const slow = at('left', 21);
    expect(frontEndSweep(kart, [slow], 21).innerRear[0]).toBeCloseTo(0, 1);
    expect(at('right', 21)).toBeCloseTo(slow, 5);
    expect(at('left', 22)).toBeLessThan(slow);
  });
  it('is none while the wheel stays down, and nothing when it is up already', () => {
    expect(steerAtLift(kart, 'left', 5, 30 * DEGREE)).toBeUndefined();
    expect(steerAtLift(kart, 'left', 24, 30 * DEGREE)).toBe(0);
  });
});

describe('toe against the length of the tie rods', () => {
  it('begins at nothing with the slope of the arm, times what the kingpin gives the wheel', () => {
    const h = 1e-5;
    const { total, left } = toeAgainstRod(kart, [-h, 0, h]);
    expect(total[1]).toBeCloseTo(0, 12);
    const points = (steered('left', wheel, 1e-5).roadSteer - steered('left', wheel, -1e-5).roadSteer) / 2e-5;
    const slope = ((left[2] ?? 0) - (left[0] ?? 0)) / (2 * h);
    expect(slope / (-points * turnPerLength(rod('left'), innerEnd(column, 'left', 0), 0))).toBeCloseTo(1, 5);
  });
  it('is not known without a linkage', () => {
    expect(toeAgainstRod({ left: wheel, right: wheel }, [0.001]).total[0]).toBeNaN();
  });
});

const linkage = {
  'column angle': '20°',
  'column axis ahead': '-35 mm',
  'column arm': '60 mm',
  'column arm spread': '50°',
  'arm back': '95 mm',
  'arm in': '20 mm',
};
const without = (...keys: readonly string[]) =>
  Object.fromEntries(Object.entries(frontEnd.example).filter(([key]) => !keys.includes(key)));
const answer = (input: unknown) => {
  const given = frontEnd.ask(input);
  if (given.kind === 'problems') throw new Error(JSON.stringify(given.problems));
  return given;
};
const problems = (input: unknown) => {
  const given = frontEnd.ask(input);
  if (given.kind === 'answer') throw new Error(given.say.join(' '));
  return given.problems;
};

describe('a question about the front end', () => {
  it('answers height, camber and warp in words, with the caution of steering work', () => {
    const { say, figures } = answer(frontEnd.example);
    expect(say[0]).toContain('left wheel pushes its corner up by 4.1 mm');
    expect(figures.warp?.text).toBe('7.78 mm');
    expect(say.at(-1)).toContain('Caution');
  });
  it('names the base of an Ackermann share', () => {
    expect(answer(frontEnd.example).say.join(' ')).toContain('131 % of that difference, reckoned from the outer wheel');
  });
  it('keeps left and right apart, and says where they differ', () => {
    const { figures, notes } = answer({ ...without('caster'), 'caster left': '12°', 'caster right': '10°' });
    expect(figures['trail left']?.si).not.toBe(figures['trail right']?.si);
    expect(notes.join(' ')).toContain('differ in caster');
  });
  it('turns the kingpins through the rods when a linkage is given, raked or upright', () => {
    for (const rake of ['0°', '45°']) {
      const { figures } = answer({ ...without('steering angle'), ...linkage, 'column rake': rake });
      expect(figures['kingpin turn left']?.si).toBeGreaterThan(figures['kingpin turn right']?.si ?? 9);
      expect(figures['toe-in per mm of rod left']?.si).toBeCloseTo(figures['toe-in per mm of rod right']?.si ?? 9, 9);
    }
  });
  it('agrees with the plane linkage worked outside the project when every axis is upright', () => {
    const upright = {
      ...without('steering angle', 'caster', 'kingpin inclination'),
      caster: '0°',
      'kingpin inclination': '0°',
    };
    const { figures } = answer({ ...upright, ...linkage });
    expect((figures['kingpin turn left']?.si ?? 0) / DEGREE).toBeCloseTo(12.53424, 4);
    expect((figures['kingpin turn right']?.si ?? 0) / DEGREE).toBeCloseTo(9.8652, 4);
  });
  it('says how far to steer until the inner rear lifts, or that it stays down', () => {
    expect(answer(frontEnd.example).say.join(' ')).toContain('does not lift the inner rear wheel');
    const fast = answer({ ...frontEnd.example, 'lateral acceleration': '2.2 g0' });
    expect(fast.figures['inner rear lifts from steering']?.si).toBeGreaterThan(0);
    const up = answer({ ...frontEnd.example, 'lateral acceleration': '2.3 g0' });
    expect(up.figures['inner rear load']).toMatchObject({ si: 0, text: '0 N, off the road' });
    expect(up.notes.join(' ')).toContain('ask wheel-loads');
  });
  it('refuses all that is missing, doubled, negative or impossible at once', () => {
    expect(
      problems({ 'caster left': '12°', 'tyre diameter': '130 mm', 'stub length': '-110 mm' }).map(p => p.path),
    ).toEqual(['kingpin inclination', 'caster right', 'stub length', 'stub length', 'tyre diameter']);
    expect(problems({ ...frontEnd.example, ...linkage }).map(p => p.path)).toEqual(['steering angle']);
    expect(problems({ ...frontEnd.example, 'column angle': '5°' }).map(p => p.path)).toContain('column angle');
    expect(problems(without('frame torque per degree')).map(p => p.path)).toEqual(['frame torque per degree']);
    expect(problems(without('wheelbase', 'mass')).map(p => p.path)).toEqual(['wheelbase', 'mass', 'wheelbase']);
    expect(
      problems({ ...without('steering angle'), ...linkage, 'column arm': '200 mm', 'tie rod': '100 mm' })[0],
    ).toMatchObject({
      path: 'tie rod',
      expected: expect.stringContaining('reaches'),
    });
  });
  it('marks an answer outside what was checked', () => {
    expect(answer({ ...frontEnd.example, 'steering angle': '60°' }).notes.join(' ')).toContain('Outside the range');
    const swapped = { ...frontEnd.example, 'inner angle': '10°', 'outer angle': '12°' };
    expect(answer(swapped).notes.join(' ')).toContain('the two readings are not exchanged');
    expect(answer(frontEnd.example).notes.join(' ')).not.toContain('exchanged');
  });
  it('never throws, whatever comes, and never promises', () => {
    const keys = [...Object.keys(frontEnd.example), ...Object.keys(linkage), 'shim', 'shim gain', 'caster left'];
    const text = fc
      .tuple(fc.double(), fc.constantFrom('mm', '°', 'kg', 'N·m', '%', 'g0', 'N/mm'))
      .map(([n, u]) => `${n} ${u}`);
    fc.assert(
      fc.property(fc.anything(), fc.dictionary(fc.constantFrom(...keys), text), (any, keyed) => {
        expect(['answer', 'problems']).toContain(frontEnd.ask(any).kind);
        expect(JSON.stringify(frontEnd.ask({ ...frontEnd.example, ...keyed }))).not.toMatch(/\bsafe/i);
      }),
    );
  });
});

describe('the sweep of a question', () => {
  it('at the angle that was asked it is what the answer says, and the inner rear is at zero where it lifts', () => {
    const question = { ...(frontEnd.example as object), 'lateral acceleration': '2.2 g0' };
    const answer = frontEnd.ask(question);
    if (answer.kind !== 'answer') throw new Error(JSON.stringify(answer.problems));
    const lift = answer.figures['inner rear lifts from steering']?.si ?? Number.NaN;
    const sweep = askedSweep(question, [(10 * Math.PI) / 180, lift]);
    expect(sweep?.warp[0]).toBeCloseTo(answer.figures.warp?.si ?? Number.NaN, 12);
    expect(sweep?.innerRear[0]).toBeCloseTo(answer.figures['inner rear load']?.si ?? Number.NaN, 9);
    expect(sweep?.innerRear[1]).toBeCloseTo(0, 2); // the search ends within 1e-6 rad, some thousandths of a newton
  });

  it('a question that its schema refuses has none', () => {
    expect(askedSweep({ caster: '12' }, [0])).toBeUndefined();
  });
});
