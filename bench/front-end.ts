/** The front end swept over 10,000 steering angles: geometry, linkage, warp, and the load and lift of the inner rear wheel. */
import {
  type FrontEnd,
  frontEndSweep,
  innerEnd,
  kingpinAxis,
  steeringAngles,
  straightRod,
} from '../src/numbers/index.ts';
import { type Figure, median, ms, times } from './measure.ts';

const ANGLES = 10_000;
const DEGREE = Math.PI / 180;

export async function frontEnds(): Promise<readonly Figure[]> {
  const { weight, linkage, ...bare } = inventFrontEnd();
  const angles = steeringAngles(25 * DEGREE, ANGLES);
  const whole = { ...bare, ...(weight && { weight }), ...(linkage && { linkage }) };
  const known = frontEndSweep(whole, angles, 15).innerRear.filter(Number.isFinite).length;
  if (known !== ANGLES) throw new Error(`bench: every angle must have a load, got ${known}`);
  const full = await median(9, () => frontEndSweep(whole, angles, 15));
  const geometry = await median(9, () => frontEndSweep(bare, angles));
  return [
    { what: `sweep of ${ANGLES} angles, kingpins alone`, value: ms(geometry) },
    { what: 'with linkage, loads and lift', value: ms(full), ratio: times(full, geometry, 'the kingpins alone') },
  ];
}

/** An invented kart of a usual size. */
function inventFrontEnd(): FrontEnd {
  const wheel = { caster: 12 * DEGREE, inclination: 11 * DEGREE, stub: 0.11, forward: 0, radius: 0.13, camber: 0 };
  const column = {
    centre: [-0.035, 0, 0],
    axis: [0, 0, 1],
    left: [-0.054, 0.025, 0],
    right: [-0.054, -0.025, 0],
  } as const;
  const rod = (side: 'left' | 'right') => {
    const out = side === 'left' ? 1 : -1;
    const pivot = [0, out * 0.4, 0] as const;
    const own = { pivot, axis: kingpinAxis(side, wheel), arm: [-0.095, -out * 0.02, 0] as const };
    return { ...own, length: straightRod(own, innerEnd(column, side, 0)) };
  };
  return {
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
}
