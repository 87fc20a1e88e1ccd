import type { DrawingProps } from '../drawing/kart-drawing.tsx';
import { fetched } from './fetched.tsx';

/** Where on the kart a step is; it stands below the answers, so the step is there before it. */
export const Locator = fetched<DrawingProps>(
  'kart',
  'kart',
  async () => (await import('../drawing/kart-drawing.tsx')).KartDrawing,
);
