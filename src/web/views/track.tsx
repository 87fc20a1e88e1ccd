import type { TrackProps } from '../track/now.ts';
import { pageWords } from '../words/page.ts';
import { fetched } from './fetched.tsx';

export const Track = fetched<TrackProps>(
  'track',
  pageWords.trackSheet,
  async () => (await import('../track/sheet.tsx')).Track,
);
