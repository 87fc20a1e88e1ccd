/** Air: density, dew point, density altitude, pressure at the track, power by a standard. */
export { air } from './air.ts';
export { type Air, type AirReading, airOf, HUMIDITY_UNKNOWN, type NoAir, USUAL_LIMITS } from './air-of.ts';
export { densityAltitudeRule120, densityAltitudeWeatherService } from './density-altitude.ts';
export {
  type AirState,
  compressibility,
  densityOfShare,
  dryAirDensity,
  enhancement,
  moistAirDensity,
  saturationPressureCipm,
  vapourShare,
} from './moist-air.ts';
export {
  dryPressure,
  factorDin70020,
  factorIso1585,
  factorJ607,
  factorJ1349,
  insideIso1585,
} from './power-correction.ts';
export {
  densityAltitude,
  geometricHeight,
  geopotentialHeight,
  pressureAltitude,
  SEA_LEVEL,
  standardAt,
  standardAtGeometric,
} from './standard-atmosphere.ts';
export {
  mapPressure,
  pressureKind,
  qnhFromStation,
  qnhFromStationManual,
  stationPressure,
  stationPressureFromMap,
} from './station-pressure.ts';
export { type AirUncertainty, type DensityUncertainty, densityUncertainty } from './uncertainty.ts';
export {
  dewPoint,
  dewPointClosed,
  humidityFromDewPoint,
  humidityRatio,
  idealDensity,
  saturationPressure,
  saturationPressureClosed,
  vapourPressure,
} from './vapour.ts';
