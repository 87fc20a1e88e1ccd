import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { facts, minute, randomCase } from '../../test/random-kart.ts';
import { item, smallKart } from '../../test/small-kart.ts';
import { fold, type State } from '../book/index.ts';
import type { Kart } from '../kart/index.ts';
import { planDifference } from './difference.ts';
import { dueList } from './due.ts';
import type { Plan, Step } from './model.ts';
import { makePlan, planning } from './plan.ts';
import { passOf } from './write.ts';

const LATER = 100_000; // minute of the year at which plans are made
const now = minute(LATER);
type History = Parameters<typeof facts>[0];
const stateAfter = (history: History): State => fold(facts(history));
const work = (plan: Plan): Step[] => plan.steps.filter(s => s.state !== 'done');
const effort = { schedules: 6, seed: 1 };
const planFor = (kart: Kart, state: State, people: number, windows?: readonly number[]): Plan =>
  makePlan(kart, state, {
    now,
    people,
    effort,
    ...(windows ? { windows: windows.map(minutes => ({ minutes })) } : {}),
  });
/** What a person who does these steps in this order writes. */
const doing = (history: History, steps: readonly Step[]) => [
  ...facts(history),
  ...facts(
    steps.map(s => passOf(s)),
    LATER + 1,
    'B. Tester',
  ),
];
const crew = fc.integer({ min: 1, max: 3 });
const at = (value: number | null): number => value ?? Number.NaN;

describe('a plan for several hands', () => {
  it('starts nothing before what it waits for has ended, and nobody does two things at once', () => {
    let beside = 0;
    let freed = 0;
    fc.assert(
      fc.property(randomCase, crew, ({ kart, history }, people) => {
        const plan = planFor(kart, stateAfter(history), people);
        const steps = work(plan);
        for (const step of steps) {
          for (const n of step.after) expect(at(plan.steps[n - 1]?.end ?? 0)).toBeLessThanOrEqual(at(step.start));
          expect(step.people.length).toBeLessThanOrEqual(people);
          expect(Math.max(0, ...step.people)).toBeLessThanOrEqual(people);
        }
        for (let person = 1; person <= people; person++) {
          const own = steps.filter(s => s.people.includes(person) && at(s.end) > at(s.start));
          for (const [i, s] of own.entries())
            if (i > 0) expect(at(own[i - 1]?.end ?? null)).toBeLessThanOrEqual(at(s.start));
        }
        if (plan.span < plan.minutes) beside++;
        for (const step of steps) expect(step.whyNow.length, `${step.key} says why now`).toBeGreaterThan(0);
        if (people > 1 && steps.some(s => s.whyNow.some(({ kind }) => kind === 'person free'))) freed++;
      }),
      { numRuns: 100 },
    );
    expect(freed).toBeGreaterThan(0);
    expect(beside).toBeGreaterThan(10); // there were plans in which people really worked side by side
  });

  it('never works in a posture in which the kart does not stand, and turns it while nobody works', () => {
    fc.assert(
      fc.property(randomCase, crew, ({ kart, history }, people) => {
        const state = stateAfter(history);
        const steps = work(planFor(kart, state, people));
        const turns = steps.filter(s => s.action === 'posture');
        const postureAt = (time: number): string | undefined =>
          turns.findLast(t => at(t.end) <= time)?.posture ?? state.posture;
        for (const step of steps) {
          if (step.action === 'posture' || at(step.end) === at(step.start)) continue;
          if (step.posture !== 'any') expect(postureAt(at(step.start)), step.key).toBe(step.posture);
          for (const turn of turns)
            expect(
              at(turn.end) <= at(step.start) || at(turn.start) >= at(step.end),
              `${turn.key} beside ${step.key}`,
            ).toBe(true);
        }
      }),
      { numRuns: 100 },
    );
  });

  it('turns the kart in the minutes its file says, from where it stands, and says who must help', () => {
    const weigh = item('frame/weigh', [{ on: 'event' }], { posture: 'scales' });
    const drain = item('frame/drain', [{ on: 'event' }], { posture: 'side' });
    const kart: Kart = {
      ...smallKart(weigh, drain),
      postures: { scales: { minutes: 6, from: { side: 9 } }, side: { minutes: 4, people: 2 } },
    };
    const toSide = (people: number): readonly (readonly [number, number])[] =>
      work(planFor(kart, fold(facts([{ kind: 'put on', posture: 'stand' }])), people))
        .filter(({ key }) => key === 'posture side')
        .map(({ minutes, helpers }) => [minutes, helpers]);
    expect(toSide(1)).toEqual([[4, 1]]);
    expect(toSide(2)).toEqual([[4, 0]]);
    const onScales = work(planFor(kart, fold(facts([{ kind: 'put on', posture: 'side' }])), 1));
    expect(onScales.find(({ key }) => key === 'posture scales')?.minutes).toBe(6); // by way of the stand, where the rest is done
  });

  it('takes no longer with another pair of hands, and never claims a bound above its span', () => {
    fc.assert(
      fc.property(randomCase, ({ kart, history }) => {
        const state = stateAfter(history);
        const spans = [1, 2, 3].map(people => planFor(kart, state, people));
        for (const [i, plan] of spans.entries()) {
          expect(plan.bound).toBeLessThanOrEqual(plan.span);
          if (i > 0) expect(plan.span).toBeLessThanOrEqual(spans[i - 1]?.span ?? 0);
        }
      }),
      { numRuns: 70 },
    );
  });

  it('done in the order of its starts leaves nothing due, whoever did it', () => {
    fc.assert(
      fc.property(randomCase, crew, ({ kart, history }, people) => {
        const state = stateAfter(history);
        const after = fold(doing(history, work(planFor(kart, state, people))));
        expect(dueList(kart, after, { now: minute(LATER + 500) })).toEqual([]);
      }),
      { numRuns: 100 },
    );
  });

  it('goes on from no window into the next, and says how far each is filled', () => {
    fc.assert(
      fc.property(randomCase, crew, fc.integer({ min: 5, max: 60 }), ({ kart, history }, people, minutes) => {
        const plan = planFor(kart, stateAfter(history), people, [minutes, minutes, 500]);
        for (const step of work(plan))
          for (const edge of [minutes, 2 * minutes]) {
            const long = at(step.end) - at(step.start) > minutes;
            if (!long) expect(at(step.start) >= edge || at(step.end) <= edge, `${step.key} over ${edge}`).toBe(true);
          }
        for (const window of plan.windows) expect(window.used).toBeLessThanOrEqual(window.minutes);
      }),
      { numRuns: 100 },
    );
  });
});

describe('what a row would cost elsewhere', () => {
  const long = item('frame/long', [{ on: 'event' }], { minutes: 20 });
  const short = ['a', 'b', 'c', 'd'].map(key => item(`frame/${key}`, [{ on: 'event' }], { minutes: 5 }));
  const pass = { kind: 'checked', result: 'pass' } as const;
  const rest: History = ['hub/bolts', 'hub/track'].flatMap(id => [
    { ...pass, item: id },
    { ...pass, item: id, secondLook: true },
  ]);
  const costs = (kart: Kart, people: number): ReadonlyMap<string | null, number | undefined> =>
    new Map(
      work(makePlan(kart, stateAfter(rest), { now, people })).map(step => [
        step.item,
        step.whyNow.find(({ kind }) => kind === 'later' || kind === 'posture')?.minutes ?? undefined,
      ]),
    );

  it('is found with all the hands there are: the long row left to the end costs two people, and one nothing', () => {
    // By hand: 20 beside 4 × 5 takes two people 20; 4 × 5 by two first and then the 20 takes 10 + 20.
    const kart = smallKart(long, ...short);
    expect(costs(kart, 2).get('frame/long')).toBe(10);
    expect(costs(kart, 1).get('frame/long')).toBe(0);
  });
  it('counts the turns of the kart: one row for which it must lie down once more, and come back', () => {
    const below = ['x', 'y'].map(key => item(`frame/${key}`, [{ on: 'event' }], { posture: 'side' }));
    const kart = smallKart(...below, item('frame/up', [{ on: 'event' }], { posture: 'stand' }));
    const turns = work(makePlan(kart, stateAfter(rest), { now })).filter(({ action }) => action === 'posture');
    // As it is: side, stand. With one row on its side left to the end: side, stand, side.
    expect(turns.map(({ posture }) => posture)).toEqual(['side', 'stand']);
    expect(costs(kart, 1).get('frame/x')).toBe(turns[0]?.minutes);
  });
  it('is said of every row but a turn of the kart, also where it is nothing', () => {
    fc.assert(
      fc.property(randomCase, crew, ({ kart, history }, people) => {
        for (const step of work(planFor(kart, stateAfter(history), people)))
          if (step.action !== 'posture')
            expect(
              step.whyNow.some(({ minutes }) => minutes !== null && minutes >= 0),
              step.key,
            ).toBe(true);
      }),
      { numRuns: 60 },
    );
  });
});

describe('a plan made anew in the middle', () => {
  it('repeats nothing that was done, unless it is due again, and moves few of the rows that stay', () => {
    let moved = 0;
    let stayed = 0;
    fc.assert(
      fc.property(randomCase, fc.nat(40), ({ kart, history }, done) => {
        const state = stateAfter(history);
        const before = planFor(kart, state, 1);
        const first = work(before).slice(0, done);
        const half = fold(doing(history, first));
        const after = planFor(kart, half, 1);
        const difference = planDifference(before, after);
        expect(difference.added.map(s => `${s.key}: ${s.why}`)).toEqual([]);
        // What a new part makes needless is no longer due; nothing else is forgotten.
        const renewed = new Set(first.flatMap(s => (s.fresh || s.action === 'replace' ? [s.part] : [])));
        expect(difference.dropped.filter(s => !renewed.has(s.part)).map(s => s.key)).toEqual([]);
        const again = new Set(work(after).map(s => s.key));
        for (const step of first)
          if (step.action !== 'posture') expect(again.has(step.key), `${step.key} is not done twice`).toBe(false);
        moved += difference.moved.length;
        stayed += work(after).length;
      }),
      { numRuns: 150 },
    );
    expect(moved / stayed).toBeLessThan(0.05);
  });
});

describe('a plan that comes by and by', () => {
  it('fits the time there is from the first on whenever closing up does, and names all it leaves out', () => {
    fc.assert(
      fc.property(randomCase, crew, fc.integer({ min: 0, max: 120 }), ({ kart, history }, people, minutes) => {
        const state = stateAfter(history);
        const ask = { now, people, effort, windows: [{ minutes }] };
        const plans = [...planning(kart, state, ask)];
        // As it is planned at once; a search may find that closing up takes less.
        const closing = planning(kart, state, { ...ask, windows: [{ minutes: 0 }] }).next().value.span;
        if (closing <= minutes) for (const plan of plans) expect(plan.span).toBeLessThanOrEqual(minutes);
        for (const plan of plans)
          for (const due of dueList(kart, state, { now }))
            expect(
              plan.steps.some(({ item }) => item === due.item) || plan.leftOut.some(({ item }) => item === due.item),
              `${due.item} is planned or named`,
            ).toBe(true);
      }),
      { numRuns: 100 },
    );
  });
});
