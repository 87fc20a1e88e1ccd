/** The checks themselves: every subject has its card, its sources and its rows; every row says where it comes from. */
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { BIBLIOGRAPHY, subjects } from '../src/numbers/index.ts';
import { differences, type Row } from './rows.ts';
import { MARKS, tallyLine } from './tally.ts';

const here = fileURLToPath(new URL('.', import.meta.url));
const files = readdirSync(`${here}rows`).filter(name => name.endsWith('.json'));
const rows = files.flatMap(name => JSON.parse(readFileSync(`${here}rows/${name}`, 'utf8')) as Row[]);

describe('the subjects', () => {
  it('are looked at, and there are some', () => {
    expect(subjects.length).toBeGreaterThanOrEqual(2);
    expect(new Set(subjects.map(each => each.name)).size).toBe(subjects.length);
  });

  for (const { name, card, ask, example } of subjects)
    it(`${name} has a card, sources that can be found, rows, and an example that is answered`, () => {
      for (const text of [card.what, card.equation, card.validity]) expect(text.trim()).not.toBe('');
      expect(Object.keys(card.symbols).length).toBeGreaterThan(0);
      for (const meaning of Object.values(card.symbols)) expect(meaning).toMatch(/\[.+\]$/);
      expect(card.sources.length).toBeGreaterThan(0);
      for (const key of card.sources) expect(BIBLIOGRAPHY[key]?.title ?? '').not.toBe('');
      expect(rows.filter(row => row.subject === name).length).toBeGreaterThan(0);
      expect(ask(example)).toMatchObject({ kind: 'answer' });
    });

  it('use every source of the bibliography', () => {
    const used = new Set<string>(subjects.flatMap(each => each.card.sources));
    expect(Object.keys(BIBLIOGRAPHY).filter(key => !used.has(key))).toEqual([]);
  });
});

describe('the rows', () => {
  it('are looked at, and there are some', () => {
    expect(files.length).toBeGreaterThanOrEqual(4);
    expect(rows.length).toBeGreaterThan(50);
  });

  it('are run by a test of the same name', () => {
    const tests = readdirSync(here);
    for (const file of files) expect(tests).toContain(file.replace('.json', '.test.ts'));
  });

  it('each have an id of their own, a mark, a source and a reason for their tolerance', () => {
    expect(new Set(rows.map(row => row.id)).size).toBe(rows.length);
    for (const row of rows) {
      expect(MARKS, row.id).toContain(row.mark);
      for (const text of [row.source, row.what, row.tolerance.why]) expect(text.trim(), row.id).not.toBe('');
      expect(Object.keys(row.expect).length, row.id).toBeGreaterThan(0);
      expect(row.tolerance.value, row.id).toBeGreaterThan(0);
    }
  });
});

describe('a comparison', () => {
  const tolerance = { kind: 'absolute', value: 0.1, why: 'a test' } as const;
  it('fails on what is missing, no number, of another length or too far away', () => {
    expect(differences('x', undefined, 1, { tolerance })).toHaveLength(1);
    expect(differences('x', Number.NaN, 1, { tolerance })).toHaveLength(1);
    expect(differences('x', [1], [1, 2], { tolerance })).toHaveLength(1);
    expect(differences('x', 1.2, 1, { tolerance })).toEqual([
      expect.stringMatching(/^x: expected 1, got 1.2, allowed 0.1/),
    ]);
    expect(differences('x', 1.1, 1, { tolerance })).toEqual([]);
  });
  it('is counted by mark in one line', () => {
    const row = (mark: (typeof MARKS)[number], known = false) => ({ id: mark, mark, known });
    expect(tallyLine([row('read'), row('computed', true), row('memory'), row('common practice'), row('read')])).toBe(
      '5 rows: 2 read, 1 computed, 1 memory, 1 common practice, 1 known differences',
    );
  });
});
