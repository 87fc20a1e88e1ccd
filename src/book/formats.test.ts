/** Old books open for ever: one fact of every kind as each format wrote it. The files are never written anew; a new kind gets a line, a new format a file. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { exportLines, FACT_KINDS, fold, importLines, verifyChain } from './index.ts';

const fixture = (name: string): string =>
  readFileSync(new URL(`../../test/fixtures/books/${name}`, import.meta.url), 'utf8');
const text = fixture('format-1.jsonl');
const second = fixture('format-2.jsonl');

test('B22 a book of format 1 with a fact of every kind is read whole, and written again gives the same bytes', () => {
  const read = importLines(text);
  if (read.kind === 'problems') throw new Error(JSON.stringify(read.problems));
  expect([...new Set(read.facts.map(({ kind }) => kind))].sort()).toEqual(
    FACT_KINDS.filter(kind => kind !== 'redacted').toSorted(),
  );
  expect(verifyChain(read.facts)).toEqual([]);
  expect(exportLines(read.facts)).toBe(text);
});

test('B22 a book of format 1 says of its kart what it said then', () => {
  const read = importLines(text);
  const state = fold(read.kind === 'facts' ? read.facts : []);
  expect(state).toMatchObject({
    minutes: 12.5,
    laps: 10,
    meterHours: 21.5,
    impacts: [{ corner: 'rear left' }, { corner: 'whole' }],
    defects: [{ defect: 'clip weak', mended: { how: 'new clip and strap' } }],
    posture: 'stand',
    tyres: { set: 'B' },
    struck: { f24: { by: 'A. Sample', why: 'the right one' } },
  });
  expect(state.joints['chain/joining link']?.loosened?.fact).toBe('f13');
  expect(state.items['chain/joining link']?.asked).toMatchObject({ fact: 'f14', second: 'riveted link' });
});

test('B22 a book of format 2 with a fact of every kind, one redacted, is read whole, and written again gives the same bytes', () => {
  const read = importLines(second);
  if (read.kind === 'problems') throw new Error(JSON.stringify(read.problems));
  expect([...new Set(read.facts.map(({ kind }) => kind))].sort()).toEqual([...FACT_KINDS].sort());
  expect(verifyChain(read.facts)).toEqual([]);
  expect(exportLines(read.facts)).toBe(second);
  const note = read.facts.find(({ kind }) => kind === 'note');
  expect(note).toMatchObject({ by: 'somebody 1a2b3c', text: '█████████ says: slow puncture' });
});

test('B22 a book of format 2 says of its kart what the same book of format 1 does', () => {
  const [one, two] = [text, second].map(lines => {
    const read = importLines(lines);
    return fold(read.kind === 'facts' ? read.facts : []);
  });
  expect(two).toEqual(one);
});
