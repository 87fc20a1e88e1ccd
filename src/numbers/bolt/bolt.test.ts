import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bolt } from './bolt.ts';
import { isJointTorque, jointTorque } from './joint-torque.ts';
import { leastByTighteningFactor, preloadRange } from './scatter.ts';
import { isStrength, strengthOf } from './strength.ts';
import { pitchDiameter, stressArea } from './stress-area.ts';
import { headOf } from './tables.ts';
import { isThread, readThread } from './thread.ts';
import {
  preloadAtYield,
  preloadByNutFactor,
  releaseTorque,
  type Turning,
  tighteningTorque,
  tighteningTorqueLinear,
  torqueByNutFactor,
  torqueShares,
  unwindingMoment,
} from './torque.ts';

const THREADS = ['M5', 'M6', 'M8', 'M8x1', 'M10', 'M10x1.25', 'M12', '10-32', '1/4-28', '5/16-18', '3/8-24'];
const threadOf = (marking: string) => {
  const thread = readThread(marking);
  if (!isThread(thread)) throw new Error(`${marking}: ${thread.remedy}`);
  return thread;
};
const thread = fc.constantFrom(...THREADS).map(threadOf);
const friction = fc.double({ min: 0.04, max: 0.3, noNaN: true });
const preload = fc.double({ min: 100, max: 80000, noNaN: true });
const turning: fc.Arbitrary<Turning> = fc
  .record({ thread, preload, threadFriction: friction, headFriction: friction })
  .map(({ thread: t, ...rest }) => ({
    ...rest,
    pitch: t.pitch,
    pitchDiameter: pitchDiameter(t),
    bearingDiameter: 1.3 * t.diameter,
  }));

describe('torque and preload', () => {
  it('lead back to each other', () => {
    fc.assert(
      fc.property(thread, preload, fc.double({ min: 0.08, max: 0.4, noNaN: true }), ({ diameter }, force, factor) => {
        const torque = torqueByNutFactor({ factor, diameter, preload: force });
        expect(preloadByNutFactor({ factor, diameter, torque }) / force).toBeCloseTo(1, 12);
      }),
    );
  });
  it('grow in proportion, and with the cube of the size', () => {
    fc.assert(
      fc.property(turning, fc.double({ min: 0.1, max: 10, noNaN: true }), (o, k) => {
        expect(tighteningTorque({ ...o, preload: k * o.preload }) / tighteningTorque(o)).toBeCloseTo(k, 9);
        const scaled = {
          ...o,
          preload: k ** 2 * o.preload,
          pitch: k * o.pitch,
          pitchDiameter: k * o.pitchDiameter,
          bearingDiameter: k * o.bearingDiameter,
        };
        expect(tighteningTorque(scaled) / tighteningTorque(o) / k ** 3).toBeCloseTo(1, 9);
      }),
    );
  });
  it('change with friction as the derivative of the wedge says', () => {
    // dT/dμh = F Dk/2, and the thread term by central difference against its closed form.
    fc.assert(
      fc.property(turning, o => {
        const step = 1e-6;
        const slope = (key: 'threadFriction' | 'headFriction') =>
          (tighteningTorque({ ...o, [key]: o[key] + step }) - tighteningTorque({ ...o, [key]: o[key] - step })) /
          (2 * step);
        expect(slope('headFriction') / ((o.preload * o.bearingDiameter) / 2)).toBeCloseTo(1, 5);
        const cos = Math.cos(Math.PI / 6);
        const rub = Math.atan(o.threadFriction / cos);
        const angle = Math.atan(o.pitch / (Math.PI * o.pitchDiameter)) + rub;
        const closed = ((o.preload * o.pitchDiameter) / 2 / Math.cos(angle) ** 2) * (Math.cos(rub) ** 2 / cos);
        expect(slope('threadFriction') / closed).toBeCloseTo(1, 5);
      }),
    );
  });
  it('need less to undo than to make, by about twice the unwinding moment', () => {
    fc.assert(
      fc.property(turning, o => {
        const apart = tighteningTorque(o) - releaseTorque(o);
        expect(apart).toBeGreaterThanOrEqual(2 * unwindingMoment(o) * (1 - 1e-9));
        expect(apart).toBeLessThan(2.4 * unwindingMoment(o));
      }),
    );
  });
  it('go mostly into friction: about 15, 38 and 47 parts in 100 for an M8', () => {
    const m8 = threadOf('M8');
    const head = headOf(m8.diameter);
    const shares = torqueShares({
      preload: 18627,
      pitch: m8.pitch,
      pitchDiameter: pitchDiameter(m8),
      bearingDiameter: ((head?.face ?? 0) + (head?.hole ?? 0)) / 2,
      threadFriction: 0.12,
      headFriction: 0.12,
    });
    expect(shares.stretch).toBeCloseTo(0.15, 2);
    expect(shares.stretch + shares.thread + shares.head).toBeCloseTo(1, 12);
  });
  it('agree between the exact and the linear form within 0.7 % where friction is usual', () => {
    fc.assert(
      fc.property(turning, fc.double({ min: 0.1, max: 0.14, noNaN: true }), (o, mu) => {
        const usual = { ...o, threadFriction: mu, headFriction: mu };
        expect(Math.abs(tighteningTorqueLinear(usual) / tighteningTorque(usual) - 1)).toBeLessThan(0.007);
      }),
    );
  });
  it('at yield fall with friction, never above plain tension, and are plain tension without twist', () => {
    fc.assert(
      fc.property(thread, friction, fc.double({ min: 0.001, max: 0.2, noNaN: true }), (t, mu, more) => {
        const at = (threadFriction: number) =>
          preloadAtYield({
            area: stressArea(t),
            pitchDiameter: pitchDiameter(t),
            pitch: t.pitch,
            yield: 640e6,
            share: 0.9,
            threadFriction,
          });
        expect(at(mu + more)).toBeLessThan(at(mu));
        expect(at(mu)).toBeLessThan(0.9 * 640e6 * stressArea(t));
      }),
    );
  });
  it('scatter round what was meant', () => {
    expect(preloadRange(100, 0)).toEqual({ min: 100, max: 100 });
    expect(() => preloadRange(100, 1)).toThrow('scatter must be from 0 to below 1, got 1');
    expect(() => leastByTighteningFactor(100, 0.9)).toThrow('factor must be 1 or more, got 0.9');
  });
});

describe('a range for a joint without its maker’s figure', () => {
  it('keeps the highest preload of the scatter below 90 % of yield, oiled or dry', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('M5', 'M6', 'M8', 'M10', 'M12'),
        fc.constantFrom('8.8', '10.9', '12.9'),
        fc.boolean(),
        (marking, mark, lubricated) => {
          const range = jointTorque({ thread: marking, propertyClass: mark, lubricated });
          const t = threadOf(marking);
          const strength = strengthOf(mark, t);
          if (!isJointTorque(range) || !isStrength(strength)) throw new Error('refused');
          expect(range.min).toBeLessThan(range.max);
          const [factor, scatter] = lubricated ? [0.15, 0.25] : [0.2, 0.35];
          const top = (1 + scatter) * preloadByNutFactor({ factor, diameter: t.diameter, torque: range.max });
          const most = preloadAtYield({
            area: stressArea(t),
            pitchDiameter: pitchDiameter(t),
            pitch: t.pitch,
            yield: strength.yield,
            share: 0.9,
            threadFriction: 0.12,
          });
          expect(top).toBeLessThanOrEqual(most * (1 + 1e-12));
        },
      ),
    );
  });
  it('takes what is not known as oiled, which asks for less', () => {
    const max = (o: { lubricated?: boolean }) => {
      const range = jointTorque({ thread: 'M8', propertyClass: '8.8', ...o });
      return isJointTorque(range) ? range.max : Number.NaN;
    };
    expect(max({})).toBe(max({ lubricated: true }));
    expect(max({})).toBeLessThan(max({ lubricated: false }));
  });
  it('says that it is computed, and to add what a locking nut takes', () => {
    const range = jointTorque({ thread: 'M6', propertyClass: '8.8', lockingNut: true });
    expect(range).toMatchObject({ source: "computed from M6x1 8.8, not the maker's figure" });
    expect(isJointTorque(range) && range.notes.join(' ')).toMatch(/running torque/);
  });
  it('is refused for a thread or a class that is none, naming which', () => {
    expect(jointTorque({ thread: 'M8x1.5', propertyClass: '8.8' })).toMatchObject({ of: 'thread' });
    expect(jointTorque({ thread: 'M8', propertyClass: '8' })).toMatchObject({ of: 'class' });
  });
});

describe('the subject', () => {
  const ask = (input: Readonly<Record<string, unknown>>) => {
    const answer = bolt.ask(input);
    if (answer.kind !== 'answer') throw new Error(JSON.stringify(answer.problems));
    return answer;
  };
  it('adds the running torque of a locking nut to the wrench', () => {
    const { figures, say } = ask(bolt.example);
    expect(figures['wrench setting']?.text).toBe('21.5 N·m');
    expect(figures.preload?.si).toBeCloseTo(12500, 6);
    expect(say.join(' ')).toContain('Caution:');
    expect(say.join(' ')).not.toMatch(/\bsafe\b/i);
  });
  it('answers in the units of the question, and shows a limit rounded down', () => {
    const { figures } = ask({ thread: '1/4-28 UNF', class: 'grade 5', torque: '80 in-lb' });
    expect(figures.torque?.text).toBe('80 in·lb');
    expect(ask({ thread: 'M8', class: '8.8', threads: 'dry' }).figures['largest torque']?.text).toBe('22 N·m');
  });
  it('says that oil on a dry figure stretches the bolt a third more', () => {
    const { figures, say } = ask({ thread: 'M12', class: '8.8', 'dry figure': '82.1 N·m' });
    expect((figures['preload oiled']?.si ?? 0) / (figures['preload dry']?.si ?? 1)).toBeCloseTo(4 / 3, 9);
    expect(say.join(' ')).toMatch(/93 % of the proof load.*70 % of the proof load/);
    expect(say.join(' ')).toContain('73.9 N·m');
  });
  it('warns where the scatter reaches the proof load, and where nothing can be relied on', () => {
    expect(ask({ thread: 'M6', class: '8.8', torque: '15 N·m' }).say.join(' ')).toContain('Too much');
    const feel = ask({ thread: 'M6', class: '8.8', torque: '9 N·m', method: 'feel' });
    expect(feel.figures['least preload']).toBeUndefined();
    expect(feel.say.join(' ')).toContain('by feel no preload can be relied on');
  });
  it('counts on the least of dry threads and the largest of oiled ones where nothing is known of them', () => {
    const of = (threads?: string) => {
      const { figures } = ask({ thread: 'M8', torque: '20 N·m', ...(threads && { threads }) });
      return [figures['least preload']?.si, figures['largest preload']?.si];
    };
    expect(of()).toEqual([of('dry')[0], of('oiled')[1]]);
    expect(of('dry')[0]).toBeCloseTo(8125, 6);
  });
  it('throws a used locking nut away that runs too easily', () => {
    const used = (running: string) =>
      ask({ thread: '5/16-24', 'locking nut': 'used', 'running torque': running }).say.join(' ');
    expect(used('6 in-lb')).toContain('Throw the nut away: it takes less than the 6.5 in·lb');
    expect(used('7 in-lb')).toContain('at least the 6.5 in·lb');
    expect(ask({ thread: 'M8', 'locking nut': 'used' }).say.join(' ')).toContain('if fingers can turn it down');
  });
  it('names everything that is wrong at once, with what would be right', () => {
    const answer = bolt.ask({
      thread: 'M8x1.5',
      class: '9.9',
      torque: '-3 N·m',
      preload: '3 kN',
      'head friction': '2',
    });
    expect(answer.kind === 'problems' && answer.problems.map(p => p.path)).toEqual([
      'thread',
      'class',
      'torque',
      'head friction',
      'preload',
    ]);
    const swapped = bolt.ask({ thread: 'M8', 'face diameter': '9 mm', 'hole diameter': '11.63 mm' });
    expect(swapped.kind === 'problems' && swapped.problems.map(p => p.path)).toEqual(['face diameter']);
    const radius = bolt.ask({ thread: 'M8', 'hole diameter': '4.5 mm' });
    expect(radius.kind === 'problems' && radius.problems[0]?.remedy).toContain('not the radius');
    expect(bolt.ask({ thread: 'M8', torque: 20 })).toMatchObject({ kind: 'problems' });
    expect(bolt.ask({ thread: 'M8', torque: '20 N' })).toMatchObject({ kind: 'problems' });
  });
  it('never throws, and never answers without a number, whatever is asked', () => {
    const text = fc.constantFrom(
      '20 N·m',
      '-1 N·m',
      '0 N·m',
      '3 kN',
      '0.12',
      '0',
      '1e9 N·m',
      '9 mm',
      'M8',
      '8.8',
      'grade 5',
      'x',
      7,
      null,
    );
    const keys = fc.constantFrom(
      'torque',
      'preload',
      'dry figure',
      'nut factor',
      'thread friction',
      'head friction',
      'hole diameter',
      'running torque',
      'class',
      'method',
    );
    fc.assert(
      fc.property(
        fc.constantFrom('M8', 'M25x1', '1/4-28', '1-8', 'M8x9'),
        fc.dictionary(keys, text),
        (thread, rest) => {
          const answer = bolt.ask({ thread, ...rest });
          if (answer.kind === 'answer')
            for (const { si, text: shown } of Object.values(answer.figures)) {
              expect(Number.isFinite(si)).toBe(true);
              expect(shown).not.toContain('not known');
            }
          else expect(answer.problems.length).toBeGreaterThan(0);
        },
      ),
    );
  });
  it('marks an answer outside what it was checked for', () => {
    expect(ask({ thread: 'M20', class: '8.8' }).notes.join(' ')).toContain(
      'Outside the range this was checked for: M20x2.5',
    );
    expect(ask({ thread: 'M8', class: '8.8', torque: '20 N·m', 'thread friction': '0.4' }).notes.join(' ')).toContain(
      'friction 0.4',
    );
    expect(ask({ thread: 'M8', class: 'A2-70' }).notes.join(' ')).toContain('seize');
    expect(ask({ thread: 'M8' }).notes.join(' ')).toContain('Add "class"');
  });
});
