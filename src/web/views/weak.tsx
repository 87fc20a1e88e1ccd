import type { WeakProps } from '../weak/sheet.tsx';
import { pageWords } from '../words/page.ts';
import { fetched } from './fetched.tsx';

export const Weak = fetched<WeakProps>(
  pageWords.weakLinks,
  pageWords.weakLinks,
  async () => (await import('../weak/sheet.tsx')).Weak,
);
