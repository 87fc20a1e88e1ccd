import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Answer, InputProblem } from '../subject.ts';
import { brakingLoads, frontLocks, idealFrontShare, rearLifts, rearLocks, weightOf } from './balance.ts';
import { brakes } from './brakes.ts';
import { barOffset, barShare, barShareFor, radiusEvenPressure, radiusEvenWear } from './hydraulics.ts';
import { brakingDistance, wearOf } from './stop.ts';

type Over = Readonly<Record<string, unknown>>;
const base = brakes.example as Readonly<Record<string, Over>>;
/** The example with some keys over it; `null` takes one out. */
const question = (over: Over): Over =>
  Object.fromEntries(Object.entries({ ...base, ...over }).filter(([, value]) => value !== null));
const ask = (over: Over = {}): Answer => {
  const answer = brakes.ask(question(over));
  if (answer.kind !== 'answer') throw new Error(JSON.stringify(answer.problems));
  return answer;
};
const wrong = (over: Over): readonly InputProblem[] => {
  const answer = brakes.ask(question(over));
  if (answer.kind !== 'problems') throw new Error('it was answered');
  return answer.problems;
};
const si = (answer: Answer, name: string): number => answer.figures[name]?.si ?? Number.NaN;
const rear = (over: Over): Over => ({ rear: { ...base.rear, ...over } });
const front = (over: Over): Over => ({ front: { ...base.front, ...over } });
const size = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const karts = fc.record({ wheelbase: size(0.9, 1.1), ahead: size(0.3, 0.6), height: size(0.15, 0.35) });

describe('the load of each axle', () => {
  it('adds up to the weight at every deceleration, and leaves the rear when it lifts', () => {
    fc.assert(
      fc.property(karts, size(0, 2), size(100, 250), (kart, z, mass) => {
        const { front, rear } = brakingLoads(kart, mass, z);
        expect(front + rear).toBeCloseTo(weightOf(mass), 6);
        expect(brakingLoads(kart, mass, rearLifts(kart)).rear).toBeCloseTo(0, 6);
      }),
    );
  });
  it('moves forward by height over wheelbase (slope of the ideal share against finite difference)', () => {
    fc.assert(
      fc.property(karts, size(0, 2), (kart, z) => {
        const step = 1e-4;
        const slope = (idealFrontShare(kart, z + step) - idealFrontShare(kart, z - step)) / (2 * step);
        expect(slope).toBeCloseTo(kart.height / kart.wheelbase, 6);
      }),
    );
  });
});

describe('which axle locks', () => {
  it('is where its braking force is its grip: put back, the forces agree', () => {
    fc.assert(
      fc.property(karts, size(0.3, 0.8), size(0.3, 1.2), size(0, 0.1), (kart, frontShare, grip, drag) => {
        const sharing = { frontShare, grip, drag };
        const zF = frontLocks(kart, sharing);
        if (Number.isFinite(zF))
          expect((frontShare * (zF - drag)) / (grip * idealFrontShare(kart, zF))).toBeCloseTo(1, 6);
        const zR = rearLocks(kart, sharing);
        if (zR > 0) {
          const force = (1 - frontShare) * (zR - drag) + drag;
          expect(force).toBeCloseTo(grip * (1 - idealFrontShare(kart, zR)), 9);
        }
      }),
    );
  });
  it('is both at once, at the grip itself, for the ideal share', () => {
    fc.assert(
      fc.property(karts, size(0.3, 1.2), (kart, grip) => {
        const sharing = { frontShare: idealFrontShare(kart, grip), grip };
        expect(frontLocks(kart, sharing)).toBeCloseTo(grip, 6);
        expect(rearLocks(kart, sharing)).toBeCloseTo(grip, 6);
      }),
    );
  });
  it('is the rear sooner with the drag of the engine on it', () => {
    const kart = { wheelbase: 1.045, ahead: 0.436, height: 0.24 };
    const without = rearLocks(kart, { frontShare: 0.6, grip: 1 });
    expect(rearLocks(kart, { frontShare: 0.6, grip: 1, drag: 0.05 })).toBeLessThan(without);
  });
});

describe('the bar', () => {
  it('comes round between offset and share', () => {
    fc.assert(
      fc.property(size(0.03, 0.1), size(0.1, 0.9), (spacing, share) => {
        expect(barShare(spacing, barOffset(spacing, share))).toBeCloseTo(share, 12);
      }),
    );
  });
  it('gives the share of braking that was wanted, whatever the two ends gain', () => {
    fc.assert(
      fc.property(size(0.05, 0.95), size(0.5, 20), size(0.5, 20), (wanted, front, rear) => {
        const s = barShareFor(wanted, { front, rear });
        expect((s * front) / (s * front + (1 - s) * rear)).toBeCloseTo(wanted, 9);
      }),
    );
  });
});

describe('a pad', () => {
  it('acts between its inner and outer radius, new a little further out than worn in', () => {
    fc.assert(
      fc.property(size(0.03, 0.06), size(0.005, 0.05), (inner, height) => {
        const [worn, fresh] = [radiusEvenWear(inner + height, inner), radiusEvenPressure(inner + height, inner)];
        expect(fresh).toBeGreaterThanOrEqual(worn - 1e-12);
        expect(fresh).toBeLessThan(inner + height);
      }),
    );
  });
  it('lasts until its limit at the wear so far: 2 mm in 6 h leave 6 h for the next 2 mm (by hand)', () => {
    const worn = wearOf({ fresh: 0.006, now: 0.004, limit: 0.002, hours: 6 * 3600 });
    expect(worn.until / 3600).toBeCloseTo(6, 9);
    expect(wearOf({ fresh: 0.006, now: 0.006, limit: 0.002, hours: 1 }).until).toBe(Number.POSITIVE_INFINITY);
    expect(wearOf({ fresh: 0.006, now: 0.001, limit: 0.002, hours: 1 }).until).toBe(0);
  });
});

describe('a stop', () => {
  it('is four times as long from twice the speed, and adds up in parts', () => {
    fc.assert(
      fc.property(size(5, 20), size(21, 40), size(3, 15), (middle, from, slow) => {
        const whole = brakingDistance({ from, to: 0 }, slow);
        expect(brakingDistance({ from: 2 * from, to: 0 }, slow) / whole).toBeCloseTo(4, 9);
        const parts = brakingDistance({ from, to: middle }, slow) + brakingDistance({ from: middle, to: 0 }, slow);
        expect(parts).toBeCloseTo(whole, 9);
      }),
    );
  });
});

describe('the brakes, asked', () => {
  it('agree with the force balance worked outside the project, without losses (checks: brake.chain)', () => {
    const answer = ask({ efficiency: '100 %' });
    expect(si(answer, 'pressure front') / 1e5).toBeCloseTo(40.2115, 3);
    expect(si(answer, 'braking force front')).toBeCloseTo(1250.648, 2);
    expect(si(answer, 'braking force rear')).toBeCloseTo(1608.54, 2);
    expect(si(answer, 'front share of braking')).toBeCloseTo(0.43741, 5);
  });
  it('grow in step with the foot, until the tyres lock', () => {
    const [soft, hard] = [ask({ 'pedal force': '100 N' }), ask({ 'pedal force': '200 N' })];
    expect(si(hard, 'deceleration asked for') / si(soft, 'deceleration asked for')).toBeCloseTo(2, 9);
    const standing = ask({ 'pedal force': '900 N' });
    expect(si(standing, 'deceleration without locking')).toBeLessThan(si(standing, 'deceleration asked for'));
    expect(standing.say.join(' ')).toMatch(/900 N on the pedal is more than the tyres take/);
  });
  it('lock at the pedal force they name, and the bar they name uses both axles alike', () => {
    const first = ask();
    const atLock = ask({ 'pedal force': `${si(first, 'pedal force at the first lock')} N` });
    expect(si(atLock, 'deceleration asked for')).toBeCloseTo(si(first, 'deceleration without locking'), 6);
    const set = ask({ 'bar offset': `${si(first, 'ideal bar offset') * 1000} mm` });
    expect(si(set, 'front locks at')).toBeCloseTo(si(set, 'rear locks at'), 6);
    expect(set.say.join(' ')).toMatch(/The bar stands where both axles are used alike/);
  });
  it('name the rear axle as one, with what that does, where it locks first', () => {
    const answer = ask({ 'bar offset': '-3 mm', ...rear({ 'pistons a side': '1' }) });
    expect(answer.say[0]).toMatch(/First to lock: the rear axle, both wheels at once/);
    expect(answer.say.join(' ')).toMatch(/toward the front clevis/);
    expect(answer.notes.join(' ')).toMatch(/Pull the clutch/);
    expect(ask().say.join(' ')).toMatch(/The bar alone should not give that/);
  });
  it('work with a rear brake alone', () => {
    const answer = ask({ front: null, 'bar spacing': null, 'bar offset': null });
    expect(si(answer, 'front share of braking')).toBe(0);
    expect(answer.figures['front locks at']).toBeUndefined();
    expect(answer.say[0]).toMatch(/the rear axle/);
  });
  it('heat a disc by what the stop takes out, shared as the braking is (by hand)', () => {
    const answer = ask();
    const energy = 0.5 * 1.04 * 181 * (100 / 3.6) ** 2;
    const share = si(answer, 'front share of braking');
    expect(si(answer, 'rise of one front disc')).toBeCloseTo((energy * share) / 2 / (0.4 * 460), 6);
    expect(si(answer, 'rise of one rear disc')).toBeCloseTo((energy * (1 - share)) / (1 * 460), 6);
  });
  it('say to replace what is at its limit', () => {
    const worn = ask(rear({ pad: { now: '1.5 mm' }, disc: { now: '5.2 mm', limit: '5 mm' } }));
    expect(worn.say.join(' ')).toMatch(/Replace the rear pad now/);
    expect(worn.say.join(' ')).toMatch(/The rear disc has 0.20 mm left/);
    expect(ask().say.join(' ')).toMatch(/front pad has 2.00 mm left to its limit of 2.00 mm; at this rate about 6.0 h/);
  });
  it('take the same disc from its diameter and pad height', () => {
    const given = ask(rear({ 'effective radius': undefined, 'disc diameter': '195 mm', 'pad height': '35 mm' }));
    expect(si(given, 'torque of one caliper rear')).toBeCloseTo(si(ask(), 'torque of one caliper rear'), 9);
  });
  it('mark what lies outside validity, and carry the caution', () => {
    expect(ask({ 'pedal force': '1500 N' }).notes.join(' ')).toMatch(/Outside validity: more than 1000 N/);
    expect(ask({ 'bar spacing': '60 mm', 'bar offset': '29 mm' }).notes.join(' ')).not.toMatch(/are the two exchanged/);
    expect(ask(rear({ 'master bore': '27 mm' })).notes.join(' ')).toMatch(/are the two exchanged/);
    expect(ask().say.at(-1)).toMatch(/^Caution: nothing else stops the kart/);
    expect(JSON.stringify(ask())).not.toMatch(/\bsafe\b/i);
  });
});

describe('a question about brakes that cannot be', () => {
  it('is refused with all problems at once', () => {
    const paths = wrong({ mass: '-181 kg', speed: '10 km/h', 'speed after': '20 km/h', ...rear({ calipers: '1.5' }) });
    expect(paths.map(p => p.path)).toEqual(['mass', 'speed after', 'rear/calipers']);
  });
  it.each([
    ['a bare number', { mass: 181 }, 'mass'],
    ['a wrong unit', rear({ 'master bore': '16 N' }), 'rear/master bore'],
    ['no ratio', { 'pedal ratio': null }, 'pedal ratio'],
    ['a pedal upside down', { 'pedal ratio': null, 'pad to pivot': '50 mm', 'rod to pivot': '210 mm' }, 'rod to pivot'],
    ['half a pedal', { 'pedal ratio': null, 'pad to pivot': '210 mm' }, 'rod to pivot'],
    ['ratio and lengths', { 'pad to pivot': '210 mm' }, 'pedal ratio'],
    ['a bearing outside its bar', { 'bar offset': '31 mm' }, 'bar offset'],
    ['a front circuit without a bar', { 'bar spacing': null }, 'bar spacing'],
    ['a bar without a front circuit', { front: null }, 'bar spacing'],
    ['a radius that is a diameter', rear({ 'effective radius': '160 mm' }), 'rear/effective radius'],
    ['radius and diameter', front({ 'disc diameter': '150 mm' }), 'front/effective radius'],
    ['no radius', front({ 'effective radius': undefined }), 'front/effective radius'],
    [
      'a pad higher than its disc',
      front({ 'effective radius': undefined, 'disc diameter': '40 mm', 'pad height': '150 mm' }),
      'front/pad height',
    ],
    ['height and wheelbase exchanged', { wheelbase: '240 mm', 'centre height': '1045 mm' }, 'centre height'],
    ['a share above all', { 'front load share': '417 %' }, 'front load share'],
    ['friction whose limits pass 0', { 'pad friction': '0.4 ± 0.5' }, 'pad friction'],
    ['now and new exchanged', front({ pad: { now: '6 mm', new: '4 mm', 'hours run': '6 h' } }), 'front/pad/now'],
    ['a disc without its limit', front({ disc: { now: '4 mm' } }), 'front/disc/limit'],
    ['hours without a new size', front({ pad: { now: '4 mm', 'hours run': '6 h' } }), 'front/pad/new'],
    ['a reaction without a speed', { speed: null }, 'speed'],
    ['a key that is not known', rear({ colour: 'red' }), 'rear/colour'],
  ])('%s', (_, over, path) => {
    const found = wrong(over);
    expect(found.map(p => p.path)).toContain(path);
    for (const problem of found) for (const text of Object.values(problem)) expect(text).not.toBe('');
  });
  it('never throws, whatever comes', () => {
    fc.assert(fc.property(fc.anything(), input => void brakes.ask(input)));
    fc.assert(
      fc.property(
        fc.dictionary(
          fc.constantFrom(...Object.keys(base)),
          fc.oneof(fc.string(), fc.constant('-3 mm'), fc.constant('0')),
        ),
        over => void brakes.ask({ ...base, ...over }),
      ),
    );
  });
});
