/** Tyres: pressures, stagger, treads, the age of a set. */
export {
  coldGauge,
  gaugeElsewhere,
  humidityInside,
  tyreGasTemperature,
  warmedGauge,
  warmedWet,
  waterToSaturate,
} from './gas.ts';
export {
  ALIKE,
  alike,
  type Cold,
  type ColdAsked,
  coldFor,
  gasFrom,
  type PressureRun,
  type Rise,
  riseFrom,
  type Surface,
  type Today,
  type TyrePlace,
} from './record.ts';
export { SET_LIMITS, type SetAsked, type SetLife, setLife } from './set-life.ts';
export { circumference, rolledOut, speedChange, staggerFor, staggerRadius } from './stagger.ts';
export { type Tread, type TreadRead, treadOf } from './tread.ts';
export { tyres } from './tyres.ts';
