import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { facts, minute, randomCase } from '../../test/random-kart.ts';
import { item, smallKart } from '../../test/small-kart.ts';
import { fold, type Payload, type State } from '../book/index.ts';
import { GRADES } from '../kart/index.ts';
import { fitness } from '../risk/index.ts';
import { planDifference } from './difference.ts';
import { dueList } from './due.ts';
import type { Plan } from './model.ts';
import { makePlan } from './plan.ts';
import { passOf } from './write.ts';

const LATER = 100_000; // minute of the year at which plans are made
const now = minute(LATER);
const keysOf = (plan: Plan): readonly string[] => plan.steps.filter(s => s.state !== 'done').map(s => s.key);
const found = (more: Partial<Extract<Payload, { kind: 'found' }>> = {}): Payload => ({
  kind: 'found',
  part: 'hub',
  defect: 'crack at the slot',
  grade: 'safety',
  ...more,
});

describe('a find that is not mended', () => {
  const kart = smallKart(item('hub/seat', [{ on: 'disturbed' }], { needsOff: [['hub']] }), item('frame/x', []));
  const all = { kind: 'checked', result: 'pass' } as const;
  /** Everything else was passed before. */
  const stateAfter = (...said: readonly Payload[]): State =>
    fold([
      ...facts(said),
      ...facts(
        Object.keys(kart.items).flatMap(id => [
          { ...all, item: id },
          { ...all, item: id, secondLook: true },
        ]),
        -20,
      ),
    ]);
  const planAfter = (...said: readonly Payload[]): Plan => makePlan(kart, stateAfter(...said), { now });

  it('on a part is a step with the part off, and what came off for it is made and checked', () => {
    const plan = planAfter(found());
    const keys = keysOf(plan);
    const wanted = ['take-off wheel', 'take-off hub', 'mend hub/mend f0', 'refit hub', 'torque hub/bolts'];
    expect(keys.filter(key => wanted.includes(key))).toEqual(wanted);
    expect(plan.steps.find(({ action }) => action === 'mend')).toMatchObject({
      title: 'Mend: crack at the slot',
      grade: 'safety',
      source: 'common practice',
      writes: 'mended',
      mends: 'f0',
      how: expect.stringContaining('not known'),
    });
  });
  it('at a joint opens the joint and not the part', () => {
    const keys = keysOf(planAfter(found({ item: 'hub/bolts' })));
    expect(keys.indexOf('torque hub/bolts')).toBeGreaterThan(keys.indexOf('mend hub/mend f0'));
    expect(keys).not.toContain('take-off hub');
  });
  it('at an item is followed by that item', () => {
    const keys = keysOf(planAfter(found({ part: 'frame', item: 'frame/x' })));
    expect(keys.indexOf('look frame/x')).toBeGreaterThan(keys.indexOf('mend frame/mend f0'));
  });
  it('is due with its date and words, is new in the plan against the one before, and done once mended', () => {
    expect(dueList(kart, stateAfter(found()), { now })).toMatchObject([
      { cause: 'found', facts: ['f0'], why: expect.stringContaining('crack at the slot') },
    ]);
    const difference = planDifference(planAfter(), planAfter(found()));
    expect(difference.added.map(({ key }) => key)).toContain('mend hub/mend f0');
    expect(keysOf(planAfter(found(), { kind: 'mended', found: 'f0', how: 'new hub' }))).not.toContain(
      'mend hub/mend f0',
    );
  });
  it('on a part that the kart no longer has asks for no work', () => {
    expect(keysOf(planAfter(found({ part: 'gone' })))).toEqual(keysOf(planAfter()));
  });
});

describe('finds on any kart', () => {
  const finds = fc.array(
    fc.record({ part: fc.nat(40), item: fc.option(fc.nat(40)), grade: fc.constantFrom(...GRADES) }),
    { minLength: 1, maxLength: 3 },
  );
  const cases = fc.tuple(randomCase, finds).map(([{ kart, history }, wanted]) => ({
    kart,
    history: [
      ...history,
      ...wanted.map(({ part: n, item: k, grade }): Payload => {
        const items = Object.values(kart.items);
        const seen = k === null || items.length === 0 ? undefined : items[k % items.length];
        const part = Object.keys(kart.parts)[n % Object.keys(kart.parts).length] ?? '';
        return seen
          ? { kind: 'found', part: seen.part, item: seen.id, defect: 'worn', grade }
          : { kind: 'found', part, defect: 'worn', grade };
      }),
    ],
  }));

  it('the whole plan done leaves nothing due and nothing against running', () => {
    fc.assert(
      fc.property(cases, ({ kart, history }) => {
        const plan = makePlan(kart, fold(facts(history)), { now });
        const doing = plan.steps.filter(({ state }) => state !== 'done').map(step => passOf(step));
        const after = fold([...facts(history), ...facts(doing, LATER + 1, 'B. Tester')]);
        const then = { now: minute(LATER + 500) };
        expect(dueList(kart, after, then)).toEqual([]);
        expect(fitness(kart, after, then)).toMatchObject({ against: [], unknown: [], open: [] });
      }),
      { numRuns: 150 },
    );
  });
  it('no plan leaves a safety find out unless it says not fit', () => {
    let left = 0;
    fc.assert(
      fc.property(cases, fc.nat(150), ({ kart, history }, minutes) => {
        const state = fold(facts(history));
        const plan = makePlan(kart, state, { now, minutes });
        for (const { fact, grade, mended } of state.defects) {
          if (grade !== 'safety' || mended) continue;
          if (plan.steps.some(({ mends }) => mends === fact)) continue;
          left++;
          expect(plan.safetyShortBy).not.toBeNull();
          expect(plan.leftOut.find(({ item: id }) => id.endsWith(`/mend ${fact}`))?.consequence).toMatch(/^Not fit/);
        }
      }),
      { numRuns: 80 },
    );
    expect(left).toBeGreaterThan(0);
  });
});
