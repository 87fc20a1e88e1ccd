import fc from 'fast-check';
import { expect, test } from 'vitest';
import { facts, minute, randomCase } from '../../../test/random-kart.ts';
import { fold } from '../../book/index.ts';
import { makePlan, passOf } from '../../prep/index.ts';
import { barsOf } from './bars.ts';
import { carried, toDo } from './carried.ts';

const now = minute(100_000);

test('a plan for two, after any of its ready rows is done, keeps the others at their times and waits for what is left', () => {
  let carriedOn = 0;
  fc.assert(
    fc.property(randomCase, fc.nat(), ({ kart, history }, pick) => {
      const before = makePlan(kart, fold(facts(history)), { now, people: 2, effort: { schedules: 1, seed: 1 } });
      const ready = before.steps.filter(({ state }) => state === 'ready');
      const step = ready[pick % Math.max(1, ready.length)];
      if (step === undefined) return;
      carriedOn++;
      const state = fold([...facts(history), ...facts([passOf(step)], 100_001)]);
      const after = carried(before, makePlan(kart, state, { now: minute(100_002) }), state);
      const times = new Map(before.steps.map(({ key, start, end }) => [`${key} ${start}`, end]));
      expect(after.steps.map(({ n }) => n)).toEqual(after.steps.map((_, i) => i + 1));
      for (const row of toDo(after)) {
        expect(row.key === step.key && row.start === step.start).toBe(false);
        expect(times.get(`${row.key} ${row.start}`)).toBe(row.end);
        for (const n of row.after) expect(after.steps[n - 1]?.state).not.toBe('done');
        expect(row.state).toBe(row.after.length === 0 ? 'ready' : 'waiting');
      }
    }),
    { numRuns: 25 },
  );
  expect(carriedOn).toBeGreaterThan(10);
});

test('the bars of one person never lie over each other, and every row has one for each of its people', () => {
  fc.assert(
    fc.property(randomCase, ({ kart, history }) => {
      const plan = makePlan(kart, fold(facts(history)), { now, people: 2, effort: { schedules: 1, seed: 1 } });
      const { bars, height } = barsOf(plan);
      const rows = toDo(plan).filter(({ action }) => action !== 'posture');
      expect(bars).toHaveLength(rows.reduce((sum, { people }) => sum + people.length, 0));
      for (const lane of [0, 1]) {
        const own = bars.filter(bar => bar.lane === lane).toSorted((a, b) => a.top - b.top);
        for (const [i, bar] of own.entries()) {
          expect(bar.top + bar.height).toBeLessThanOrEqual(height);
          const next = own[i + 1];
          if (next) expect(bar.top + bar.height).toBeLessThanOrEqual(next.top + 1e-6);
        }
      }
    }),
    { numRuns: 25 },
  );
});
