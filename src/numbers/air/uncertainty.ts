/**
 * How well a density is known from how well each instrument is, to first order.
 *
 * u² = Σ (∂ρ/∂x u(x))²;  share of x = (∂ρ/∂x u(x))²/u²
 * u standard uncertainty of the density over it [1], x temperature [K], pressure [Pa], humidity 0 to 1 [1], u(x) its
 * standard uncertainty (limits ± a, nothing else known: a/√3). Derivatives by central difference on the density itself.
 * Valid: independent instruments, small limits. Source: JCGM 100:2008, 4.3.7 and 5.1.2.
 */
import { type AirState, moistAirDensity } from './moist-air.ts';

/** Standard uncertainties: [K], [Pa], [1]. */
export type AirUncertainty = { readonly kelvin: number; readonly pascal: number; readonly humidity: number };

export type DensityUncertainty = {
  readonly density: number; // kg/m³
  readonly relative: number; // standard, over the density [1]
  /** Change of density over itself for one kelvin, one pascal, one whole of humidity. */
  readonly sensitivity: AirUncertainty;
  /** Share of each in the square of the whole; together 1. */
  readonly share: AirUncertainty;
};

const STEP: AirUncertainty = { kelvin: 0.01, pascal: 10, humidity: 1e-4 };
const NAMES = ['kelvin', 'pascal', 'humidity'] as const;

export function densityUncertainty(air: AirState, u: AirUncertainty): DensityUncertainty {
  const density = moistAirDensity(air);
  const slope = (name: keyof AirUncertainty): number => {
    const at = (by: number): number => moistAirDensity({ ...air, [name]: air[name] + by });
    return (at(STEP[name]) - at(-STEP[name])) / (2 * STEP[name] * density);
  };
  const sensitivity = each(slope);
  const relative = Math.hypot(...NAMES.map(name => sensitivity[name] * u[name]));
  const share = each(name => (relative === 0 ? 0 : ((sensitivity[name] * u[name]) / relative) ** 2));
  return { density, relative, sensitivity, share };
}

const each = (of: (name: keyof AirUncertainty) => number): AirUncertainty => ({
  kelvin: of('kelvin'),
  pascal: of('pascal'),
  humidity: of('humidity'),
});
