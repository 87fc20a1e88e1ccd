/**
 * Lap times: closed forms, and invented tracks driven with an invented kart by two other methods, all worked outside the
 * project with numpy 2.4 and scipy 1.17. Lap times are asked as anyone can ask them, through `calc lap`.
 */
import { describe } from 'vitest';
import { bareProblems } from '../src/app/index.ts';
import { type Change, type Element, GENERIC_KART, predictorOf, sensitivitiesOf, trackOf } from '../src/laps/index.ts';
import fixture from '../test/fixtures/laps/tracks.json' with { type: 'json' };
import rows from './rows/laps-predict.json' with { type: 'json' };
import { type Given, list, type Numbers, number, type Row, runRows } from './rows.ts';

type Kart = typeof fixture.kart;
type Elements = readonly (readonly (number | string)[])[];
type Lap = Readonly<Record<'lapTime' | 'vMax' | 'vMin' | 'vEnd' | 'length' | 'upshifts', number>> & {
  readonly corners: readonly { readonly vMin: number }[];
  readonly gears: { readonly upshift: number[]; readonly limit: number[]; readonly topSpeed: number };
  readonly profile: { readonly at: number[]; readonly speed: number[]; readonly time: number[] };
};
const lap = (await bareProblems()).find(({ name }) => name === 'lap');

function ask(question: Readonly<Record<string, unknown>>): Lap {
  const answer = lap?.ask(question);
  if (answer === undefined || Array.isArray(answer) || !('lapTime' in answer)) throw new Error(JSON.stringify(answer));
  return answer as unknown as Lap;
}

const track = (given: Given): Elements => fixture.tracks[String(given.track) as keyof typeof fixture.tracks];
const times = (given: Given, change: Partial<Kart> = {}): Lap =>
  ask({ kart: { ...fixture.kart, ...change }, track: track(given), step: given.step });

const G = 9.80665;
const RPM = Math.PI / 30;
/** Nothing holds it, one gear, 1 N m of torque is 1 N at the ground, and there is no end to them. */
const BARE: Kart = {
  ...fixture.kart,
  ...{ m: 180, m0: 180, g: G, mu_y: 2, mu_x: 2, p: 0, k_drive: 1, k_brake: 1, F_brake_max: 1e9 },
  ...{ CdA: 0, ClA: 0, Crr: 0, k_s0: 0, k_s1: 0, rpm: [0], torque: [1e6], eta: 1, primary: 1, gears: [1] },
  ...{ z_front: 1, z_rear: 1, r: 1, rpm_shift_max: 1e9, rpm_limit: 1e9, rpm_clutch: 0, J_wheel: 0, J_engine: 0 },
  ...{ t_shift: 0, v_cap: 200 },
};
/** Enough grip that only the force is felt. */
const STRAIGHT = { mu_x: 1e6 };
const area = (c: number): number => (2 * c) / fixture.kart.rho;
const circle = (radius: number): Elements => [['C', radius, 360, 0]];
const part = (radius: number, length: number): Elements => [['C', radius, (length / radius) * (180 / Math.PI), 0]];
const from = (step: unknown, kart: Partial<Kart>, road: Elements, ends: object): Lap =>
  ask({ kart: { ...BARE, ...kart }, track: road, step, closed: false, profile: true, ...ends });

const CASES: Readonly<Record<string, (given: Given) => Numbers>> = {
  A1: given => fromRest(given, { torque: [number(given, 'F')] }),
  A2: given => fromRest(given, constantPower(number(given, 'P'))),
  A3: given => fromRest(given, { torque: [number(given, 'F')], CdA: area(number(given, 'c')) }),
  A4: given => {
    const [begin, slow] = [number(given, 'v0'), number(given, 'v1')];
    const kart = { torque: [0], CdA: area(number(given, 'c')), Crr: number(given, 'f') / (180 * G) };
    const { at, speed, time } = from(given.step, kart, [['S', 400]], { begin }).profile;
    const below = speed.findIndex(each => each < slow);
    const [fast, slower] = [speed[below - 1] ?? Number.NaN, speed[below] ?? Number.NaN];
    const share = (fast - slow) / (fast - slower);
    const between = (of: readonly number[]): number =>
      (of[below - 1] ?? Number.NaN) * (1 - share) + (of[below] ?? Number.NaN) * share;
    return { t: between(time), s: between(at) };
  },
  A6: given => {
    const { vMin, lapTime } = round(given, {});
    return { v: vMin, lap: lapTime };
  },
  A7: given => {
    const [c, f] = [area(number(given, 'c')), number(given, 'f') / (180 * G)];
    const scrub = { k_s0: number(given, 'k_s0'), k_s1: number(given, 'k_s1') };
    const shares = { mu_x: number(given, 'mu_x'), k_drive: number(given, 'k_drive'), CdA: c, Crr: f };
    const { vMin, lapTime } = round(given, { ...shares, ...scrub });
    const { vMin: limit } = round(given, {});
    return { v: vMin, v_lateral_limit: limit, lap: lapTime };
  },
  A8: given => ({ v: round(given, { ClA: number(given, 'ClA'), rho: number(given, 'rho') }).vMin }),
  A8b: given => ({ v: round(given, { m: 200, p: number(given, 'p') }).vMin }),
  A9: given => {
    const [a, b, length] = [number(given, 'a'), number(given, 'b'), number(given, 'L')];
    const half: Elements = [
      ['S', length],
      ['C', number(given, 'R'), 180, 0],
    ];
    const kart = { ...BARE, mu_x: b / G, k_drive: a / b };
    const { lapTime, vMin, vMax, profile } = ask({ kart, track: [...half, ...half], step: given.step, profile: true });
    // Both lines lead to the peak, whose place is in no cell's end: from the speed before it at a, from that behind at b.
    const brake = (vMax ** 2 - vMin ** 2) / (2 * a);
    if (!profile.at.some((at, n) => Math.abs(at - brake) < 1 && Math.abs((profile.speed[n] ?? 0) - vMax) < 0.5))
      throw new Error('A9: the peak must lie where the brake point is');
    return { lap: lapTime, v_corner: vMin, v_peak: vMax, brake_point: brake };
  },
  A11: given => {
    const { upshift, limit, topSpeed } = times({ ...given, track: 'K1' }).gears;
    const by = limit.map(each => (each * fixture.kart.rpm_shift_max) / fixture.kart.rpm_limit);
    return { v_at_limit: limit, v_at_shift_max: by, v_up: upshift, top_speed_6th: topSpeed };
  },
  A13: given => {
    const radius = number(given, 'R');
    const kart = { mu_x: number(given, 'a_drive_max') / G };
    const run = (length: number): Lap => from(given.step, kart, part(radius, length), { begin: number(given, 'v0') });
    const { vEnd, lapTime } = run(number(given, 's'));
    // The root of what z lacks of its limit goes to nothing in a straight line: drawn on from two places.
    const { at, speed } = run(30).profile;
    const lack = (n: number): number => Math.sqrt(1 - (speed[n] ?? Number.NaN) ** 2 / (2 * G * radius));
    const near = at.findIndex(each => each > number(given, 's_to_limit_near')) - 1;
    const [x, y] = [at[near - 4] ?? Number.NaN, at[near] ?? Number.NaN];
    const limit = y + (lack(near) * (y - x)) / (lack(near - 4) - lack(near));
    return { v_end: vEnd, t: lapTime, s_to_limit: limit };
  },
  A14: given => {
    const kart = { mu_x: number(given, 'a_brake_max') / G };
    const road = part(number(given, 'R'), number(given, 's'));
    const { profile, lapTime } = from(given.step, kart, road, { end: number(given, 'v_end') });
    return { v_start: profile.speed[0] ?? Number.NaN, t: lapTime };
  },
  M1: given => {
    const on = (q: number): number =>
      ask({ kart: { ...BARE, mu_x: 1.6 * q, mu_y: 2 * q, k_drive: 0.62 }, track: fixture.tracks.K2, step: given.step })
        .lapTime;
    return { ratio: list(given, 'q').map(q => on(q) / on(1)) };
  },
  M2: given => {
    const on = (q: number): number => {
      const larger = fixture.tracks.K2.map(one =>
        one.map((value, n) => (typeof value === 'number' && n !== 2 ? value * q : value)),
      );
      const kart = { ...BARE, mu_x: 1.6, k_drive: 0.62 };
      return ask({ kart, track: larger, step: number(given, 'step') * q }).lapTime;
    };
    return { ratio: list(given, 'q').map(q => on(q) / on(1)) };
  },
  M3: given => {
    const kart = { ...fixture.kart, p: 0 };
    const on = (road: Elements, change: Partial<Kart> = {}): number =>
      ask({ kart: { ...kart, ...change }, track: road, step: given.step }).lapTime;
    const road = track(given);
    const turned = number(given, 'elements');
    const by = number(given, 'scale');
    const rotated = on([...road.slice(turned), ...road.slice(0, turned)]);
    const mirrored = on(road.map(one => one.map((value, n) => (n === 2 ? -Number(value) : value))));
    const { m, m0, F_brake_max, CdA, J_wheel, J_engine, power_scale } = fixture.kart;
    const scaled = on(road, {
      ...{ m: m * by, m0: m0 * by, F_brake_max: F_brake_max * by, CdA: CdA * by },
      ...{ J_wheel: J_wheel * by, J_engine: J_engine * by, power_scale: power_scale * by },
    });
    const was = on(road);
    return { rotated: rotated / was, mirrored: mirrored / was, scaled: scaled / was };
  },
};

function fromRest({ step, L }: Given, kart: Partial<Kart>): Numbers {
  const { lapTime, vEnd } = from(step, { ...STRAIGHT, ...kart }, [['S', Number(L)]], { begin: 0 });
  return { t: lapTime, v_end: vEnd };
}

/** Torque falls as speed grows: a table so fine that a straight line between two entries is 1e-5 off. */
function constantPower(power: number): Partial<Kart> {
  const speeds = Array.from({ length: 2000 }, (_, n) => 0.1 * 1.004 ** n);
  return { rpm: speeds.map(speed => speed / RPM), torque: speeds.map(speed => power / speed) };
}

const round = (given: Given, kart: Partial<Kart>): Lap =>
  ask({
    kart: { ...BARE, mu_y: Number(given.mu_y ?? given.mu ?? given.mu0), ...kart },
    ...{ track: circle(number(given, 'R')), step: given.step },
  });

const CHANGED: Readonly<Record<string, Change>> = { shift: 'shift time', brake: 'brakes', radius: 'rolling radius' };

function sensitivity(given: Given): Numbers {
  const predictor = predictorOf(trackOf(track(given) as readonly Element[]), { step: number(given, 'step') });
  const name = CHANGED[String(given.change)] ?? given.change;
  const found = sensitivitiesOf(predictor, GENERIC_KART).find(({ change }) => change === name);
  return { seconds: found?.seconds ?? Number.NaN };
}

function sprockets(given: Given): Numbers {
  const teeth = list(given, 'z_rear');
  const lapTimes = teeth.map(rear => times(given, { z_rear: rear }).lapTime);
  return { lapTimes, best: teeth[lapTimes.indexOf(Math.min(...lapTimes))] ?? Number.NaN };
}

function onTrack(given: Given): Numbers {
  const { corners, lapTime, vMax, vMin, upshifts, length } = times(
    given,
    given.t_shift === undefined ? {} : { t_shift: number(given, 't_shift') },
  );
  const asked = corners.filter((_, n) => n !== given.without && (given.only === undefined || n === given.only));
  return { lapTime, vMax, vMin, upshifts, length, corners: asked.map(corner => corner.vMin) };
}

describe('laps: predicted', () => {
  runRows(rows as unknown as readonly Row[], (given, { id }) => {
    const [, family = '', name = ''] = id.split('.');
    const answer = { track: onTrack, convergence: onTrack, sprockets, sensitivity }[family] ?? CASES[family];
    if (answer === undefined) throw new Error(`no answer for ${id} ${name}`);
    return answer(given);
  });
});
