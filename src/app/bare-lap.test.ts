import { describe, expect, it } from 'vitest';
import fixture from '../../test/fixtures/laps/tracks.json' with { type: 'json' };
import { GENERIC_KART } from '../laps/index.ts';
import { bareLap } from './bare-lap.ts';
import { kartOf, lapQuestion } from './bare-lap-question.ts';

type Answer = Readonly<Record<string, unknown>>;
const question = (change: Answer = {}, kart: Answer = {}): Answer => ({
  ...{ kart: { ...fixture.kart, ...kart }, track: fixture.tracks.K7, step: 1 },
  ...change,
});
const ask = (input: unknown): Answer => bareLap.ask(input) as Answer;
const refused = (input: unknown): readonly string[] => {
  const answer = ask(input);
  expect(answer.kind).toBe('problems');
  return (answer.problems as { path: string }[]).map(({ path }) => path);
};

describe('calc lap', () => {
  it('gives lap time, speeds, corners and gears; lists of numbers along the lap when asked', () => {
    const answer = ask(question());
    // K7 of checks/rows/laps-predict.json: a reference in steps of time.
    expect(answer.lapTime).toBeCloseTo(17.37513, 2);
    expect(answer).toMatchObject({ upshifts: 8, corners: [{ radius: 12, turn: 180 }, { radius: 12 }], notes: [] });
    expect(JSON.parse(JSON.stringify(answer))).toEqual(answer);
    expect(answer.profile).toBeUndefined();
    const { profile } = ask(question({ profile: true })) as { profile: { at: number[]; time: number[] } };
    expect(profile.time.at(-1)).toBeCloseTo(answer.lapTime as number, 9);
  });
  it('knows the invented kart by the same figures as the core', () => {
    const read = kartOf(lapQuestion.parse(question()).kart);
    expect(read).toEqual(GENERIC_KART);
  });
  it('answers an array in order, and its own example', () => {
    expect(bareLap.ask([question(), bareLap.example])).toHaveLength(2);
  });
  it('drives an open piece of road from rest to a speed that must not be passed', () => {
    const answer = ask(question({ track: [['S', 100]], closed: false, begin: 0, end: 10 }));
    expect(answer).toMatchObject({ vMin: 0, vEnd: 10 });
    expect(answer.lapTime).toBeGreaterThan(5);
  });
  it('says that a track does not come round, and where a kart does not', () => {
    expect(
      ask(
        question({
          track: [
            ['S', 100],
            ['C', 20, 300, 5],
          ],
        }),
      ).notes,
    ).toEqual([expect.stringContaining('300°')]);
    expect(ask(question({}, { torque: fixture.kart.torque.map(() => 0) }))).toMatchObject({ lapTime: null });
  });
  it('refuses nonsense, all of it at once, each with its place', () => {
    expect(
      refused(
        question(
          {
            track: [
              ['S', 10],
              ['C', 10, 20, 9],
              ['C', 10, 0, 0],
            ],
            begin: 3,
            step: 0.001,
          },
          { torque: [1, 2], rpm: [1, 3, 2], gears: [1, 2], rpm_shift_max: 20_000 },
        ),
      ),
    ).toEqual(['kart/torque', 'kart/rpm/2', 'kart/gears/1', 'kart/rpm_shift_max', 'track/1/3', 'track/2/2', 'begin']);
    expect(refused(question({ step: 0, other: 1 }, { m: -1, mu_y: '2' }))).toEqual(
      expect.arrayContaining(['kart/m', 'kart/mu_y', 'step', 'other']),
    );
    expect(refused([question(), { track: [] }])).toEqual(expect.arrayContaining(['1/kart', '1/track']));
    expect(refused(question({ track: [['S', 100_000]], step: 0.1 }))).toEqual(['step']);
    for (const nonsense of [
      null,
      7,
      'lap',
      [],
      { kart: null },
      question({ track: [['X', 1]] }),
      question({ step: Number.NaN }),
    ])
      expect(['problems', undefined]).toContain(ask(nonsense).kind);
  });
});
