import type { SetupProps } from '../setup/sheet.tsx';
import { pageWords } from '../words/page.ts';
import { fetched } from './fetched.tsx';

export const Setup = fetched<SetupProps>(
  'set-up',
  pageWords.setUpSheet,
  async () => (await import('../setup/sheet.tsx')).Setup,
);
