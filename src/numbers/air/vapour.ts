/**
 * Water vapour: saturation pressure, dew point, humidity, and the density of two ideal gases to compare with.
 *
 * ln ps = C1/T + C2 + C3 T + C4 T² + C5 T³ (+ C6 T⁴ over ice) + C7 ln T;  pv = h ps(T) = ps(Td);  W = 0.621945 pv/(p - pv)
 * ps saturation pressure over water, over ice below 0.01 °C [Pa], T temperature [K], h relative humidity 0 to 1 [1],
 * pv vapour pressure [Pa], Td dew point [K], W kilograms of water a kilogram of dry air [1], p absolute pressure [Pa].
 * Valid: -100 to 200 °C; rows held to 300 ppm of the printed table.
 * Source: ASHRAE Handbook Fundamentals 2017, chapter 1, equations 5 and 6, coefficients as in psychrolib 1.1.1.
 */
const TRIPLE_POINT = 273.16; // K
const R_DRY = 287.05287; // J/(kg·K)
const R_WATER = 461.523; // J/(kg·K)

/** [Pa] from temperature [K]. */
export function saturationPressure(T: number): number {
  const ln =
    T <= TRIPLE_POINT
      ? -5.6745359e3 / T +
        6.3925247 -
        9.677843e-3 * T +
        6.2215701e-7 * T ** 2 +
        2.0747825e-9 * T ** 3 -
        9.484024e-13 * T ** 4 +
        4.1635019 * Math.log(T)
      : -5.8002206e3 / T +
        1.3914993 -
        4.8640239e-2 * T +
        4.1764768e-5 * T ** 2 -
        1.4452093e-8 * T ** 3 +
        6.5459673 * Math.log(T);
  return Math.exp(ln);
}

/** [Pa] from relative humidity 0 to 1 and temperature [K]. */
export const vapourPressure = (humidity: number, kelvin: number): number => humidity * saturationPressure(kelvin);

const COLDEST = 173.15; // K, the end of the saturation formula
const HALVINGS = 60;

/** Temperature [K] at which a vapour pressure [Pa] is saturation; minus infinity for perfectly dry air. By bisection. */
export function dewPoint(vapour: number): number {
  if (vapour === 0) return Number.NEGATIVE_INFINITY;
  if (!(vapour > saturationPressure(COLDEST) && vapour < saturationPressure(473.15))) return Number.NaN;
  let [low, high] = [COLDEST, 473.15];
  for (let n = 0; n < HALVINGS; n++) {
    const middle = (low + high) / 2;
    if (saturationPressure(middle) < vapour) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Relative humidity 0 to 1 from temperature and dew point [K]. */
export const humidityFromDewPoint = (kelvin: number, dew: number): number =>
  saturationPressure(dew) / saturationPressure(kelvin);

/** Kilograms of water a kilogram of dry air [1]. */
export const humidityRatio = (vapour: number, pascal: number): number => (0.621945 * vapour) / (pascal - vapour);

/** Density of air and vapour as two ideal gases [kg/m³]; some 0.04 % under the real one. */
export const idealDensity = (kelvin: number, pascal: number, vapour: number): number =>
  (pascal - vapour) / (R_DRY * kelvin) + vapour / (R_WATER * kelvin);

/** Closed form over water, -20 to 50 °C, within 0.083 % by its own text (quoted by the US weather service). [Pa] */
export const saturationPressureClosed = (T: number): number =>
  611.6441 * 10 ** ((7.591386 * (T - 273.15)) / (T - 273.15 + 240.7263));

/** Dew point [K] by the same closed form. */
export const dewPointClosed = (vapour: number): number =>
  240.7263 / (7.591386 / Math.log10(vapour / 611.6441) - 1) + 273.15;
