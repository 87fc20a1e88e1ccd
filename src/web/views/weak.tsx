import type { WeakProps } from '../weak/sheet.tsx';
import { fetched } from './fetched.tsx';

export const Weak = fetched<WeakProps>(
  'weak links',
  'weak links',
  async () => (await import('../weak/sheet.tsx')).Weak,
);
