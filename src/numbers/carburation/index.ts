/** The main jet: air, fuel and oil, the log, and what meters where. */
export { carburation } from './carburation.ts';
export { ETHANOL_DENSITY, expandedVolume, fuelFlowRatio, petrolDensity } from './fuel.ts';
export { jetAirOf, type KnownAir } from './jet-air.ts';
export {
  type Direction,
  type Held,
  type JetAdvice,
  type JetBand,
  type JetQuestion,
  jetBand,
  type NoBand,
  type Numbering,
} from './jet-band.ts';
export { type JetPoint, type Learned, learnExponent, type NotYet, type Reading } from './learn.ts';
export { type Fuel, fuelNeed } from './need.ts';
export { boreArea as jetArea, mainRatio, mainShare, orificeFlow, ringArea, seriesArea } from './orifice.ts';
export {
  blendRatio,
  ETHANOL,
  ethanolByMass,
  ISO_OCTANE,
  type Molecule,
  PETROL_MOLECULE,
  stoichiometricRatio,
} from './stoichiometry.ts';
export { areaRatio, boreRatio, type JetAir, mixtureRatio, paddockRatio } from './theory.ts';
export { ZONES, type Zone, zonesAt } from './zones.ts';
