/** What `calc lap` is asked, bare numbers in SI as its keys say, and what can be wrong with it. */
import { z } from 'zod';
import { arcOf, type Element, type LapKart, lengthOf, trackOf } from '../laps/index.ts';
import type { InputProblem } from '../numbers/index.ts';

const above = (what: string) => z.number().positive().describe(what);
const from0 = (what: string) => z.number().min(0).describe(what);

const kart = z.strictObject({
  name: z.string().optional().describe('not read'),
  m: above('mass with driver and fuel, kg'),
  g: above('gravity, m/s²'),
  rho: above('air, kg/m³'),
  mu_y: above('grip sideways at the load of m0'),
  mu_x: above('grip along at the load of m0'),
  m0: above('mass at which both hold, kg'),
  p: z.number().min(0).lt(1).describe('how grip falls with load: mu = mu0 (N/N0)^-p'),
  k_drive: above('share of mu_x that drives'),
  k_brake: above('share of mu_x that brakes'),
  F_brake_max: from0('most braking force of brakes and foot, N'),
  CdA: from0('drag area, m²'),
  ClA: z.number().describe('downforce area, m²; below 0 lifts'),
  Crr: from0('rolling resistance over load'),
  k_s0: from0('scrub: m v² k (k_s0 + k_s1 k), k curvature'),
  k_s1: from0('scrub that grows with curvature, m'),
  rpm: z.array(from0('1/min')).min(1).max(10_000).describe('speeds of the torque table, rising'),
  torque: z.array(from0('N m')).min(1).max(10_000).describe('torque at the crank at each'),
  power_scale: from0('on all torques'),
  eta: z.number().positive().max(1).describe('crank to ground'),
  primary: above('primary ratio'),
  gears: z.array(above('ratio')).min(1).max(12).describe('gear ratios, first to last'),
  z_front: above('teeth in front'),
  z_rear: above('teeth on the axle'),
  r: above('rolling radius, m'),
  rpm_shift_max: above('no gear but the last is held beyond, 1/min'),
  rpm_limit: above('no drive from here on, 1/min'),
  rpm_clutch: from0('the first gear slips up to here, 1/min'),
  J_wheel: from0('axle and wheels, kg m²'),
  J_engine: from0('what turns with the crank, kg m²'),
  t_shift: from0('no drive for so long at each upshift, s'),
  v_cap: above('speed that stands for the limit of a straight, m/s'),
});
const element = z.union([
  z.tuple([z.literal('S'), above('length, m')]),
  z.tuple([
    z.literal('C'),
    above('radius, m'),
    z.number().describe('turn, degrees, left above 0'),
    from0('clothoid, m'),
  ]),
]);

export const lapQuestion = z.strictObject({
  kart: kart.describe('the kart as a point; SI, engine speeds in 1/min'),
  track: z
    .array(element)
    .min(1)
    .max(2000)
    .describe('["S", length] and ["C", radius, turn, length of the clothoid at either end], in the order driven'),
  step: z.number().min(0.001).max(50).default(1).describe('m, no cell is longer'),
  closed: z.boolean().default(true).describe('false: a piece of road driven once, lapTime is its time'),
  begin: from0('of an open track: speed at its start, m/s; left out, the most that can be held').optional(),
  end: from0('of an open track: speed not to be passed at its end, m/s').optional(),
  profile: z.boolean().default(false).describe('speed and time along the lap too'),
});
export type LapQuestion = z.output<typeof lapQuestion>;
type Asked = LapQuestion['kart'];

const RPM = Math.PI / 30; // rad/s
const MOST_CELLS = 200_000;

export const kartOf = (asked: Asked): LapKart => ({
  mass: asked.m,
  gravity: asked.g,
  air: asked.rho,
  grip: {
    ...{ side: asked.mu_y, along: asked.mu_x, atMass: asked.m0, fall: asked.p },
    ...{ driveShare: asked.k_drive, brakeShare: asked.k_brake },
  },
  brakeCap: asked.F_brake_max,
  dragArea: asked.CdA,
  downforceArea: asked.ClA,
  rolling: asked.Crr,
  scrub: { flat: asked.k_s0, tight: asked.k_s1 },
  engine: {
    ...{ speeds: asked.rpm.map(rpm => rpm * RPM), torques: asked.torque, scale: asked.power_scale },
    ...{ shiftBy: asked.rpm_shift_max * RPM, limit: asked.rpm_limit * RPM, clutch: asked.rpm_clutch * RPM },
    ...{ inertia: asked.J_engine, shiftTime: asked.t_shift },
  },
  gearing: {
    ...{ primary: asked.primary, gears: asked.gears, front: asked.z_front, rear: asked.z_rear },
    efficiency: asked.eta,
  },
  wheel: { radius: asked.r, inertia: asked.J_wheel },
  speedCap: asked.v_cap,
});

/** What no shape can say; all at once. */
export function lapProblems({ kart: asked, track, step, closed, begin, end }: LapQuestion): readonly InputProblem[] {
  const found: InputProblem[] = [];
  const wrong = (path: string, expected: string, got: string | number, remedy: string): void => {
    found.push({ path, expected, got: String(got), remedy });
  };
  if (asked.torque.length !== asked.rpm.length)
    wrong('kart/torque', `${asked.rpm.length} torques, one for each rpm`, asked.torque.length, 'write one for each');
  const falls = asked.rpm.findIndex((rpm, n) => n > 0 && !(rpm > (asked.rpm[n - 1] as number)));
  if (falls > 0)
    wrong(
      `kart/rpm/${falls}`,
      `more than ${asked.rpm[falls - 1]}`,
      asked.rpm[falls] ?? '',
      'write the table from slow to fast',
    );
  const longer = asked.gears.findIndex((gear, n) => n > 0 && !(gear < (asked.gears[n - 1] as number)));
  if (longer > 0)
    wrong(
      `kart/gears/${longer}`,
      `less than ${asked.gears[longer - 1]}`,
      asked.gears[longer] ?? '',
      'write the gears from first to last, turns of the engine for one of the shaft',
    );
  if (asked.rpm_shift_max > asked.rpm_limit)
    wrong(
      'kart/rpm_shift_max',
      `at most rpm_limit, ${asked.rpm_limit}`,
      asked.rpm_shift_max,
      'shift before the engine cuts out',
    );
  track.forEach((one, n) => {
    if (one[0] === 'C' && one[2] === 0) wrong(`track/${n}/2`, 'a turn that is not 0', 0, 'write a straight instead');
    else if (one[0] === 'C' && arcOf(one as Extract<Element, readonly ['C', ...unknown[]]>) < -1e-9)
      wrong(
        `track/${n}/3`,
        `a clothoid of at most ${(one[3] + arcOf(one as Extract<Element, readonly ['C', ...unknown[]]>)).toFixed(2)} m, radius times turn`,
        one[3],
        'both clothoids turn half of it each: shorten them, or widen the corner',
      );
  });
  const cells = lengthOf(trackOf(track)) / step;
  if (cells > MOST_CELLS) wrong('step', `cells up to ${MOST_CELLS}`, Math.round(cells), 'take a longer step');
  if (closed)
    for (const [path, given] of Object.entries({ begin, end }))
      if (given !== undefined) wrong(path, 'nothing on a closed track', given, 'leave it out, or say "closed": false');
  return found;
}
