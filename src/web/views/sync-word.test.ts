import { expect, test } from 'vitest';
import { syncWord } from './sync-word.tsx';

const met = new Date(new Date().setHours(14, 5, 0, 0)).toISOString();
const word = (is: Parameters<typeof syncWord>[0]['sync']['is'], waiting: number, more = {}) =>
  syncWord({ sync: { is, waiting, problems: [], met }, writing: false, kept: true, ...more });

test('how the two books stand is a word with a shape of its own', () => {
  expect(word('all sent', 0)).toEqual({ sign: 'done', text: 'all sent' });
  expect(word('to send', 3)).toEqual({ sign: 'waiting', text: '3 to send' });
  expect(word('no server', 0)).toEqual({ sign: 'away', text: 'no server since 14:05' });
  expect(word('no server', 2).text).toBe('no server since 14:05, 2 to send');
  expect(word('stopped', 1).sign).toBe('caution');
});

test('a server that was last met on another day is told by the day', () => {
  const sync = { is: 'no server', waiting: 0, problems: [], met: '2026-01-02T12:00:00.000Z' } as const;
  expect(syncWord({ sync, writing: false, kept: true }).text).toBe('no server since 2026-01-02');
});

test('a clock that differs from the server’s is told before all is well', () => {
  const sync = { is: 'all sent', waiting: 0, problems: [], met, ahead: 86_400_000 } as const;
  expect(syncWord({ sync, writing: false, kept: true })).toEqual({ sign: 'caution', text: 'check the clock' });
});

test('a server that was set back is told until somebody has read it', () => {
  const sync = { is: 'all sent', waiting: 0, problems: [], met, setBack: 2 } as const;
  expect(syncWord({ sync, writing: false, kept: true })).toEqual({ sign: 'caution', text: 'server was set back' });
});

test('what a browser will not keep is said before anything else', () => {
  expect(word('no server', 2, { kept: false })).toEqual({ sign: 'caution', text: 'not kept, 2 to send' });
});
