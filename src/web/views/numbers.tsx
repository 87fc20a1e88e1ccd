import type { SheetProps } from '../numbers/sheet.tsx';
import { fetched } from './fetched.tsx';

export const Numbers = fetched<SheetProps>(
  'numbers',
  'numbers',
  async () => (await import('../numbers/sheet.tsx')).NumbersSheet,
);
