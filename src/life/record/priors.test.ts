import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { priorOfKind, readPriors } from './priors.ts';

const data = new URL('../../../data/', import.meta.url);
const priors = readPriors(readFileSync(new URL('priors.yaml', data), 'utf8'));
const kinds = readdirSync(new URL('kinds/', data)).flatMap(name =>
  Object.keys(parse(readFileSync(new URL(`kinds/${name}`, data), 'utf8'))),
);

describe('the starting guesses in data/priors.yaml', () => {
  it('are for kinds that there are, each once', () => {
    const named = priors.parts.flatMap(part => part.kinds);
    expect(named.length).toBeGreaterThan(20);
    expect(named.filter(kind => !kinds.includes(kind))).toEqual([]);
    expect(new Set(named).size).toBe(named.length);
  });
  it('of industry have the spread that their 5 and 95 % points mean', () => {
    for (const { item, shape } of priors.industry)
      expect(Math.log(shape.to / shape.from) / (2 * 1.6449), item).toBeCloseTo(shape.spread, 2);
  });
  it('lie inside their class of failure', () => {
    for (const { mode, shape } of priors.modes)
      expect(shape.from < shape.median && shape.median < shape.to, mode).toBe(true);
  });
  it('give a shape and no life, and nothing for a kind nobody guessed', () => {
    const prior = priorOfKind(priors, 'chain');
    expect(prior?.shape.median).toBe(3);
    expect(prior?.scale).toBeUndefined();
    expect(prior?.source).toMatch(/common practice/);
    expect(priorOfKind(priors, 'frame')).toBeUndefined();
  });
  it('of another shape are refused with the place', () => {
    expect(() => readPriors('note: x\nparts: []\nmodes: []\nindustry: []')).toThrow(/parts/);
  });
});
