import type { LivesProps } from '../lives/sheet.tsx';
import { fetched } from './fetched.tsx';

export const Lives = fetched<LivesProps>(
  'lives',
  'lives of parts',
  async () => (await import('../lives/sheet.tsx')).Lives,
);
