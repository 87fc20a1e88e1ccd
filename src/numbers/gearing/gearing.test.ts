import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Answer, InputProblem } from '../subject.ts';
import { gearing, pushOf } from './gearing.ts';
import { oneTooth, pairsFor, wantedRatio } from './pairs.ts';
import { circumferenceFrom, DIRECT, overallRatios, rotationAfter, rotationAt, speedInGear } from './ratio.ts';
import { shiftPoints } from './shift.ts';
import { type TorqueCurve, torqueAt } from './torque-curve.ts';
import { resistanceAt, topSpeed, tractionCurve, tractiveForce } from './traction.ts';

type Over = Readonly<Record<string, unknown>>;
/** The example with some keys over it; `null` takes one out. */
const question = (over: Over): Over =>
  Object.fromEntries(Object.entries({ ...gearing.example, ...over }).filter(([, value]) => value !== null));
const ask = (over: Over = {}): Answer => {
  const answer = gearing.ask(question(over));
  if (answer.kind !== 'answer') throw new Error(JSON.stringify(answer.problems));
  return answer;
};
const wrong = (over: Over): readonly InputProblem[] => {
  const answer = gearing.ask(question(over));
  if (answer.kind !== 'problems') throw new Error('it was answered');
  return answer.problems;
};
const problem = (over: Over, path: string): string => {
  const found = wrong(over).find(each => each.path === path);
  return found ? `${found.expected}; ${found.got}; ${found.remedy}` : `no problem at ${path}`;
};
const DIRECT_DRIVE = { drive: 'direct', 'primary ratio': null, gears: null, 'wanted gear': null };
const NO_CURVE = {
  limiter: null,
  'torque curve': null,
  mass: null,
  'drag area': null,
  'rolling resistance': null,
  'air density': null,
};
const RPM = Math.PI / 30;
const size = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const teeth = fc.integer({ min: 8, max: 100 });
const at = fc.record({ ratio: size(1, 20), circumference: size(0.7, 1.1) });

describe('speed in a gear', () => {
  it('comes back as the engine speed it was made from, and the log gives the circumference back', () => {
    fc.assert(
      fc.property(at, size(50, 2000), ({ ratio, circumference }, rotation) => {
        const speed = speedInGear({ rotation, ratio, circumference });
        expect(rotationAt({ speed, ratio, circumference }) / rotation).toBeCloseTo(1, 9);
        expect(circumferenceFrom({ rotation, speed, ratio }) / circumference).toBeCloseTo(1, 9);
      }),
    );
  });
  it('rises with engine speed (slope against finite difference) and falls with the ratio', () => {
    fc.assert(
      fc.property(at, size(100, 1500), (drive, rotation) => {
        const speed = (n: number): number => speedInGear({ ...drive, rotation: n });
        const slope = (speed(rotation + 0.01) - speed(rotation - 0.01)) / 0.02;
        expect(slope).toBeCloseTo(drive.circumference / (2 * Math.PI * drive.ratio), 6);
        expect(speedInGear({ ...drive, rotation, ratio: drive.ratio * 1.01 })).toBeLessThan(speed(rotation));
      }),
    );
  });
  it('is the same before and after a shift', () => {
    fc.assert(
      fc.property(size(100, 1500), size(5, 20), size(2, 5), (rotation, from, into) => {
        const after = rotationAfter(rotation, from, into);
        const speed = speedInGear({ rotation, ratio: from, circumference: 0.86 });
        expect(speedInGear({ rotation: after, ratio: into, circumference: 0.86 }) / speed).toBeCloseTo(1, 9);
      }),
    );
  });
  it('needs no gears in direct drive', () => {
    expect(overallRatios(DIRECT, { front: 10, rear: 80 })).toEqual([8]);
  });
});

describe('the sprockets of the box', () => {
  const box = fc.record({
    front: fc.array(teeth, { minLength: 1, maxLength: 6 }),
    rear: fc.array(teeth, { minLength: 1, maxLength: 9 }),
  });
  const wants = fc.record({
    rotation: size(500, 1500),
    speed: size(10, 50),
    inside: size(1, 6),
    circumference: size(0.7, 1.1),
  });

  it('come nearest first, each once, and the wanted ratio brings the wanted engine speed', () => {
    fc.assert(
      fc.property(wants, box, (wanted, owned) => {
        const pairs = pairsFor(wanted, owned);
        expect(pairs.length).toBe(new Set(owned.front).size * new Set(owned.rear).size);
        const off = pairs.map(pair => Math.abs(pair.off));
        for (const [n, one] of off.entries())
          expect(one).toBeGreaterThanOrEqual((off[n - 1] ?? 0) - 1e-8 * wanted.rotation);
        const ratio = wantedRatio(wanted) * wanted.inside;
        expect(rotationAt({ ...wanted, ratio }) / wanted.rotation).toBeCloseTo(1, 9);
      }),
    );
  });
  it('of one ratio are a tie, the one with more teeth first, and what follows is ranked behind both', () => {
    const wanted = { rotation: 1300, speed: 30, inside: 4, circumference: 0.86 };
    const pairs = pairsFor(
      { ...wanted, rotation: rotationAt({ ...wanted, ratio: 4 * 1.5 }) },
      { front: [16, 18], rear: [24, 27] },
    );
    expect(pairs.slice(0, 3).map(({ front, rear, rank }) => [front, rear, rank])).toEqual([
      [18, 27, 1],
      [16, 24, 1],
      [18, 24, 3],
    ]);
  });
  it('change the ratio by a tooth as counting says', () => {
    fc.assert(
      fc.property(fc.integer({ min: 9, max: 30 }), fc.integer({ min: 30, max: 90 }), (front, rear) => {
        const { lessFront, moreRear } = oneTooth({ front, rear });
        expect(rear / (front - 1) / (rear / front) - 1).toBeCloseTo(lessFront, 9);
        expect((rear + 1) / front / (rear / front) - 1).toBeCloseTo(moreRear, 9);
        expect(lessFront).toBeGreaterThan(moreRear);
      }),
    );
  });
});

const CURVE: TorqueCurve = (
  [
    [7000, 16],
    [9000, 21],
    [10000, 23.5],
    [11000, 24.5],
    [12000, 22.9],
    [13000, 17.8],
    [13500, 13.5],
  ] as const
).map(([rpm, torque]) => ({ rotation: rpm * RPM, torque }));
/** A curve that rises to a peak and falls, as engines do. */
const curves = fc
  .array(size(1, 30), { minLength: 4, maxLength: 10 })
  .map(steps => steps.map((torque, n): TorqueCurve[number] => ({ rotation: 600 + n * 100, torque })));

describe('a shift point', () => {
  it('is the highest engine speed where the next gear pushes as hard, as a slow walk down from the limiter finds it', () => {
    fc.assert(
      fc.property(curves, size(1.05, 1.6), (curve, step) => {
        const limiter = curve.at(-1)?.rotation ?? 0;
        const [point] = shiftPoints(curve, { gears: [step, 1], limiter });
        const gain = (n: number): number => torqueAt(curve, n) * step - torqueAt(curve, n / step);
        const foot = 600 * step;
        if (!point || point.kind === 'not known') {
          for (let n = limiter; n > foot; n -= 0.5) expect(gain(n)).toBeLessThanOrEqual(1e-9);
          return;
        }
        if (point.kind === 'limiter') {
          expect(gain(limiter)).toBeGreaterThan(0);
          return;
        }
        expect(gain(point.rotation)).toBeCloseTo(0, 6);
        for (let n = limiter; n > point.rotation + 1e-6; n -= 0.5) expect(gain(n)).toBeLessThanOrEqual(1e-9);
        expect(point.after).toBeCloseTo(point.rotation / step, 9);
      }),
      { numRuns: 60 },
    );
  });
  it('does not change when all of the torque is scaled', () => {
    const gears = [2.5, 1.8, 1.5];
    const twice = CURVE.map(point => ({ ...point, torque: point.torque * 2 }));
    const rotations = (curve: TorqueCurve) =>
      shiftPoints(curve, { gears, limiter: 13500 * RPM }).map(p =>
        p.kind === 'not known' ? p.why : p.rotation.toFixed(6),
      );
    expect(rotations(twice)).toEqual(rotations(CURVE));
  });
  it('is the limiter where this gear still pushes harder there', () => {
    const flat = [7000, 13500].map(rpm => ({ rotation: rpm * RPM, torque: 20 }));
    expect(shiftPoints(flat, { gears: [1.5, 1.2], limiter: 13000 * RPM })).toEqual([
      { kind: 'limiter', rotation: 13000 * RPM, after: (13000 * RPM) / 1.25 },
    ]);
  });
  it('is not known where the curve ends first, and where the next gear would fall below its beginning', () => {
    const flat = [7000, 12000].map(rpm => ({ rotation: rpm * RPM, torque: 20 }));
    expect(shiftPoints(flat, { gears: [1.5, 1.2], limiter: 13000 * RPM })).toEqual([
      { kind: 'not known', why: 'curve ends below the limiter' },
    ]);
    expect(shiftPoints(flat, { gears: [4, 1], limiter: 12000 * RPM })).toEqual([
      { kind: 'not known', why: 'curve begins above the next gear' },
    ]);
  });
  it('is asked of an empty curve without harm', () => {
    expect(shiftPoints([], { gears: [2, 1], limiter: 1000 })).toMatchObject([{ kind: 'not known' }]);
  });
});

describe('push and drag', () => {
  const line = { primary: 75 / 19, gears: [2.5, 1.5, 1], front: 17, rear: 24, circumference: 0.86, efficiency: 0.92 };
  const against = { density: 1.2, dragArea: 0.55, rolling: 0.025, mass: 180 };

  it('is the power that leaves the driveline: force times speed', () => {
    for (const [n, pushes] of tractionCurve(CURVE, line).entries())
      for (const { rotation, speed, force } of pushes) {
        expect((force * speed) / (torqueAt(CURVE, rotation) * rotation * line.efficiency), `gear ${n + 1}`).toBeCloseTo(
          1,
          9,
        );
      }
  });
  it('ends at the limiter', () => {
    for (const pushes of tractionCurve(CURVE, line, 12500 * RPM))
      expect(pushes.at(-1)?.rotation).toBeCloseTo(12500 * RPM, 9);
  });
  it('scales with torque and ratio', () => {
    const push = { torque: 20, ratio: 9, efficiency: 0.9, circumference: 0.86 };
    expect(tractiveForce({ ...push, ratio: 18 })).toBeCloseTo(2 * tractiveForce(push), 9);
    expect(tractiveForce({ ...push, torque: 40 })).toBeCloseTo(2 * tractiveForce(push), 9);
  });
  it('is held back by four times the air at twice the speed, and by rolling at any', () => {
    const rolling = resistanceAt(against, 0);
    expect(rolling).toBeCloseTo(0.025 * 180 * 9.80665, 9);
    expect(resistanceAt(against, 40) - rolling).toBeCloseTo(4 * (resistanceAt(against, 20) - rolling), 9);
  });
  it('meets drag at the top speed, or still pushes where the engine runs out', () => {
    fc.assert(
      fc.property(size(0.3, 3), size(10, 30), (dragArea, rear) => {
        const drive = { ...line, rear };
        const drag = { ...against, dragArea };
        const top = topSpeed(CURVE, drive, drag, 13500 * RPM);
        if (top.kind === 'not reached') return;
        const ratio = overallRatios(drive, drive)[top.gear - 1] ?? Number.NaN;
        const torque = torqueAt(CURVE, Math.min(13500 * RPM, rotationAt({ ...drive, ratio, speed: top.speed })));
        const left = tractiveForce({ ...drive, ratio, torque }) - resistanceAt(drag, top.speed);
        if (top.kind === 'drag') expect(left).toBeCloseTo(0, 6);
        else expect(left).toBeGreaterThan(0);
      }),
    );
  });
  it('is not reached where drag is more than any gear pushes', () => {
    expect(topSpeed(CURVE, line, { ...against, rolling: 5 }, 13500 * RPM)).toEqual({ kind: 'not reached' });
  });
});

describe('the question', () => {
  it('is answered with the pair to fit, the engine speed it brings, and the caution of the chain', () => {
    const { say } = ask();
    expect(say.join(' ')).toMatch(/Fit \d\d\/\d\d \(front\/rear\): 12\d\d0 rpm/);
    expect(say.join(' ')).toContain('engine off and plug cap off');
  });
  it('shows ties as ties', () => {
    const say = ask({
      'front sprockets owned': '16 18',
      'rear sprockets owned': '24 27',
      'wanted engine speed': '13000 rpm',
    }).say.join(' ');
    expect(say).toContain('A tie: 18/27');
    expect(say).toContain('16/24');
  });
  it('says that pairs closer than the tyre is known cannot be told apart', () => {
    expect(ask({ 'rolling circumference': '860 mm ± 30 mm' }).notes.join(' ')).toContain('may be as near as');
    expect(ask({ 'rolling circumference': '860 mm ± 30 mm' }).figures['speed in gear 6']?.text).toMatch(/ ± \d/);
  });
  it('says plainly when the nearest pair would turn the engine over its limiter', () => {
    const say = ask({ 'rear sprockets owned': '27', 'front sprockets owned': '16' }).say.join(' ');
    expect(say).toContain('over the limiter of 13500 rpm');
    expect(say).toContain('seizes');
  });
  it('takes the tyre from a log, with the slip against the tape', () => {
    const log = { 'logged engine speed': '12000 rpm', 'logged speed': '108 km/h', 'logged gear': '6' };
    const answer = ask(log);
    const ratio = (75 / 19) * (24 / 17);
    expect(answer.figures['circumference from the log']?.si).toBeCloseTo((30 * ratio) / 200, 9);
    expect(answer.figures['slip and growth']?.si).toBeCloseTo(1 - (30 * ratio) / 200 / 0.86, 9);
    expect(ask({ ...log, 'rolling circumference': null }).kind).toBe('answer');
  });
  it('doubts a log that differs from the tape by more than a tyre can', () => {
    const log = { 'logged engine speed': '12000 rpm', 'logged speed': '80 km/h', 'logged gear': '6' };
    expect(ask(log).notes.join(' ')).toContain('more than slip and growth explain');
  });
  it('is answered in direct drive, and in mph when asked so', () => {
    const answer = ask({
      ...DIRECT_DRIVE,
      'front sprocket': '10',
      'rear sprocket': '80',
      'wanted speed': '60 mph',
      'front sprockets owned': '10 11',
      'rear sprockets owned': '78..84',
    });
    expect(answer.figures['overall ratio']?.si).toBe(8);
    expect(answer.figures.speed?.unit).toBe('mph');
    expect(answer.say.join(' ')).not.toContain('Shift up');
  });
  it('is answered without a torque curve, and without sprockets owned', () => {
    expect(ask(NO_CURVE).say.join(' ')).not.toContain('Shift up');
    expect(ask({ ...NO_CURVE, 'front sprockets owned': null, 'rear sprockets owned': null }).say[0]).toContain(
      'must be',
    );
    expect(pushOf(question(NO_CURVE))).toBeUndefined();
    expect(pushOf(question({ gears: 'none' }))).toBeUndefined();
  });
});

describe('refused', () => {
  it('a ratio upside down, with the ratio that is meant', () => {
    expect(problem({ 'primary ratio': '19/75' }, 'primary ratio')).toContain(
      'upside down? Driven over driving would be "75/19"',
    );
    expect(problem({ 'primary ratio': '0.25' }, 'primary ratio')).toContain('would be 4.00');
    expect(problem({ gears: '13/33 16/29 18/27 22/27 22/24 25/25' }, 'gears')).toContain('"33/13"');
  });
  it('gears out of order', () => {
    expect(problem({ gears: '1.0 1.09 1.2' }, 'gears')).toContain('begin with first gear');
    expect(problem({ gears: '2.5 2.5 1.5' }, 'gears')).toContain('write each once');
    expect(problem({ gears: '2.5 19' }, 'gears')).toContain('between 0.6 and 5');
  });
  it('sprockets that do not exist', () => {
    for (const odd of ['17.5', '7', '101', '0', '-17', '1.4'])
      expect(problem({ 'front sprocket': odd }, 'front sprocket'), odd).toContain(
        'a whole number of teeth from 8 to 100',
      );
    expect(problem({ 'rear sprockets owned': '22 23.5' }, 'rear sprockets owned')).toContain('23.5');
    expect(problem({ 'front sprocket': '25', 'rear sprocket': '17' }, 'front sprocket')).toContain('exchanged?');
  });
  it('a diameter for a circumference', () => {
    expect(problem({ 'rolling circumference': '274 mm' }, 'rolling circumference')).toContain(
      'is this the diameter? Once round is about 861 mm',
    );
  });
  it('a drive that is not said, gears in direct drive, and no gears in a gearbox', () => {
    expect(problem({ drive: null }, 'drive')).toContain('gearbox');
    expect(problem({ drive: 'direct', 'wanted gear': null }, 'gears')).toContain('none in direct drive');
    expect(problem({ gears: null }, 'gears')).toContain('first gear first');
    expect(problem({ 'wanted gear': '7' }, 'wanted gear')).toContain('a gear from 1 to 6');
  });
  it('engine speeds without a unit or beyond any engine, and a limiter left out', () => {
    expect(problem({ 'engine speed': '12500' }, 'engine speed')).toContain('rpm');
    expect(problem({ 'engine speed': '125000 rpm' }, 'engine speed')).toContain('30000 rpm');
    expect(problem({ limiter: null }, 'limiter')).toContain('the highest engine speed');
    expect(problem({ 'wanted engine speed': '13600 rpm' }, 'wanted engine speed')).toContain('at most the limiter');
  });
  it('a torque curve that turns back, has one point, or is taken at the wheel', () => {
    const point = (at: string, torque: string) => ({ at, torque });
    expect(
      problem({ 'torque curve': [point('9000 rpm', '20 N·m'), point('8000 rpm', '20 N·m')] }, 'torque curve/1/at'),
    ).toContain('in order');
    expect(problem({ 'torque curve': [point('9000 rpm', '20 N·m')] }, 'torque curve')).toContain('at least two');
    expect(
      problem({ 'torque curve': [point('9000 rpm', '20 N·m'), point('9500 rpm', '200 N·m')] }, 'torque curve/1/torque'),
    ).toContain('at the crankshaft');
  });
  it('half of a choice, half of a log and half of drag', () => {
    expect(problem({ 'wanted speed': null }, 'wanted speed')).toContain('for a choice of sprockets');
    expect(problem({ 'logged speed': '100 km/h' }, 'logged engine speed')).toContain('for a log');
    expect(problem({ mass: null }, 'mass')).toContain('for drag');
    expect(problem({ 'rear sprockets owned': null }, 'rear sprockets owned')).toContain('too');
  });
  it('several things at once, all of them', () => {
    expect(
      wrong({ 'front sprocket': '7', 'primary ratio': '0.2', gears: '0.1', 'engine speed': '1 rpm' })
        .map(p => p.path)
        .toSorted(),
    ).toEqual(['engine speed', 'front sprocket', 'gears', 'primary ratio', 'wanted gear']);
  });
  it('nonsense in any field, without ever throwing', () => {
    fc.assert(
      fc.property(fc.constantFrom(...Object.keys(gearing.example)), fc.anything(), (key, value) => {
        const answer = gearing.ask(question({ [key]: value }));
        expect(['answer', 'problems']).toContain(answer.kind);
      }),
    );
  });
});

describe('several numbers in one field', () => {
  it('may be a range, a list, apart by spaces, commas or semicolons, with teeth behind them', () => {
    const owned = (text: unknown): string | undefined =>
      ask({ 'rear sprockets owned': text }).figures['choice 1']?.text;
    const wanted = owned('22..27');
    for (const text of [
      '22 23 24 25 26 27',
      '22, 23, 24, 25, 26, 27',
      '22;23;24;25;26;27 teeth',
      [22, 23, 24, 25, 26, 27],
      ['22', '23', '24', '25', '26', '27'],
    ])
      expect(owned(text)).toBe(wanted);
  });
  it('are refused when nothing, too many or no number is there', () => {
    expect(problem({ gears: '' }, 'gears')).toContain('one after the other');
    expect(problem({ gears: '2.5 fast' }, 'gears')).toContain('begin with a number');
    expect(problem({ 'rear sprockets owned': '10..99' }, 'rear sprockets owned')).toContain('at most 60');
  });
});
