/** What goes in and comes out of `calc helped`. */
import { describe, expect, it } from 'vitest';
import { bareHelped } from './bare-helped.ts';

const { ask, example } = bareHelped;
const laps = example.laps as readonly { run: number; setup: string; time: number }[];

describe('calc helped', () => {
  it('gives each effect with interval, verdict and what such a test could have shown', () => {
    expect(ask(example)).toMatchObject({
      effects: [
        {
          change: 'rear track 10 mm wider',
          effect: expect.closeTo(-0.24, 1),
          verdict: 'faster',
          smallest: expect.any(Number),
        },
      ],
      laps: { counted: 20, out: 4, marked: 0 },
      basis: 'starting guess',
      say: [expect.stringMatching(/^rear track 10 mm wider gained 0\.2\d ± 0\.\d\d s a lap\.$/)],
    });
  });
  it('calls a set-up that nobody explained by its name, the first one the base', () => {
    expect(ask({ laps })).toMatchObject({ effects: [{ change: 'B', verdict: 'faster' }] });
    expect(ask([{ laps }, example])).toHaveLength(2);
  });
  it('cannot separate a single A then B from the track, and says what to drive', () => {
    expect(ask({ laps: laps.filter(({ run }) => run < 3), worth: 0.25 })).toMatchObject({
      effects: [
        {
          verdict: 'cannot tell',
          why: 'cannot separate the change from the track',
          advice: { say: expect.any(String), more: { laps: expect.any(Number) } },
        },
      ],
    });
  });
  it('says why nothing can be told', () => {
    const setups = { A: [], B: ['wider', 'softer'] };
    expect(ask({ laps, setups })).toMatchObject({ notTold: 'always together' });
  });
  it('takes earlier days into account', () => {
    const day = [1, 2, 3].flatMap(run => [60, 52, 52.05, 51.98, 52.02].map(time => ({ run, setup: 'A', time })));
    expect(ask({ ...example, history: [day, day] })).toMatchObject({ basis: 'own history' });
  });
  it('before a test says how many runs in which order it takes', () => {
    expect(ask({ before: { lapSpread: 0.1, runSpread: 0.03 }, worth: 0.15 })).toMatchObject({
      plan: { order: expect.stringMatching(/^A-B/), laps: expect.any(Number) },
      orders: expect.arrayContaining([expect.objectContaining({ order: 'A-B-A' })]),
    });
    expect(ask({ before: { lapSpread: 1 } })).toMatchObject({ plan: null, say: [expect.stringContaining('no test')] });
  });
});

describe('calc helped refuses', () => {
  it('two set-ups in one run, a set-up that is not explained, and laps without time, each with its place', () => {
    const wrong = [
      { run: 1, setup: 'A', time: 52 },
      { run: 1, setup: 'B', time: 52 },
    ];
    expect(ask({ laps: wrong, setups: { A: [] } })).toMatchObject({
      problems: [{ path: 'laps/1/setup' }, { path: 'laps/1/setup' }],
    });
    expect(ask({ laps: [{ run: 1, setup: 'A', time: -3 }] })).toMatchObject({ problems: [{ path: 'laps/0/time' }] });
  });
  it('laps and a plan at once, or neither', () => {
    expect(ask({})).toMatchObject({ problems: [{ path: 'laps', got: 'neither' }] });
    expect(ask({ laps, before: { lapSpread: 0.1 } })).toMatchObject({ problems: [{ path: 'before', got: 'both' }] });
  });
});
