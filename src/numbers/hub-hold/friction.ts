/** Friction and preload taken when nobody has measured better. */

import { scatterOf } from '../bolt/index.ts';

/** Design ceilings without a test: bare cleaned metal, and anything with a film or coating (NASA-STD-5020B, TFSR 14, extract). */
export const FRICTION = { clean: 0.2, film: 0.1 } as const;
export const FILMS = ['clean', 'film'] as const;
export type Film = (typeof FILMS)[number];

/** Short form of torque to preload, dry zinc on steel (common practice); published figures run from 0.17 to 0.35. */
export const NUT_FACTOR = 0.2;

/** Preload by torque wrench, dry (NASA-STD-5020B, TFSR 6, as quoted). */
export const SCATTER = scatterOf('torque wrench', false) ?? Number.NaN;
