import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { CHANCE_BANDS, LEVELS, overEvents, readRiskScheme, riskCode, type Severity } from './risk-code.ts';

const scheme = readRiskScheme(readFileSync(new URL('../../data/severity.yaml', import.meta.url), 'utf8'));
const SEVERITIES: readonly Severity[] = [1, 2, 3, 4];
const code = (severity: Severity, chance: number) => Object.values(riskCode(scheme, severity, chance)).join(' ');

describe('the code of a hazard', () => {
  it('is that of MIL-STD-882E, Table III, read second hand', () => {
    expect(SEVERITIES.map(s => code(s, 0.2))).toEqual(['1A High', '2A High', '3A Serious', '4A Medium']);
    expect(SEVERITIES.map(s => code(s, 0.05))).toEqual(['1B High', '2B High', '3B Serious', '4B Medium']);
    expect(SEVERITIES.map(s => code(s, 0.005))).toEqual(['1C High', '2C Serious', '3C Medium', '4C Low']);
    expect(SEVERITIES.map(s => code(s, 1e-5))).toEqual(['1D Serious', '2D Medium', '3D Medium', '4D Low']);
    expect(SEVERITIES.map(s => code(s, 1e-7))).toEqual(['1E Medium', '2E Medium', '3E Medium', '4E Low']);
  });
  it('of a chance on an edge is the rarer one; of none at all still E, never "cannot happen"', () => {
    expect(code(1, 0.1)).toBe('1B High');
    expect(code(1, 0)).toBe('1E Medium');
    expect(code(1, 1)).toBe('1A High');
  });
  test('never gets milder for a greater chance or a worse harm', () => {
    const chance = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(chance, chance, fc.constantFrom(...SEVERITIES), (p, q, severity) => {
        const rank = (s: Severity, at: number): number => LEVELS.indexOf(riskCode(scheme, s, at).level);
        expect(rank(severity, Math.max(p, q))).toBeLessThanOrEqual(rank(severity, Math.min(p, q)));
        if (severity > 1) expect(rank((severity - 1) as Severity, p)).toBeLessThanOrEqual(rank(severity, p));
      }),
    );
  });
  it('is refused for what is no chance', () => {
    expect(() => riskCode(scheme, 1, Number.NaN)).toThrow('chance must lie in 0 to 1, got NaN');
    expect(() => riskCode(scheme, 1, 1.1)).toThrow('got 1.1');
    expect(() => riskCode(scheme, 1, -0.1)).toThrow('got -0.1');
    expect(() => riskCode(scheme, 5 as Severity, 0.1)).toThrow('riskCode: severity must be 1, 2, 3 or 4, got 5');
  });
  it('has bands that go down', () => {
    const edges = CHANCE_BANDS.map(band => scheme.chances[band].above);
    expect(edges).toEqual(edges.toSorted((a, b) => b - a));
  });
});

describe('over several events', () => {
  test('is the chance of at least one, as the product of the others says', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), fc.integer({ min: 0, max: 30 }), (p, n) => {
        expect(overEvents(p, n)).toBeCloseTo(1 - (1 - p) ** n, 12);
      }),
    );
    expect(overEvents(1, 0)).toBe(0);
    expect(overEvents(1, 3)).toBe(1);
    expect(() => overEvents(0.5, 1.5)).toThrow('events must be a whole number');
    expect(() => overEvents(0.5, -1)).toThrow('events must be a whole number of 0 or more, got -1');
    for (const chance of [-0.1, 1.1, Number.NaN])
      expect(() => overEvents(chance, 3)).toThrow(`overEvents: chance must lie in 0 to 1, got ${chance}`);
    expect(overEvents(0, 3)).toBe(0);
  });
});
