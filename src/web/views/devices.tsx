import type { DevicesProps } from '../devices/sheet.tsx';
import { fetched } from './fetched.tsx';

export const Devices = fetched<DevicesProps>(
  'devices',
  'devices',
  async () => (await import('../devices/sheet.tsx')).Devices,
);
