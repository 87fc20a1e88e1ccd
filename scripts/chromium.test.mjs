import { afterEach, describe, expect, test, vi } from 'vitest';
import { findChromium } from './chromium.mjs';

afterEach(() => vi.unstubAllEnvs());

describe('finding a Chromium', () => {
  test('the one asked for wins', async () => {
    vi.stubEnv('KARTWRIGHT_CHROMIUM', process.execPath); // any file will do: it is not started here
    expect(await findChromium()).toBe(process.execPath);
  });

  test('a wrong one is an error that names it, not passed over', async () => {
    vi.stubEnv('KARTWRIGHT_CHROMIUM', '/no/such/browser');
    await expect(findChromium()).rejects.toThrow(/KARTWRIGHT_CHROMIUM.*\/no\/such\/browser.*unset/);
  });
});
