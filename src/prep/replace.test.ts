import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { facts, minute, randomCase } from '../../test/random-kart.ts';
import { item, smallKart } from '../../test/small-kart.ts';
import { type Fact, fold, type Payload, partAge, type State } from '../book/index.ts';
import type { Kart } from '../kart/index.ts';
import { fitness } from '../risk/index.ts';
import { dueList } from './due.ts';
import type { Plan, Step } from './model.ts';
import { makePlan } from './plan.ts';
import { passOf } from './write.ts';

const LATER = 100_000; // minute of the year at which plans are made
const now = minute(LATER);
const todo = (plan: Plan): readonly Step[] => plan.steps.filter(({ state }) => state !== 'done');
const planFor = (kart: Kart, history: readonly Fact[], at = now): Plan => makePlan(kart, fold(history), { now: at });

/** All passed twice, an hour run, and then this. */
const recordOf = (kart: Kart, ...said: readonly Payload[]): readonly Fact[] =>
  facts([
    ...Object.keys(kart.items).flatMap((id): Payload[] => [
      { kind: 'checked', item: id, result: 'pass' },
      { kind: 'checked', item: id, result: 'pass', secondLook: true },
    ]),
    { kind: 'ran', minutes: 60 },
    ...said,
  ]);
const failed = (part: string): Payload => ({ kind: 'failed', part, how: 'broke through' });

/** One ready step after another, the plan made anew after each; at most so many. */
function doing(
  kart: Kart,
  history: readonly Fact[],
  most = 300,
): { readonly steps: readonly Step[]; readonly book: readonly Fact[] } {
  const steps: Step[] = [];
  let book = history;
  for (let n = 0; n < most; n++) {
    const step = planFor(kart, book, minute(LATER + n)).steps.find(({ state }) => state === 'ready');
    if (step === undefined) return { steps, book };
    steps.push(step);
    book = [...book, ...facts([passOf(step)], LATER + n, step.action === 'second-look' ? 'B. Other' : 'A. Tester')];
  }
  return { steps, book };
}

describe('a part that failed and of which no kind says how it is replaced', () => {
  const fit = item('hub/fit', [{ on: 'fitted' }]);
  const seat = item('hub/seat', [{ on: 'fitted' }], { needsOff: [['hub']] });
  const kart = smallKart(fit, seat, item('frame/x', [{ on: 'event' }]));

  it('comes off, another one goes on, its joint is made and looked at twice', () => {
    const steps = todo(planFor(kart, recordOf(kart, failed('hub'))));
    const keys = steps.map(({ key }) => key);
    const wanted = ['take-off wheel', 'take-off hub', 'refit hub', 'torque hub/bolts', 'second-look hub/bolts'];
    expect(keys.filter(key => wanted.includes(key))).toEqual(wanted);
    expect(steps.find(({ key }) => key === 'refit hub')).toMatchObject({
      title: 'Fit the new hub',
      fresh: true,
      writes: 'fitted',
      grade: 'safety',
      minutes: 2, // as its kind has a refit
      source: 'common practice',
      why: expect.stringMatching(/^Failed while it ran on .*: broke through\./),
      how: expect.stringContaining('write its hours'),
      caution: expect.stringMatching(/qualified person/),
    });
    expect(keys.some(key => key.startsWith('mend'))).toBe(false);
  });
  it('is looked at where the new one is: its seat in the hand, the rest once it is on', () => {
    const keys = todo(planFor(kart, recordOf(kart, failed('hub')))).map(({ key }) => key);
    expect(keys.indexOf('look hub/seat')).toBeLessThan(keys.indexOf('refit hub'));
    expect(keys.indexOf('look hub/fit')).toBeGreaterThan(keys.indexOf('refit hub'));
  });
  it('stands no longer once another one is on, which is as old as it says', () => {
    const history = recordOf(kart, failed('hub'));
    expect(dueList(kart, fold(history), { now })[0]).toMatchObject({
      cause: 'failed',
      part: 'hub',
      facts: expect.arrayContaining(['f11']),
    });
    const { steps, book } = doing(kart, history);
    expect(steps.filter(({ fresh }) => fresh).map(({ key }) => key)).toEqual(['refit hub']);
    const state = fold(book);
    expect(state.defects[0]?.mended?.how).toBe('another one fitted');
    expect(partAge(state, 'hub').minutes).toBe(0);
    expect(fitness(kart, state, { now: minute(LATER + 900) }).against).toEqual([]);
  });
  it('that cannot come off is replaced where it is, in half an hour as a starting guess, before it is looked at', () => {
    const history = recordOf(kart, failed('frame'));
    const steps = todo(planFor(kart, history));
    expect(steps.map(({ key }) => key)).toEqual(['refit frame', 'look frame/x']);
    expect(steps[0]).toMatchObject({
      action: 'replace',
      writes: 'fitted',
      fresh: true,
      minutes: 30,
      source: 'common practice',
    });
    const { book } = doing(kart, history);
    expect(fold(book).defects[0]?.mended?.how).toBe('another one fitted');
    expect(planFor(kart, book, minute(LATER + 9)).steps.map(({ key, state }) => `${key} ${state}`)).toEqual([
      'refit frame done',
      'look frame/x done',
    ]);
  });
  it('and was mended after all asks for no other one', () => {
    const history = recordOf(kart, failed('hub'));
    const id = fold(history).defects[0]?.fact ?? '';
    const mended = fold([...history, ...facts([{ kind: 'mended', found: id, how: 'straightened by its maker' }], 900)]);
    const keys = todo(makePlan(kart, mended, { now })).map(({ key }) => key);
    expect(keys).not.toContain('refit frame');
    expect(keys).toContain('look hub/fit');
  });
});

describe('a part that its kind has replaced', () => {
  it('goes back on as another one, also when the plan is made anew in between', () => {
    const anew = item('hub/anew', [{ on: 'hours', limit: 1 }], { action: 'replace', needsOff: [['hub']] });
    const kart = smallKart(anew, item('hub/fit', [{ on: 'fitted' }]));
    const { steps, book } = doing(kart, recordOf(kart));
    expect(steps.map(({ key, fresh }) => `${key}${fresh ? ' new' : ''}`)).toContain('refit hub new');
    expect(steps.map(({ key }) => key)).toContain('look hub/fit');
    expect(partAge(fold(book), 'hub').minutes).toBe(0);
  });
});

describe('failures on any kart', () => {
  const cases = fc
    .tuple(randomCase, fc.array(fc.nat(40), { minLength: 1, maxLength: 3 }))
    .map(([{ kart, history }, parts]) => {
      const ids = Object.keys(kart.parts);
      return { kart, history: [...history, ...parts.map(n => failed(ids[n % ids.length] ?? ''))] };
    });
  const open = ({ defects }: State) => defects.filter(one => one.failed && !one.mended);

  it('the whole plan done leaves no failure, and due at most what had to be done before the new part was on', () => {
    let failures = 0;
    fc.assert(
      fc.property(cases, ({ kart, history }) => {
        failures += open(fold(facts(history))).length;
        const done = todo(planFor(kart, facts(history))).map(step => passOf(step));
        const then = fold([...facts(history), ...facts(done, LATER + 1, 'B. Tester')]);
        expect(open(then)).toEqual([]);
        const due = dueList(kart, then, { now: minute(LATER + 500) });
        expect(due.filter(({ cause }) => cause !== 'fitted')).toEqual([]);
      }),
      { numRuns: 100 },
    );
    expect(failures).toBeGreaterThan(60);
  });
  it('step by step, planned anew after each, it comes to an end with another one on in place of each', () => {
    fc.assert(
      fc.property(cases, ({ kart, history }) => {
        const { book } = doing(kart, facts(history));
        const then = fold(book);
        expect(open(then)).toEqual([]);
        expect(todo(planFor(kart, book, minute(LATER + 500)))).toEqual([]);
      }),
      { numRuns: 25 },
    );
  });
});
