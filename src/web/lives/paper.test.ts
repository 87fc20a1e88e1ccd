import { expect, test } from 'vitest';
import { type Life, type Posterior, posteriorOf } from '../../life/index.ts';
import { draftOf } from './expect.tsx';
import { drawPaper, goneBy } from './paper.tsx';

const prior = { shape: { median: 2, spread: 0.001 }, scale: { median: 40, spread: 0.001 }, source: 'known' };
const known = posteriorOf(prior, []) as Posterior;
const life = (fate: 'failed' | 'running', age: number) => ({
  fate,
  age,
  part: 'chain',
  kart: '41',
  now: false,
  facts: [],
});

test('the hours by which a share is gone are those of the life itself', () => {
  // Weibull: t = η (-ln(1 - p))^(1/β)
  expect(goneBy(known)).toBeCloseTo(40 * Math.log(2) ** 0.5, 1);
  expect(goneBy(known, 0.1)).toBeCloseTo(40 * (-Math.log(0.9)) ** 0.5, 1);
});

test('the table beside the paper says what is drawn: by both, by the guess, by the record', () => {
  const lives = [life('failed', 20), life('running', 30)];
  const { head, rows } = drawPaper({ lives, prior }, posteriorOf(prior, lives as Life[]) as Posterior, 30);
  expect(head).toEqual(['Hours', 'Of 100', 'Low', 'High', 'Guess', 'Record']);
  // 1 - exp(-(20/40)²) = 0.2212; of two watched at 20 h one failed
  expect(rows.find(([hours]) => hours === '20')).toEqual(['20', '22', '22', '22', '22', '50']);
  expect(rows.find(([hours]) => hours === '10')?.at(-1)).toBe('0');
});

test('without a failure and without a guess neither column has a figure', () => {
  const record = { lives: [life('running', 30)], prior: { shape: prior.shape, source: 'shape alone' } };
  const [row] = drawPaper(record, known, 30).rows;
  expect(row?.slice(4)).toEqual(['none', 'none']);
});

test('two answers become one fact; what is left empty is not said, and what is no number is refused at its field', () => {
  const said = { kind: 'chain', half: '25', tenth: ' 12,5 ', interval: true, why: 'box' };
  expect(draftOf(said)).toEqual({
    draft: { kind: 'life expected', of: 'chain', halfHours: 25, tenthHours: 12.5, interval: true, why: 'box' },
  });
  expect(draftOf({ ...said, tenth: '', why: ' ' })).toEqual({
    draft: { kind: 'life expected', of: 'chain', halfHours: 25 },
  });
  for (const half of ['0', '-3', 'long'])
    expect(draftOf({ ...said, half })).toMatchObject({ problems: [{ where: 'halfHours' }] });
});
