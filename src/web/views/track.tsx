import type { TrackProps } from '../track/now.ts';
import { fetched } from './fetched.tsx';

export const Track = fetched<TrackProps>(
  'track',
  'track sheet',
  async () => (await import('../track/sheet.tsx')).Track,
);
