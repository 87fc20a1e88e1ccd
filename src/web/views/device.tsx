import type { DeviceProps } from '../this-device/sheet.tsx';
import { pageWords } from '../words/page.ts';
import { fetched } from './fetched.tsx';

export const DeviceSheet = fetched<DeviceProps>(
  'device',
  pageWords.sheetOfThisDevice,
  async () => (await import('../this-device/sheet.tsx')).DeviceSheet,
);
