/**
 * Length of a tuned pipe from the piston face to the middle of the reflecting cone.
 *
 * L = a θ/(4π n) with θ [rad], n [1/s], the same as a θ°/(12 N) with N [1/min];  a = √(γ R T)
 * a speed of sound in the gas [m/s]; θ exhaust duration; T mean gas temperature [K]; γ 1.35, R 287 J/(kg·K).
 * Read as E0 Vs/N inches with Vs 1700 ft/s, which is a mean gas of 420 °C. The mean temperature is the unknown: 100 K
 * move the tuned speed by about 6.5 %. Source: tuned-pipe (checks/rows/engine.json).
 */
const GAMMA = 1.35;
const GAS_CONSTANT = 287; // J/(kg·K)
/** Wave speed used in the handbook of 1973 [m/s]: 1700 ft/s. */
export const WAVE_SPEED_1973 = 1700 * 0.3048;

export const waveSpeed = (temperature: number): number => Math.sqrt(GAMMA * GAS_CONSTANT * temperature);
export const gasTemperature = (wave: number): number => wave ** 2 / (GAMMA * GAS_CONSTANT);

export type Tuned = { readonly wave: number; readonly duration: number; readonly speed: number };
/** Tuned length [m] of a wave speed [m/s], exhaust duration [rad] and engine speed [rad/s]. */
export const tunedLength = ({ wave, duration, speed }: Tuned): number => (wave * duration) / (2 * speed);

export type Cones = {
  readonly length: number; // tuned [m]
  readonly header: number; // diameter [m]
  readonly diffuser: number; // half angle [rad]
  readonly baffle: number; // half angle [rad]
};
/**
 * Sections of a pipe after the handbook of 1973 [m]: belly 2.5 and outlet 0.62 header diameters, header pipe 10, outlet
 * pipe 12 of its own. `belly` of length below 0 says that the cones have no room.
 */
export function pipeOf1973({ length, header, diffuser, baffle }: Cones) {
  const belly = 2.5 * header;
  const outlet = 0.62 * header;
  const wholeBaffle = belly / 2 / Math.tan(baffle);
  const toBaffle = length - wholeBaffle / 2;
  const headerLength = 10 * header;
  const diffuserLength = (belly - header) / 2 / Math.tan(diffuser);
  return {
    bellyDiameter: belly,
    outletDiameter: outlet,
    wholeBaffle,
    toBaffle,
    headerLength,
    diffuserLength,
    bellyLength: toBaffle - headerLength - diffuserLength,
    baffleLength: (belly - outlet) / 2 / Math.tan(baffle),
    outletLength: 12 * outlet,
  };
}
