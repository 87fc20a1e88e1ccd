import type { SetupProps } from '../setup/sheet.tsx';
import { fetched } from './fetched.tsx';

export const Setup = fetched<SetupProps>(
  'set-up',
  'set-up sheet',
  async () => (await import('../setup/sheet.tsx')).Setup,
);
