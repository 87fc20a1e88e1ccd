import { expect, test } from 'vitest';
import type { KartChange } from '../../app/index.ts';
import type { Problem } from '../../kart/index.ts';
import { keepIn } from '../place.ts';
import { lineStart, nextError } from './lines.ts';
import { changeSaid } from './said.ts';
import { keepText, keptText } from './working-text.ts';

const TEXT = 'kart: 1\nname: x\nparts:\n  a: none\n';
const at = (line: number, column: number, file?: string) => ({ line, column, ...(file && { file }) }) as Problem;

test('a line begins where it begins, and one beyond the end is the last', () => {
  expect([1, 2, 3, 4].map(line => lineStart(TEXT, line))).toEqual([0, 8, 16, 23]);
  expect(lineStart(TEXT, 99)).toBe(TEXT.length);
  expect(lineStart('', 5)).toBe(0);
});

test('the next error is the one after the caret, round and round, and none of the library', () => {
  const problems = [at(4, 3), at(2, 1), at(1, 1, 'kinds/brakes.yaml')];
  expect(nextError(problems, TEXT, 0, false)).toBe(problems[1]);
  expect(nextError(problems, TEXT, 8, false)).toBe(problems[0]);
  expect(nextError(problems, TEXT, 25, false)).toBe(problems[1]);
  expect(nextError(problems, TEXT, 25, true)).toBe(problems[1]);
  expect(nextError(problems, TEXT, 0, true)).toBe(problems[0]);
  expect(nextError([], TEXT, 0, false)).toBeUndefined();
  expect(nextError([at(1, 1, 'kinds/brakes.yaml')], TEXT, 0, false)).toBeUndefined();
});

test('the text under work is kept by kart with the file it began from, whatever else was written in its place', () => {
  const keep = keepIn(undefined);
  expect(keptText(keep, '7')).toBeUndefined();
  keepText(keep, '7', { from: 'f1', text: TEXT });
  expect(keptText(keep, '7')).toEqual({ from: 'f1', text: TEXT });
  expect(keptText(keep, '8')).toBeUndefined();
  keep.set('kart-file 7', '{"text": 1}');
  expect(keptText(keep, '7')).toBeUndefined();
  keepText(keep, '7', undefined);
  expect(keep.get('kart-file 7')).toBe('');
});

const NOTHING: KartChange = {
  parts: { added: [], gone: [] },
  items: { added: [], gone: [] },
  seconds: [],
  dimensions: [],
  functions: [],
  reasonsGone: [],
  verdict: { before: 'not fit', after: 'not fit' },
  plan: { before: { steps: 9, minutes: 60 }, after: { steps: 9, minutes: 60 } },
  isOther: false,
};

test('what can hurt stands first and by name: safety parts, functions, second retentions that go', () => {
  const { grave, lines } = changeSaid({
    ...NOTHING,
    parts: {
      added: ['spare light'],
      gone: [
        { part: 'brake push rod', safety: true, carried: ['stop'] },
        { part: 'number plate', safety: false, carried: [] },
      ],
    },
    functions: [
      { name: 'stop', hazard: 'no brakes', severity: 1, is: 'gone', without: ['brake push rod'] },
      { name: 'steer', hazard: null, severity: 1, is: 'less', without: ['tie rod left'] },
    ],
    seconds: [
      { joint: 'rear hub left/pinch bolts', before: 'witness mark', after: null },
      { joint: 'clutch/pin', before: null, after: 'strap' },
    ],
  });
  expect(grave).toEqual([
    'Safety: brake push rod goes out. It carries: stop.',
    'Nothing of this kart carries “stop” any more (no brakes): what would fail it is not known.',
    '“steer” has to do without tie rod left.',
    'rear hub left, pinch bolts: the second retention goes, witness mark.',
  ]);
  expect(lines.slice(0, 3)).toEqual([
    'Out: number plate.',
    'In: spare light. What nobody has looked at is due.',
    'clutch, pin: second retention strap. Its check names it from now on.',
  ]);
});

test('a file that makes the kart look fitter says that nobody looked, and one that changes nothing says so', () => {
  const fitter = changeSaid({ ...NOTHING, verdict: { before: 'not fit', after: 'not known' }, isOther: true });
  expect(fitter.lines.at(-1)).toContain('Nothing was looked at for that');
  expect(changeSaid({ ...NOTHING, verdict: { before: 'not known', after: 'not fit' } }).lines).toEqual([
    expect.stringContaining('The kart stays the same'),
    'Fitness: not known before, not fit after.',
  ]);
});
