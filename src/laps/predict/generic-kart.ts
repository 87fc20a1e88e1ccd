/**
 * A kart that does not exist, with figures such a kart may have: something to start from where nobody has measured.
 * Source: memory and common practice, put together for checking this reckoning; not a claim about any kart.
 */
import type { LapKart } from './kart.ts';

const RPM = Math.PI / 30; // rad/s

export const GENERIC_KART: LapKart = {
  mass: 180,
  gravity: 9.80665,
  air: 1.2,
  grip: { side: 2, along: 1.6, atMass: 180, fall: 0.1, driveShare: 0.62, brakeShare: 1 },
  brakeCap: 2470,
  dragArea: 0.5,
  downforceArea: 0,
  rolling: 0.025,
  scrub: { flat: 0.05, tight: 0.6 },
  engine: {
    speeds: [4000, 5000, 6000, 7000, 8000, 9000, 10000, 11000, 11500, 12000, 12500, 13000, 13500, 14000, 14500].map(
      rpm => rpm * RPM,
    ),
    torques: [8, 9.5, 11, 13, 16, 19.5, 22.5, 24.3, 24.6, 24.3, 23.6, 22, 18.5, 14, 8],
    scale: 1,
    shiftBy: 13_800 * RPM,
    limit: 14_500 * RPM,
    clutch: 8000 * RPM,
    inertia: 0.0018,
    shiftTime: 0.06,
  },
  gearing: { primary: 3.95, gears: [2.54, 1.81, 1.5, 1.23, 1.045, 0.926], front: 17, rear: 23, efficiency: 0.92 },
  wheel: { radius: 0.1365, inertia: 0.35 },
  speedCap: 80,
};
