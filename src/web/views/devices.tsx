import type { DevicesProps } from '../admission/sheet.tsx';
import { fetched } from './fetched.tsx';

export const Devices = fetched<DevicesProps>(
  'devices',
  'devices',
  async () => (await import('../admission/sheet.tsx')).Devices,
);
