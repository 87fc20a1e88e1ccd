import type { LivesProps } from '../lives/sheet.tsx';
import { pageWords } from '../words/page.ts';
import { fetched } from './fetched.tsx';

export const Lives = fetched<LivesProps>(
  'lives',
  pageWords.livesOfParts,
  async () => (await import('../lives/sheet.tsx')).Lives,
);
