import type { DeviceProps } from '../device/sheet.tsx';
import { fetched } from './fetched.tsx';

export const DeviceSheet = fetched<DeviceProps>(
  'device',
  'sheet of this device',
  async () => (await import('../device/sheet.tsx')).DeviceSheet,
);
