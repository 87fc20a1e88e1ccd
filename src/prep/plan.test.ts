import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { facts, minute, randomCase } from '../../test/random-kart.ts';
import { fold, type KartEvent, type State } from '../book/index.ts';
import { circleInWork, disturbersOf, type Kart } from '../kart/index.ts';
import { openedBy } from '../life/index.ts';
import { fitness } from '../risk/index.ts';
import { tierOf } from './choose.ts';
import { dueList } from './due.ts';
import type { Plan, Step } from './model.ts';
import { makePlan } from './plan.ts';
import { passOf } from './write.ts';

const LATER = 100_000; // minute of the year at which plans are made
const now = minute(LATER);
const stateAfter = (history: Parameters<typeof facts>[0]): State => fold(facts(history));
const work = (plan: Plan): Step[] => plan.steps.filter(s => s.state !== 'done');

/** Does every step of the plan, in its order, as the facts that a person at the bench would write. */
const doAll = (history: Parameters<typeof facts>[0], plan: Plan): State =>
  fold([
    ...facts(history),
    ...facts(
      work(plan).map(s => passOf(s)),
      LATER + 1,
      'B. Tester',
    ),
  ]);

const atHand = (kart: Kart, state: State, event?: KartEvent) => ({
  plan: makePlan(kart, state, { now, ...(event ? { event } : {}) }),
});

const event: KartEvent = {
  event: 'the next one',
  from: minute(LATER + 8000),
  until: minute(LATER + 9000),
  runMinutes: 95,
  runLaps: 60,
  wet: false,
  pos: 0,
  fact: 'f0',
  at: minute(0),
  by: 'A. Tester',
  minutes: 0,
  laps: 0,
};
const runs = { numRuns: 600 };

/** How many due items of each tier a plan of so many minutes does. */
const tiersDone = (kart: Kart, state: State, minutes: number, people = 1): readonly number[] => {
  const effort = { schedules: 2, seed: 1 };
  const plan = makePlan(kart, state, { now, minutes, people, effort });
  const planned = new Set(plan.steps.flatMap(s => (s.item ? [s.item] : [])));
  const done = [0, 0, 0, 0, 0, 0, 0, 0];
  for (const d of dueList(kart, state, { now })) {
    const tier = tierOf(kart, d);
    if (planned.has(d.item)) done[tier] = (done[tier] ?? 0) + 1;
  }
  return done;
};
const compareTiers = (a: readonly number[], b: readonly number[]): number =>
  a.map((count, tier) => count - (b[tier] ?? 0)).find(apart => apart !== 0) ?? 0;

describe('a plan for any kart with any history', () => {
  it('ends with every part on, every joint made, nothing disturbed unchecked and nothing due', () => {
    let planned = 0;
    fc.assert(
      fc.property(randomCase, ({ kart, history }) => {
        const before = stateAfter(history);
        const { plan } = atHand(kart, before, event);
        planned += work(plan).length;
        const after = doAll(history, plan);
        for (const p of Object.keys(kart.parts)) expect(after.parts[p]?.on ?? true, `${p} is on`).toBe(true);
        for (const j of Object.keys(kart.joints)) expect(openedBy(kart, after, j), `${j} is made`).toBeUndefined();
        const then = { now: minute(LATER + 500), event };
        expect(dueList(kart, after, then)).toEqual([]);
        expect(fitness(kart, after, then)).toMatchObject({ against: [], unknown: [], open: [] });
        expect(work(makePlan(kart, after, then))).toEqual([]);
      }),
      { numRuns: 900 },
    );
    expect(planned).toBeGreaterThan(1000); // the property looked at real plans
  });

  it('takes nothing off twice, puts nothing back twice, and does nothing twice', () => {
    fc.assert(
      fc.property(randomCase, ({ kart, history }) => {
        const keys = work(atHand(kart, stateAfter(history)).plan)
          .filter(s => s.action !== 'posture')
          .map(s => s.key);
        expect(new Set(keys).size).toBe(keys.length);
      }),
      runs,
    );
  });

  it('takes a part off and puts it back only while one of its ways in is wholly off', () => {
    fc.assert(
      fc.property(randomCase, ({ kart, history }) => {
        const state = stateAfter(history);
        const off = new Set(Object.keys(kart.parts).filter(p => state.parts[p]?.on === false));
        for (const s of work(atHand(kart, state).plan)) {
          const open = (ways: readonly (readonly string[])[]): boolean =>
            ways.length === 0 || ways.some(w => w.every(p => off.has(p)));
          if (s.action === 'take-off' || s.action === 'refit') {
            expect(open(kart.parts[s.on]?.behind ?? []), `${s.key} is open`).toBe(true);
            if (s.action === 'take-off') off.add(s.on);
            else off.delete(s.on);
          } else if (s.item) {
            expect(open(kart.items[s.item]?.needsOff ?? []), `${s.key} is open`).toBe(true);
            if (kart.items[s.item]?.complete && s.action !== 'second-look') expect([...off]).toEqual([]);
          }
        }
      }),
      runs,
    );
  });

  it('numbers its steps, and each waits only for steps before it', () => {
    fc.assert(
      fc.property(randomCase, ({ kart, history }) => {
        const { plan } = atHand(kart, stateAfter(history));
        plan.steps.forEach((s, i) => {
          expect(s.n).toBe(i + 1);
          for (const a of s.after) expect(a).toBeLessThan(s.n);
        });
      }),
      runs,
    );
  });

  it('checks what an item disturbs after it: measuring comes in the order in which adjustments disturb each other', () => {
    fc.assert(
      fc.property(randomCase, ({ kart, history }) => {
        const steps = work(atHand(kart, stateAfter(history)).plan).filter(s => s.action !== 'second-look');
        const place = new Map(steps.flatMap((s, i) => (s.item ? [[s.item, i] as const] : [])));
        for (const [id, disturbers] of disturbersOf(kart).items)
          for (const d of disturbers) {
            const a = place.get(d);
            const b = place.get(id);
            if (a !== undefined && b !== undefined) expect(a).toBeLessThan(b);
          }
      }),
      runs,
    );
  });

  it('never claims a bound above its own minutes', () => {
    fc.assert(
      fc.property(randomCase, ({ kart, history }) => {
        const { plan } = atHand(kart, stateAfter(history));
        expect(plan.bound).toBeLessThanOrEqual(plan.minutes);
        expect(plan.minutes).toBe(work(plan).reduce((sum, s) => sum + s.minutes, 0));
      }),
      runs,
    );
  });

  it('in a short window fits or says that closing up alone does not, and names what is left out, safety as not fit', () => {
    fc.assert(
      fc.property(randomCase, fc.integer({ min: 0, max: 200 }), ({ kart, history }, minutes) => {
        const state = stateAfter(history);
        const plan = makePlan(kart, state, { now, minutes });
        const planned = new Set(plan.steps.flatMap(s => (s.item ? [s.item] : [])));
        const left = new Set(plan.leftOut.map(l => l.item));
        for (const d of dueList(kart, state, { now }))
          expect(planned.has(d.item) !== left.has(d.item), `${d.item} is planned or named`).toBe(true);
        const closing = makePlan(kart, state, { now, minutes: 0 }).minutes;
        if (closing <= minutes) expect(plan.minutes).toBeLessThanOrEqual(minutes);
        const safetyLeft = plan.leftOut.filter(({ grade }) => grade === 'safety');
        if (plan.safetyShortBy === null) expect(safetyLeft).toEqual([]);
        for (const { consequence } of safetyLeft) expect(consequence).toMatch(/^Not fit to run/);
      }),
      { numRuns: 250 },
    );
  });

  it('with more time never does less of a tier, unless it does more of one before it', () => {
    fc.assert(
      fc.property(randomCase, fc.nat(150), fc.nat(60), ({ kart, history }, minutes, more) => {
        const state = stateAfter(history);
        const [short, long] = [minutes, minutes + more].map(time => tiersDone(kart, state, time));
        expect(compareTiers(long ?? [], short ?? [])).toBeGreaterThanOrEqual(0);
      }),
      { numRuns: 200 },
    );
  });

  it('with another pair of hands never does less of a tier, unless it does more of one before it', () => {
    fc.assert(
      fc.property(randomCase, fc.nat(150), fc.integer({ min: 1, max: 2 }), ({ kart, history }, minutes, people) => {
        const state = stateAfter(history);
        const [few, more] = [people, people + 1].map(hands => tiersDone(kart, state, minutes, hands));
        expect(compareTiers(more ?? [], few ?? [])).toBeGreaterThanOrEqual(0);
      }),
      { numRuns: 100 },
    );
  });

  it('names for all it leaves out the least time that takes it: with so much it is in the plan, with a step less it is not', () => {
    let named = 0;
    fc.assert(
      fc.property(
        randomCase,
        fc.integer({ min: 1, max: 3 }),
        fc.array(fc.nat(120), { minLength: 1, maxLength: 3 }),
        ({ kart, history }, people, times) => {
          const state = stateAfter(history);
          const effort = { schedules: 2, seed: 1 };
          const first = times.slice(0, -1).map(minutes => ({ minutes }));
          const last = times.at(-1) ?? 0;
          const planWith = (more: number): Plan =>
            makePlan(kart, state, { now, people, effort, needs: true, windows: [...first, { minutes: last + more }] });
          const plan = planWith(0);
          const step = plan.needsStep ?? Number.NaN;
          for (const { item, needs } of plan.leftOut) {
            const more = (needs ?? Number.NaN) - (plan.window ?? 0);
            expect(more, `${item} enters later`).toBeGreaterThan(0);
            expect(step).toBeLessThanOrEqual(5);
            const has = (one: Plan): boolean => one.steps.some(s => s.item === item);
            expect(has(planWith(more)), `${item} enters with ${needs}`).toBe(true);
            expect(has(planWith(more - step)), `${item} does not enter with less`).toBe(false);
            named++;
          }
        },
      ),
      { numRuns: 40 },
    );
    expect(named).toBeGreaterThan(40); // something was left out
  });

  it('is the same for the same record, and a kart with a circle is never made by the generator', () => {
    fc.assert(
      fc.property(randomCase, ({ kart, history }) => {
        expect(circleInWork(kart)).toBeUndefined();
        const state = stateAfter(history);
        expect(atHand(kart, state).plan).toEqual(atHand(kart, state).plan);
      }),
      { numRuns: 300 },
    );
  });
});
