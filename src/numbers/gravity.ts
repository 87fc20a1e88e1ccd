/** Standard gravity [m/s²], exact by definition. Source: gravity-1901. */
export const STANDARD_GRAVITY = 9.80665;
