/**
 * The jet as an opening, alone and in series with the ring between needle and needle jet.
 *
 *   Q = Cd A √(2 dp/ρf);  1/A² = 1/Am² + 1/An²;  share = d ln A/d ln Am = An²/(Am² + An²)
 * Q flow [m³/s], Cd discharge coefficient [1], A area [m²], dp pressure across [Pa], ρf density of the fuel [kg/m³],
 * Am area of the main jet, An of the ring [m²]; share: how much of a change of the main jet reaches the engine [1].
 * Valid: equal Cd of both, turbulent flow; the pilot system left out. Source: series-orifice, derived.
 */
export const boreArea = (bore: number): number => (Math.PI * bore ** 2) / 4;

/** Ring between a needle jet and the needle in it [m²]; both diameters [m], the needle the smaller. */
export const ringArea = (needleJet: number, needle: number): number => boreArea(needleJet) - boreArea(needle);

/** One opening that lets through as much as two behind each other [m²]. */
export const seriesArea = (one: number, other: number): number => (one * other) / Math.hypot(one, other);

/** Share of a small change of the main jet's area that reaches the engine, 0 to 1 [1]. */
export const mainShare = (main: number, ring: number): number => ring ** 2 / (main ** 2 + ring ** 2);

/**
 * Area of the main jet, now over then, for a wanted change of both together [1]: 1/Am1² = 1/(a A)² - 1/An².
 * Undefined where the ring alone lets through less than is wanted: then no main jet helps, the needle must come up.
 */
export function mainRatio(wanted: number, main: number, ring: number): number | undefined {
  const rest = 1 / (wanted * seriesArea(main, ring)) ** 2 - 1 / ring ** 2;
  return rest > 0 ? 1 / (main * Math.sqrt(rest)) : undefined;
}

export const orificeFlow = (p: {
  readonly area: number; // m²
  readonly pressure: number; // across it [Pa]
  readonly density: number; // of the fuel [kg/m³]
  readonly discharge: number; // [1]
}): number => p.discharge * p.area * Math.sqrt((2 * p.pressure) / p.density);
