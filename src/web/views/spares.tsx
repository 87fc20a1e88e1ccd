import type { SparesProps } from '../spares/sheet.tsx';
import { fetched } from './fetched.tsx';

export const Spares = fetched<SparesProps>(
  'spares',
  'spares box',
  async () => (await import('../spares/sheet.tsx')).Spares,
);
