import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { figuresOf, judged, knownSeries } from '../../../test/lap-series.ts';
import { adviceFor, effectSay, helped, planFor, runSpreadFrom, type TestRun, type Told } from './index.ts';

const told = (runs: readonly TestRun[], ask?: Parameters<typeof helped>[1]): Told => {
  const answer = helped(runs, ask);
  if (answer.kind === 'not told') throw new Error(answer.say);
  return answer;
};
const only = (answer: Told) => {
  const [effect] = answer.effects;
  if (!effect) throw new Error('an effect was expected');
  return effect;
};
const out = { time: 53, out: true };
const run = (on: readonly string[], ...times: number[]): TestRun => ({
  on,
  laps: [out, ...times.map(time => ({ time }))],
});
const changed = (runs: readonly TestRun[], to: (time: number, order: number, at: TestRun) => number): TestRun[] => {
  let order = 0;
  return runs.map(each => ({ ...each, laps: each.laps.map(lap => ({ ...lap, time: to(lap.time, order++, each) })) }));
};
const ABBA = [
  run([], 52.41, 52.33, 52.38, 52.29, 52.36),
  run(['wider rear'], 52.12, 52.07, 52.15, 52.04, 52.11),
  run(['wider rear'], 52.09, 52.14, 52.02, 52.08, 52.05),
  run([], 52.3, 52.27, 52.35, 52.24, 52.31),
];

describe('on all 1200 series with known effects', () => {
  const all = judged(knownSeries());
  const returned = all.filter(({ series }) => series.design !== 'AB');

  it('93 to 98 of 100 intervals hold the truth, of every design and of those that go back', () => {
    expect(all).toHaveLength(1200);
    for (const some of [all, returned]) {
      expect(figuresOf(some).coverage).toBeGreaterThan(0.93);
      expect(figuresOf(some).coverage).toBeLessThan(0.98);
    }
  });
  it('at most 6 of 100 see an effect where there is none', () => {
    for (const some of [all, returned]) expect(figuresOf(some).falseAlarms).toBeLessThanOrEqual(0.06);
  });
  it('a quarter of a second is found in 7 of 10 tests that go back', () => {
    expect(figuresOf(returned).power).toBeGreaterThanOrEqual(0.7);
  });
  it('A then B never gets a verdict, whatever its interval', () => {
    const single = all.filter(({ series }) => series.design === 'AB').flatMap(each => each.told.effects);
    expect(new Set(single.map(({ verdict, why }) => `${verdict}: ${why}`))).toEqual(
      new Set(['cannot tell: cannot separate the change from the track']),
    );
  });
});

describe('whatever the laps', () => {
  const some = knownSeries().filter((_, n) => n % 60 === 7);
  const series = fc.constantFrom(...some.map(({ runs }) => runs));
  const near = (a: Told, b: Told, sign = 1): void =>
    a.effects.forEach((effect, n) => {
      expect(b.effects[n]?.effect).toBeCloseTo(sign * effect.effect, 6);
      expect(b.effects[n]?.high).toBeCloseTo(sign * (sign > 0 ? effect.high : effect.low), 6);
    });

  it('all times later by the same changes nothing', () => {
    fc.assert(
      fc.property(series, fc.double({ min: -20, max: 60, noNaN: true }), (runs, by) =>
        near(told(runs), told(changed(runs, time => time + by))),
      ),
    );
  });
  it('a steady drift of the track changes no effect', () => {
    fc.assert(
      fc.property(series, fc.double({ min: -0.2, max: 0.2, noNaN: true }), (runs, by) =>
        near(told(runs), told(changed(runs, (time, order) => time + by * order))),
      ),
    );
  });
  it('an effect put on top comes out as much larger', () => {
    fc.assert(
      fc.property(series, fc.double({ min: -1, max: 1, noNaN: true }), (runs, by) => {
        const more = told(changed(runs, (time, _, { on }) => time + (on.includes('one') ? by : 0)));
        expect(only(more).effect - by).toBeCloseTo(only(told(runs)).effect, 6);
      }),
    );
  });
  it('the base and the change exchanged turn the sign', () => {
    for (const { runs, design } of some)
      if (design !== 'F22')
        near(told(runs), told(runs.map(each => ({ ...each, on: each.on.length > 0 ? [] : ['one'] }))), -1);
  });
  it('names and their order change nothing', () => {
    for (const { runs } of some.filter(({ design }) => design === 'F22')) {
      const [one, two] = told(runs).effects;
      const turned = told(runs.map(({ on, laps }) => ({ on: [...on].reverse(), laps })));
      expect(turned.effects.find(({ change }) => change === 'one')?.high).toBeCloseTo(one?.high ?? Number.NaN, 9);
      expect(turned.effects.find(({ change }) => change === 'two')?.low).toBeCloseTo(two?.low ?? Number.NaN, 9);
    }
  });
});

describe('a verdict', () => {
  it('is faster for laps that bear it, and says by how much', () => {
    const effect = only(told(ABBA));
    expect(effect.verdict).toBe('faster');
    expect(effectSay(effect)).toMatch(/^wider rear gained 0\.2\d ± 0\.\d\d s a lap\.$/);
  });
  it('is not cast over by one lap behind another kart', () => {
    const [first, second, ...rest] = ABBA;
    if (!first || !second) throw new Error('four runs');
    const slow = { ...second, laps: [...second.laps.slice(0, 5), { time: 61.2 }] };
    const answer = told([first, slow, ...rest]);
    expect(answer.laps).toMatchObject({ slow: 1, counted: 19, out: 4 });
    expect(only(answer).verdict).toBe('faster');
  });
  it('leaves out what was marked, and laps without a time', () => {
    const [first, ...rest] = ABBA;
    if (!first) throw new Error('four runs');
    const marked = [{ time: 59, marked: true }, { time: Number.NaN }];
    expect(told([{ ...first, laps: [...first.laps, ...marked] }, ...rest]).laps).toMatchObject({
      marked: 2,
      counted: 20,
    });
  });
  it('of no practical difference needs a threshold, and the whole interval inside it', () => {
    const level = changed(ABBA, (time, _, { on }) => time + (on.length > 0 ? 0.23 : 0));
    expect(only(told(level)).verdict).toBe('cannot tell');
    expect(only(told(level, { matters: 0.5 })).verdict).toBe('no practical difference');
    expect(only(told(level, { matters: 0.02 })).verdict).toBe('cannot tell');
  });
  it('of two changes at once needs more than of one alone', () => {
    const { runs } = knownSeries().find(({ design }) => design === 'F22') ?? { runs: [] };
    for (const { chance, verdict, why } of told(runs).effects) {
      if (chance > 0.05) expect(verdict).toBe('cannot tell');
      if (chance <= 0.025) expect(verdict).not.toBe('cannot tell');
      if (why === 'several changes') expect(chance).toBeGreaterThan(0.025);
    }
  });
  it('of laps all alike is no certainty', () => {
    const alike = ABBA.map(({ on }) => run(on, 52, 52, 52, 52));
    const effect = only(told(alike));
    expect(effect.high).toBeGreaterThan(0);
    expect(effect.verdict).toBe('cannot tell');
  });
});

describe('what cannot be told is said', () => {
  it('changes that always went together, by name', () => {
    const both = ABBA.map(({ on, laps }) => ({ on: on.length > 0 ? ['wider rear', 'softer front'] : [], laps }));
    expect(helped(both)).toMatchObject({
      why: 'always together',
      say: expect.stringContaining('wider rear and softer front came and went together'),
    });
  });
  it('one that is made of two others', () => {
    const sum = [[], ['a'], ['b', 'c'], ['a', 'b', 'c'], []].map(on => run(on, 52, 52.1, 52.2, 52.1));
    expect(helped(sum)).toMatchObject({ why: 'always together', say: expect.stringMatching(/^b and c came/) });
  });
  it('no change, one never taken off, and too few laps', () => {
    expect(helped(ABBA.map(({ laps }) => ({ on: [], laps })))).toMatchObject({ why: 'no change' });
    expect(helped(ABBA.map(({ laps }) => ({ on: ['x'], laps })))).toMatchObject({ why: 'never without' });
    expect(helped([run([], 52), run(['x'], 52)])).toMatchObject({ why: 'too few laps' });
    expect(helped([])).toMatchObject({ why: 'no change' });
  });
});

describe('advice', () => {
  const noisy = [run([], 52.4, 52.1, 52.3), run(['x'], 52.2, 52.05, 52.35), run([], 52.15, 52.4, 52.2)];
  it('says how many more laps each way', () => {
    const answer = told(noisy);
    const advice = adviceFor(noisy, answer, only(answer), 0.3);
    expect(advice?.more).toBeDefined();
    expect(advice?.say).toMatch(/^\w+ more laps? each way to see 0\.30 s a lap: (with|without) it, /);
    expect(advice?.more?.smallest).toBeLessThanOrEqual(0.3);
  });
  it('says that a day is not enough where it is not', () => {
    const wild = changed(noisy, (time, order) => time + (order % 3));
    const answer = told(wild);
    expect(adviceFor(wild, answer, only(answer), 0.05)?.say).toContain('no test of one day is enough');
  });
  it('is silent where the verdict stands', () => {
    expect(adviceFor(ABBA, told(ABBA), only(told(ABBA)))).toBeUndefined();
  });
  it('before a test: a larger effect never takes more laps', () => {
    const driven = (worth: number) => planFor(worth, { lap: 0.1, run: 0.03 })?.driven ?? Number.POSITIVE_INFINITY;
    const worths = [0.05, 0.1, 0.15, 0.2, 0.3, 0.5];
    for (const [n, worth] of worths.entries())
      if (n > 0) expect(driven(worth)).toBeLessThanOrEqual(driven(worths[n - 1] ?? 0));
    expect(planFor(0.02, { lap: 0.15, run: 0.05 })).toBeUndefined();
  });
});

describe('the spread of runs', () => {
  const day = (offsets: readonly number[]): TestRun[] =>
    offsets.map(by => run([], 52 + by, 52.05 + by, 51.96 + by, 52.02 + by, 51.99 + by));
  it('is a guess until six repeat runs say better', () => {
    expect(runSpreadFrom([day([0, 0.1, 0]), day([0.05, 0])])).toMatchObject({ basis: 'starting guess', repeats: 5 });
    expect(runSpreadFrom([day([0, 0.1, 0]), day([0.05, 0, 0.02])])).toMatchObject({ basis: 'own history', repeats: 6 });
  });
  it('makes intervals narrower for a driver whose runs agree, and wider for one whose runs do not', () => {
    const width = (history: readonly TestRun[][]): number => {
      const { low, high } = only(told(ABBA, { runSpread: runSpreadFrom(history) }));
      return high - low;
    };
    const steady = Array.from({ length: 6 }, () => day([0, 0.003, -0.002]));
    const wild = Array.from({ length: 6 }, () => day([0, 0.3, -0.2, 0.15]));
    expect(width(steady)).toBeLessThan(width([]));
    expect(width(wild)).toBeGreaterThan(width([]));
  });
});
