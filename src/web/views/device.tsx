import type { DeviceProps } from '../this-device/sheet.tsx';
import { fetched } from './fetched.tsx';

export const DeviceSheet = fetched<DeviceProps>(
  'device',
  'sheet of this device',
  async () => (await import('../this-device/sheet.tsx')).DeviceSheet,
);
