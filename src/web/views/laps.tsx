import type { LapsProps } from '../laps/sheet.tsx';
import { fetched } from './fetched.tsx';

export const Laps = fetched<LapsProps>('laps', 'laps', async () => (await import('../laps/sheet.tsx')).LapsSheet);
