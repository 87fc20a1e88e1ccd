/**
 * What a speed of the engine asks of the piston, and the mean pressure behind a power.
 *
 * c = 2 s n;  acceleration at top = r ω² (1 + r/l);  p = P/(V n), two-stroke, one cycle a turn
 * s stroke, r half of it, l rod [m]; n turns a second, ω = 2π n [rad/s]; P power at the crank [W]; V swept volume [m³].
 * No offset of the gudgeon pin in the acceleration. Source: crank-geometry, mean-pressure (checks/rows/engine.json).
 */
/** Mean piston speed [m/s] of a stroke [m] at a speed [rad/s]. */
export const meanPistonSpeed = (stroke: number, speed: number): number => (stroke * speed) / Math.PI;

/** Largest acceleration of the piston [m/s²], at top. */
export const topAcceleration = (
  { stroke, rod }: { readonly stroke: number; readonly rod: number },
  speed: number,
): number => (stroke / 2) * speed ** 2 * (1 + stroke / 2 / rod);

export type Working = { readonly power: number; readonly swept: number; readonly speed: number };
/** Brake mean effective pressure of a two-stroke [Pa]. */
export const meanEffectivePressure = ({ power, swept, speed }: Working): number =>
  (2 * Math.PI * power) / (swept * speed);
/** The way back: power [W] of a mean pressure [Pa]. */
export const powerOf = (pressure: number, swept: number, speed: number): number =>
  (pressure * swept * speed) / (2 * Math.PI);

/** Above this a two-stroke's power, swept volume or speed is probably written wrong [Pa]; memory. */
export const DOUBTFUL_PRESSURE = 14e5;

const PSI = 4.4482216152605 / 0.00064516; // Pa, exact
/** Mean pressures of 1973 [Pa] (mean-pressure); small race engines since then exceed them. */
export const PRESSURES_1973 = {
  touring: 70 * PSI,
  'motocross low': 85 * PSI,
  'motocross high': 95 * PSI,
  racing: 115 * PSI,
} as const;
