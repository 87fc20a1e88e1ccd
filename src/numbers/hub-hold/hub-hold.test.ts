import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Answer, InputProblem } from '../subject.ts';
import { type Clamp, clampFor, leastPreload, seatDemand, slipAxial, slipMargin, slipTorque } from './clamp.ts';
import { hubHold } from './hub-hold.ts';
import { hubTorque, sideLeft } from './loads.ts';
import { ringMoment } from './ring.ts';

const base = hubHold.example;
const ask = (over: Readonly<Record<string, unknown>> = {}): Answer => {
  const answer = hubHold.ask({ ...base, ...over });
  if (answer.kind !== 'answer') throw new Error(JSON.stringify(answer.problems));
  return answer;
};
const wrong = (over: Readonly<Record<string, unknown>>): readonly InputProblem[] => {
  const answer = hubHold.ask(Object.fromEntries(Object.entries({ ...base, ...over }).filter(([, v]) => v !== null)));
  if (answer.kind !== 'problems') throw new Error('it was answered');
  return answer.problems;
};
const si = (answer: Answer, name: string): number => answer.figures[name]?.si ?? Number.NaN;
const size = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const clamps = fc.record({
  force: size(100, 1e5),
  friction: size(0.05, 0.4),
  diameter: size(0.02, 0.06),
  contact: fc.constantFrom('two lines', 'close fit', 'conforming'),
}) satisfies fc.Arbitrary<Clamp>;
const demands = fc.record({ torque: size(1, 500), axial: size(1, 5000) });

describe('the hold of a clamp', () => {
  it('grows in step with force and friction, for torque and along the axle alike', () => {
    fc.assert(
      fc.property(clamps, size(1.1, 5), (clamp, times) => {
        for (const held of [slipTorque, slipAxial]) {
          expect(held({ ...clamp, force: times * clamp.force }) / held(clamp)).toBeCloseTo(times, 9);
          expect(held({ ...clamp, friction: times * clamp.friction }) / held(clamp)).toBeCloseTo(times, 9);
        }
      }),
    );
  });
  it('is one friction force: the torque that slips is the axial force at the radius of the axle', () => {
    fc.assert(
      fc.property(clamps, clamp => {
        expect((slipAxial(clamp) * clamp.diameter) / 2 / slipTorque(clamp)).toBeCloseTo(1, 12);
        expect(slipMargin(clamp, { torque: slipTorque(clamp), axial: 0 })).toBeCloseTo(1, 12);
      }),
    );
  });
  it('comes round: the force for a margin gives that margin', () => {
    fc.assert(
      fc.property(clamps, demands, size(0.5, 4), (clamp, demand, margin) => {
        expect(slipMargin({ ...clamp, force: clampFor(clamp, demand, margin) }, demand)).toBeCloseTo(margin, 9);
      }),
    );
  });
  it('is asked more by torque and axial force together than by either, and never more than by their sum', () => {
    fc.assert(
      fc.property(demands, size(0.02, 0.06), (demand, diameter) => {
        const both = seatDemand(demand, diameter);
        const [torque, axial] = [seatDemand({ ...demand, axial: 0 }, diameter), demand.axial];
        expect(both).toBeGreaterThanOrEqual(Math.max(torque, axial));
        expect(both).toBeLessThanOrEqual(torque + axial + 1e-9);
      }),
    );
  });
  it('has no margin to tell when nothing is asked of it', () => {
    const clamp: Clamp = { force: 1e4, friction: 0.2, diameter: 0.05, contact: 'two lines' };
    expect(slipMargin(clamp, { torque: 0, axial: 0 })).toBeNaN();
  });
  it('has a preload whose slope over torque is (1 - scatter) / (K d), and none below the running torque', () => {
    const bolt = { torque: 18, running: 2, nutFactor: 0.2, diameter: 0.008, scatter: 0.35 };
    const step = 1e-4;
    const slope =
      (leastPreload({ ...bolt, torque: 18 + step }) - leastPreload({ ...bolt, torque: 18 - step })) / (2 * step);
    expect(slope).toBeCloseTo(0.65 / (0.2 * 0.008), 4);
    expect(leastPreload({ ...bolt, torque: 1 })).toBe(0);
  });
});

describe('what a tyre asks of a hub', () => {
  it('is never more than its one grip, for torque and side together', () => {
    fc.assert(
      fc.property(size(10, 2000), size(0.3, 2.5), size(0.1, 0.2), size(1, 1000), (load, grip, radius, axle) => {
        const tyre = { load, grip, radius };
        const torque = hubTorque(axle, 1, tyre);
        expect(Math.hypot(torque / radius, sideLeft(torque, tyre))).toBeCloseTo(load * grip, 6);
      }),
    );
  });
});

describe('a tube between two jaws', () => {
  it('bends the other way a quarter turn on, and the two moments differ by half of load times radius (statics)', () => {
    const { atLoad, between } = ringMoment(1000, 0.024);
    expect(atLoad - between).toBeCloseTo((1000 * 0.024) / 2, 9);
    expect(between).toBeLessThan(0);
  });
});

describe('the hold of a hub, asked', () => {
  it('is halved by a film of oil, with default friction of 0.20 and 0.10 (NASA-STD-5020B)', () => {
    const answer = ask();
    for (const wheel of ['outer', 'inner'])
      for (const load of ['side', 'braking', 'drive', 'together'])
        expect(si(answer, `margin ${load} ${wheel} clean`) / si(answer, `margin ${load} ${wheel} film`)).toBeCloseTo(
          2,
          9,
        );
  });
  it('doubles the side load for kerbs, and keeps outer and inner wheel apart', () => {
    const answer = ask();
    expect(si(answer, 'side load outer')).toBeCloseTo(2 * 1.7 * 0.57 * 175 * 9.80665, 6);
    expect(si(answer, 'side load inner')).toBeCloseTo(si(answer, 'side load outer') / 2, 9);
    expect(si(ask({ 'dynamic factor': '1' }), 'side load outer')).toBeCloseTo(si(answer, 'side load outer') / 2, 9);
  });
  it('gains nothing from a key: every margin stays, and it is told what the key would feel without friction', () => {
    const [bare, keyed] = [ask(), ask({ 'key width': '8 mm', 'key height': '7 mm', 'key length': '40 mm' })];
    for (const name of Object.keys(bare.figures)) expect(si(keyed, name)).toBe(si(bare, name));
    expect(si(keyed, 'shear stress in the key')).toBeCloseTo(
      si(keyed, 'force on the key, without friction') / 320e-6,
      3,
    );
    expect(keyed.say.join(' ')).toMatch(/the key keeps it from neither, and is not counted/);
  });
  it('takes the running torque of a locking nut off, and says so when it is not known', () => {
    expect(si(ask({ 'running torque': '2 N·m' }), 'least preload of one bolt')).toBeCloseTo((0.65 * 16) / 0.0016, 6);
    expect(ask().notes.join(' ')).toMatch(/running torque of a locking nut is not taken off/);
  });
  it('says what is too weak even when clean, what preload it would take, and never to pass the maker’s torque', () => {
    const answer = ask({ bolts: '1' });
    expect(answer.say.join(' ')).toMatch(
      /Not enough against the side load even when clean: one bolt needs .* N at least/,
    );
    expect(answer.say.join(' ')).toMatch(/do not go beyond the maker's torque/);
    const mended = hubHold.ask({
      ...Object.fromEntries(Object.entries(base).filter(([name]) => !name.startsWith('bolt '))),
      bolts: '1',
      preload: `${si(answer, 'preload for the wanted margin') + 1} N`,
    });
    expect(mended.kind === 'answer' && mended.say.join(' ')).toMatch(/then make the bolts by turns/);
  });
  it('tells only the side load when neither tyre nor torque is known', () => {
    const answer = hubHold.ask({ 'axle diameter': '50 mm', bolts: '2', preload: '7 kN', mass: '175 kg' });
    expect(answer.kind === 'answer' && Object.keys(answer.figures).filter(n => /braking|drive/.test(n))).toEqual([]);
    expect(answer.kind === 'answer' && answer.notes.join(' ')).toMatch(/Braking and drive are not known/);
  });
  it('marks an answer outside validity: friction from a table, short engagement, a press fit on a slotted hub', () => {
    expect(ask({ 'friction clean': '0.6' }).notes.join(' ')).toMatch(/Outside validity: friction/);
    expect(ask({ 'hub length': '39 mm' }).notes.join(' ')).toMatch(/Too little axle inside the hub/);
    const pressed = ask({ 'axle wall': '3 mm', 'hub outside diameter': '70 mm', interference: '0.05 mm' });
    expect(si(pressed, 'press-fit pressure, ring without slot') / 1e6).toBeCloseTo(11.8906, 3); // checks: hub.press.AlOnTube
    expect(pressed.notes.join(' ')).toMatch(/added to nothing/);
    expect(si(pressed, 'axial force held clean')).toBe(si(ask(), 'axial force held clean'));
  });
  it('carries the caution, and never calls a hub sound', () => {
    const text = JSON.stringify(ask());
    expect(text).toMatch(/Caution: a hub that slips can leave the axle/);
    expect(text).not.toMatch(/\bsafe\b/i);
  });
});

describe('a question that cannot be', () => {
  const paths = (over: Readonly<Record<string, unknown>>): readonly string[] => wrong(over).map(p => p.path);
  it('is refused with all problems at once', () => {
    expect(paths({ bolts: '-2', mass: '0 kg', 'friction clean': '0.1', 'friction film': '0.2' })).toEqual(
      expect.arrayContaining(['bolts', 'mass', 'friction film']),
    );
  });
  it.each([
    ['a bare number', { 'axle diameter': 50 }, 'axle diameter'],
    ['a wrong unit', { mass: '175 N' }, 'mass'],
    ['bolt and axle exchanged', { 'axle diameter': '8 mm', 'bolt diameter': '50 mm' }, 'bolt diameter'],
    ['half a bolt', { bolts: '1.5' }, 'bolts'],
    ['a nut factor in per cent without its sign', { 'nut factor': '20' }, 'nut factor'],
    ['a wall thicker than the axle', { 'axle wall': '26 mm' }, 'axle wall'],
    [
      'outer and inner exchanged',
      { mass: null, 'outer wheel load': '400 N', 'inner wheel load': '900 N' },
      'inner wheel load',
    ],
    ['one wheel load', { mass: null, 'outer wheel load': '400 N' }, 'inner wheel load'],
    ['mass and wheel loads', { 'outer wheel load': '900 N', 'inner wheel load': '400 N' }, 'mass'],
    ['torque and preload', { preload: '7 kN' }, 'preload'],
    ['neither of them', { 'bolt torque': null }, 'bolt torque'],
    ['torque without a thread', { 'bolt diameter': null }, 'bolt diameter'],
    ['engine without ratio', { 'overall ratio': null }, 'overall ratio'],
    ['half a key', { 'key width': '8 mm' }, 'key length'],
    ['scatter of all', { scatter: '100 %' }, 'scatter'],
    ['a key that is not known', { colour: 'red' }, 'colour'],
  ])('%s', (_, over, path) => {
    const found = wrong(over);
    expect(found.map(p => p.path)).toContain(path);
    for (const problem of found) for (const text of Object.values(problem)) expect(text).not.toBe('');
  });
  it('never throws, whatever comes', () => {
    fc.assert(fc.property(fc.anything(), input => void hubHold.ask(input)));
    fc.assert(
      fc.property(
        fc.dictionary(
          fc.constantFrom(...Object.keys(base)),
          fc.oneof(fc.string(), fc.constant('-3 mm'), fc.constant('0')),
        ),
        over => void hubHold.ask({ ...base, ...over }),
      ),
    );
  });
});
