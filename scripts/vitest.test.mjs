import { describe, expect, test } from 'vitest';
import { countReport } from './vitest.mjs';

const groups = { unit: file => file.startsWith('src/'), checks: file => file.startsWith('checks/') };
const file = (name, status, ...tests) => ({
  name: `/p/${name}`,
  status,
  assertionResults: tests.map(s => ({ status: s })),
});
const count = (testResults, code = 0) => countReport({ testResults }, code, groups, '/p');
const fine = file('checks/a.test.ts', 'passed', 'passed');

describe('counting a report', () => {
  test('counts by group', () => {
    expect(count([file('src/a.test.ts', 'failed', 'passed', 'failed', 'pending'), fine], 1)).toEqual({
      unit: { passed: 1, failed: 1, skipped: 1 },
      checks: { passed: 1, failed: 0, skipped: 0 },
    });
  });

  test('a file that does not load is a failure', () => {
    expect(count([file('src/a.test.ts', 'failed'), fine], 1).unit.failed).toBe(1);
  });

  test('a group in which nothing ran is a failure', () => {
    expect(count([fine]).unit).toEqual({ passed: 0, failed: 1, skipped: 0 });
    expect(countReport(undefined, 1, groups).checks.failed).toBe(1);
  });

  test('an error that no test carries is a failure', () => {
    expect(count([file('src/a.test.ts', 'passed', 'passed'), fine], 1).unit).toEqual({
      passed: 1,
      failed: 1,
      skipped: 0,
    });
  });
});
