/** The tests in five groups, which scripts/test.mjs runs and counts: unit, checks, store, faults, journeys. */
import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';

const setupFiles = ['test/setup/properties.ts'];

export default defineConfig({
  test: {
    allowOnly: false, // a forgotten `.only` must not hide the rest
    maxWorkers: availableParallelism(), // left out, one core is kept free: on a machine with two that is half of it
    projects: [
      {
        test: {
          name: 'unit',
          include: ['src/**/*.test.{ts,tsx}', 'data/**/*.test.ts', 'test/tidy/**/*.test.ts', 'scripts/**/*.test.mjs'],
          setupFiles,
          testTimeout: 60_000,
        },
      },
      { test: { name: 'checks', include: ['checks/**/*.test.ts'], setupFiles } },
      { test: { name: 'store', include: ['test/store-contract/**/*.test.ts'], setupFiles, testTimeout: 60_000 } },
      {
        test: {
          name: 'faults',
          include: ['test/faults/**/*.test.ts'],
          setupFiles,
          testTimeout: 120_000,
          hookTimeout: 120_000,
        },
      },
      {
        test: {
          name: 'journeys',
          include: ['test/journeys/**/*.test.ts'],
          setupFiles,
          globalSetup: ['test/setup/built.ts'],
          fileParallelism: false, // each starts servers, browsers and books of its own; two cores
          testTimeout: 180_000,
          hookTimeout: 180_000,
          expect: { poll: { timeout: 30_000 } }, // as long as a page waits for what it looks for
        },
      },
    ],
  },
});
