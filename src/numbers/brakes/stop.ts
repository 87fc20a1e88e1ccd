/**
 * A stop: distance, energy, heat of the discs, wear.
 *
 * s = v t + (v² - w²)/(2 z g);  E = ½ (1 + κ) m (v² - w²);  ΔT = f E/(M c)
 * v speed before, w after [m/s]; t reaction [s]; z deceleration [g]; κ share of rotating parts, 0.03 to 0.05 (memory);
 * f share of the energy in this disc [1]; M mass of the disc [kg]; c specific heat, 460 J/(kg·K) steel and iron.
 * ΔT is an upper bound for one stop: no heat is carried away. Source: checks/rows/brakes.json.
 */
export type Stop = { readonly from: number; readonly to: number }; // [m/s]

/** Metres while braking at a steady deceleration [m/s²]. */
export const brakingDistance = ({ from, to }: Stop, deceleration: number): number =>
  (from ** 2 - to ** 2) / (2 * deceleration);

/** The same with the way rolled before the foot acts [m]. */
export const stoppingDistance = (stop: Stop, deceleration: number, reaction: number): number =>
  stop.from * reaction + brakingDistance(stop, deceleration);

/** Energy taken out [J]; `rotating` is the share that wheels, axle and engine add. */
export const stopEnergy = ({ from, to }: Stop, mass: number, rotating: number): number =>
  0.5 * (1 + rotating) * mass * (from ** 2 - to ** 2);

/** Rise of temperature of one disc [K], none of it carried away. */
export const temperatureRise = (energy: number, discMass: number, specificHeat: number): number =>
  energy / (discMass * specificHeat);

export type Wear = { readonly fresh: number; readonly now: number; readonly limit: number; readonly hours: number };

/** Wear so far per hour [m/s], what is left to the limit [m], and the time until then [s]; endless where nothing wore. */
export const wearOf = ({ fresh, now, limit, hours }: Wear) => {
  const rate = (fresh - now) / hours;
  const left = now - limit;
  return { rate, left, until: left <= 0 ? 0 : rate > 0 ? left / rate : Number.POSITIVE_INFINITY };
};
