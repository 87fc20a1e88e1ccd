import type { SparesProps } from '../spares/sheet.tsx';
import { pageWords } from '../words/page.ts';
import { fetched } from './fetched.tsx';

export const Spares = fetched<SparesProps>(
  'spares',
  pageWords.sparesBox,
  async () => (await import('../spares/sheet.tsx')).Spares,
);
