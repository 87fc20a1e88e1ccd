/** `calc lap`: the lap time of a kart as a point on a track of straights, arcs and clothoids. */
import { gearSpeeds, predictorOf, trackOf } from '../laps/index.ts';
import { kartOf, type LapQuestion, lapProblems, lapQuestion } from './bare-lap-question.ts';
import { bareProblem, type Solution } from './bare-problem.ts';

export const bareLap = bareProblem<LapQuestion>({
  name: 'lap',
  title: 'Lap time by grip, drag, engine and gears, quasi-steady',
  how: [
    'The kart is a point always at its limit: ellipse of grip with load, drag, rolling and scrub; shifts cost their time.',
    'One sweep back for the most speed that can be held, one forward under it; z = v² by Runge and Kutta of fourth order, cells ending where curvature jumps.',
    'A flying lap, whatever the start line. At steps of 1 m within 0.005 % of a reference in time steps of 0.25 ms.',
    'It is for differences between two karts. Against a real lap 1 to 3 % are common, once grip was fitted to it (common practice).',
  ],
  sources: [
    'Lenzo and Rossi 2020, Applied Sciences 10(4) 1498 (read, in part)',
    'Hairer, Nørsett and Wanner, Solving Ordinary Differential Equations I (memory)',
    'a reference in time steps and by linear programming, numpy 2.4 and scipy 1.17: the figures in checks/rows/laps-predict.json',
  ],
  example: {
    kart: {
      ...{ m: 180, g: 9.80665, rho: 1.2, mu_y: 2, mu_x: 1.6, m0: 180, p: 0.1, k_drive: 0.62, k_brake: 1 },
      ...{ F_brake_max: 2470, CdA: 0.5, ClA: 0, Crr: 0.025, k_s0: 0.05, k_s1: 0.6 },
      ...{ rpm: [4000, 8000, 11_500, 13_000, 14_500], torque: [8, 16, 24.6, 22, 8], power_scale: 1, eta: 0.92 },
      ...{ primary: 3.95, gears: [2.54, 1.81, 1.5, 1.23, 1.045, 0.926], z_front: 17, z_rear: 23, r: 0.1365 },
      ...{ rpm_shift_max: 13_800, rpm_limit: 14_500, rpm_clutch: 8000, J_wheel: 0.35, J_engine: 0.0018 },
      ...{ t_shift: 0.06, v_cap: 80 },
    },
    track: [
      ['S', 160],
      ['C', 12, 180, 6],
      ['S', 160],
      ['C', 12, 180, 6],
    ],
    step: 1,
  },
  schema: lapQuestion,
  check: lapProblems,
  solve,
});

function solve({ kart: asked, track: elements, step, closed, begin, end, profile }: LapQuestion): Solution {
  const kart = kartOf(asked);
  const speeds = { ...(begin !== undefined && { begin }), ...(end !== undefined && { end }) };
  const predictor = predictorOf(trackOf(elements, closed), { step, ...speeds });
  const lap = predictor.lap(kart);
  const { upshift, limit, top } = gearSpeeds(kart);
  const gears = { upshift: upshift.filter(Number.isFinite), limit, topSpeed: top ?? null };
  if (lap.kind === 'stuck')
    return {
      ...{ lapTime: null, stuckAt: lap.at, gears },
      notes: ['The engine does not beat what holds the kart there: it does not get round.'],
    };
  const { at, speed, time } = predictor.trail();
  const bends = elements.filter(one => one[0] === 'C');
  return {
    lapTime: lap.time,
    vMax: lap.vMax,
    vMin: lap.vMin,
    ...(closed ? {} : { vEnd: lap.vEnd }),
    upshifts: lap.upshifts,
    length: predictor.length,
    corners: predictor.corners().map((slowest, n) => ({
      ...{ radius: bends[n]?.[1], turn: bends[n]?.[2] },
      ...{ at: slowest.at, vMin: slowest.speed },
    })),
    gears,
    ...(profile && { profile: { at: [...at], speed: [...speed], time: [...time] } }),
    notes: closed ? closing(elements) : [],
  };
}

/** A lap that turns by less than a whole turn, or more, is none that can be driven. */
function closing(elements: LapQuestion['track']): readonly string[] {
  const turn = elements.reduce((sum, one) => sum + (one[0] === 'C' ? one[2] : 0), 0);
  return Math.abs(Math.abs(turn) - 360) < 0.01 || Math.abs(turn) < 0.01
    ? []
    : [
        `All corners together turn by ${Number(turn.toFixed(2))}°: a lap turns by 360°, or by 0° where it crosses itself.`,
      ];
}
