/**
 * The air in a tyre of fixed volume: pressure follows absolute temperature, and only ABSOLUTE pressure does.
 *
 *   p2 + pa = (p1 + pa) T2 / T1;  with liquid water: p2 + pa = (p1 + pa - ps(T1)) T2 / T1 + ps(T2)
 *
 * p gauge pressure [Pa], pa pressure of the air around [Pa], T gas temperature [K], ps saturation pressure of water [Pa].
 * Valid: volume unchanged (a real tyre grows a little and rises less), vapour that stays vapour counts as dry. Source: tyre-gas.
 */
import { saturationPressure } from '../air/vapour.ts';

const R_GAS = 8.314462618; // J/(mol·K), exact to its digits (SI 2019, from memory)
const WATER = 0.01801528; // kg/mol

/** Gauge pressure at temperature `to`, of what reads `gauge` at temperature `from`. */
export type Warmed = { readonly gauge: number; readonly ambient: number; readonly from: number; readonly to: number };

export const warmedGauge = ({ gauge, ambient, from, to }: Warmed): number => ((gauge + ambient) * to) / from - ambient;

/** The same with liquid water in the tyre at both temperatures: its vapour comes on top. */
export const warmedWet = ({ gauge, ambient, from, to }: Warmed): number =>
  ((gauge + ambient - saturationPressure(from)) * to) / from + saturationPressure(to) - ambient;

/** Cold gauge pressure for a wanted hot one; `wet`: with liquid water. */
export const coldGauge = (
  { hot, ambient, cold, gas }: { hot: number; ambient: number; cold: number; gas: number },
  wet = false,
): number =>
  wet
    ? ((hot + ambient - saturationPressure(gas)) * cold) / gas + saturationPressure(cold) - ambient
    : warmedGauge({ gauge: hot, ambient, from: gas, to: cold });

/** Temperature [K] that the gas must have to read `hot`, when it read `cold` at temperature `from` [K]. */
export const tyreGasTemperature = (p: { cold: number; hot: number; ambient: number; from: number }): number =>
  (p.from * (p.hot + p.ambient)) / (p.cold + p.ambient);

/** What a gauge shows elsewhere, nothing let in or out, at equal temperature [Pa]. */
export const gaugeElsewhere = (gauge: number, here: number, there: number): number => gauge + here - there;

/** Liquid water [kg] that keeps a volume [m³] saturated at a temperature [K]: m = ps V M / (R T). */
export const waterToSaturate = (volume: number, kelvin: number): number =>
  (saturationPressure(kelvin) * volume * WATER) / (R_GAS * kelvin);

/** Relative humidity [1] of outside air once it is pressed into a tyre; above 1 water falls out. */
export const humidityInside = (p: { gauge: number; ambient: number; humidity: number }): number =>
  (p.humidity * (p.gauge + p.ambient)) / p.ambient;
