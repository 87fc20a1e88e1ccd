/** Fuel and oil: the mix, what to pour, litres for a session, theory as a check. */
export {
  airThrough,
  type Charge,
  fromPounds,
  fuelForPower,
  fuelOfCharge,
  GUIDE as FUEL_GUIDE,
  inGrams,
  lapByTheory,
} from './consumption.ts';
export {
  type FuelRun,
  litresForSession,
  litresPerLap,
  type NoSession,
  type PerLap,
  type Session,
  type SessionQuestion,
  startMass,
  type TooFew,
} from './litres.ts';
export {
  type Densities,
  massRatio,
  mixDensity,
  oilForPetrol,
  oilInMix,
  petrolShare,
  petrolShareRatio,
  volumeRatio,
} from './mix.ts';
export { type CannotPour, type OilQuestion, oilFor, type Pour } from './oil-for.ts';
export { premix } from './premix.ts';
