/** Height of the centre of gravity from the front scales, once level and once with the rear wheels raised. */
import { rectangular } from '../chain.ts';

export type Raised = {
  readonly mass: number; // all four scales, level [kg]
  readonly wheelbase: number; // level, contact to contact [m]
  readonly frontLevel: number; // both front scales, level [kg]
  readonly frontRaised: number; // both front scales, rear raised [kg]
  readonly frontRadius: number; // ground to the middle of the front axle, loaded [m]
  readonly rearRadius: number; // the same, rear [m]
  readonly rise: number; // of the support under the rear wheels [m]
};

/**
 * Height of the centre of gravity above the ground, exact for wheels of unequal size.
 *   P = √(L² + (rR - rF)²);  θ0 = asin((rR - rF)/P);  θ1 = asin((rR + H - rF)/P)
 *   c = P (F1 - F0)/(W (tan θ1 - tan θ0));  b = P F0/W - c tan θ0;  h = rR - b sin θ0 + c cos θ0
 * L wheelbase [m]; rF, rR loaded radius front and rear [m]; H rise of the rear supports [m]; F0, F1 front scales level and
 * raised [kg]; W total [kg]; P between the axle middles [m]; c above and b ahead of the rear axle along P [m].
 * Valid for wheels free to roll, driver seated the same, full or empty tanks, tyres hard, H below about half of L; not a
 * number where the wheels cannot stand so. Source: raised-axle.
 */
export function cgHeight(r: Raised): { readonly height: number; readonly tilt: number } {
  const between = Math.hypot(r.wheelbase, r.rearRadius - r.frontRadius);
  const level = Math.asin((r.rearRadius - r.frontRadius) / between);
  const raised = Math.asin((r.rearRadius + r.rise - r.frontRadius) / between);
  const above = (between * (r.frontRaised - r.frontLevel)) / (r.mass * (Math.tan(raised) - Math.tan(level)));
  const ahead = (between * r.frontLevel) / r.mass - above * Math.tan(level);
  return { height: r.rearRadius - ahead * Math.sin(level) + above * Math.cos(level), tilt: raised - level };
}

/**
 * The usual formula, with one radius for all wheels.  h = r + (F1 - F0) L √(L² - H²)/(W H),  r = (rF + rR)/2.
 * Exact only where rF = rR; half a millimetre or more off where they differ by 1 cm. Source: raised-axle.
 */
export const cgHeightEqualWheels = (r: Raised): number =>
  (r.frontRadius + r.rearRadius) / 2 +
  ((r.frontRaised - r.frontLevel) * r.wheelbase * Math.sqrt(r.wheelbase ** 2 - r.rise ** 2)) / (r.mass * r.rise);

/** Limits ± of what was measured [kg, m]. */
export type RaisedLimits = Partial<Readonly<Record<keyof Raised, number>>>;

/**
 * Standard uncertainty of that height.  u² = Σ (∂h/∂X a/√3)².  a limits ± of X; the slopes are taken numerically, over a
 * ten-thousandth of X. Valid for independent readings and small limits. Source: jcgm-100, 5.1.2 and 4.3.7.
 */
export function cgHeightUncertainty(r: Raised, limits: RaisedLimits): number {
  const parts = (Object.keys(limits) as (keyof Raised)[]).map(name => {
    const step = Math.abs(r[name]) * 1e-4;
    const slope =
      (cgHeight({ ...r, [name]: r[name] + step }).height - cgHeight({ ...r, [name]: r[name] - step }).height) /
      (2 * step);
    return slope * rectangular(limits[name] ?? 0);
  });
  return Math.hypot(...parts);
}
