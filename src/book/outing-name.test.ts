import { describe, expect, it } from 'vitest';
import { isFull, outingName } from './index.ts';

describe('a time on the track', () => {
  const at = '2026-05-01T09:41:00.000Z';
  it('goes by its event and session, else by its day and when it was', () => {
    expect(outingName({ event: 'Round 3', session: 'Heat 1', at })).toBe('Round 3 › Heat 1');
    expect(outingName({ event: 'Round 3', at })).toBe('Round 3 › session of 09:41 UTC');
    expect(outingName({ session: 'Heat 1', at })).toBe('2026-05-01 › Heat 1');
  });

  it('B28 has full laps, and a way out and a way in that are none', () => {
    const lap = { time: 52.1, spread: 0.01 };
    expect([lap, { ...lap, way: 'out' as const }, { ...lap, way: 'in' as const }].map(isFull)).toEqual([
      true,
      false,
      false,
    ]);
  });
});
