import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readRiskScheme } from './risk-code.ts';
import { seasonOf } from './season.ts';
import type { Hazard, Likely } from './weak-links/index.ts';

const scheme = readRiskScheme(readFileSync(new URL('../../data/severity.yaml', import.meta.url), 'utf8'));
const likely = (chance: number): Likely => ({ chance, low: chance / 3, high: chance * 3, words: '', basis: '' });
const hazard = (top: Likely | null, atLeast: Likely | null = top): Hazard => ({
  function: 'stop',
  hazard: 'no brakes',
  severity: 1,
  singlePoints: [],
  cutSets: null,
  pairs: [],
  top,
  atLeast,
  unknown: [],
  links: [],
});

describe('a hazard over a season', () => {
  it('has the chance of once at least, and the code of that and not of one event', () => {
    expect(seasonOf(scheme, hazard(likely(0.004)), 1)).toMatchObject({ code: '1C', level: 'High', chance: 0.004 });
    const ten = seasonOf(scheme, hazard(likely(0.004)), 10);
    expect(ten?.chance).toBeCloseTo(1 - 0.996 ** 10, 15);
    expect(ten).toMatchObject({ code: '1B', events: 10, words: '4 in 100, between 1 and 10', whole: true });
    expect(ten && ten.low < ten.chance && ten.chance < ten.high).toBe(true);
  });
  it('is that or graver where only part of it is known, and nothing where nothing is', () => {
    expect(seasonOf(scheme, hazard(null, likely(0.02)), 8)).toMatchObject({ code: '1A', whole: false });
    expect(seasonOf(scheme, hazard(null), 8)).toBeNull();
  });
  it.each([0, -1, 1.5, Number.NaN])('of %d events is refused', events => {
    expect(() => seasonOf(scheme, hazard(likely(0.1)), events)).toThrow(/events must be/);
  });
});
