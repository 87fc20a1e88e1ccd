import { describe, expect, it } from 'vitest';
import { facts, minute } from '../../test/random-kart.ts';
import { item, smallKart } from '../../test/small-kart.ts';
import { fold, type Payload } from '../book/index.ts';
import type { Item } from '../kart/index.ts';
import { makePlan } from './plan.ts';

const planOf = (items: readonly Item[], history: readonly Payload[] = []) =>
  makePlan(smallKart(...items), fold(facts(history)), { now: minute(1000) }).steps.filter(s => s.state !== 'done');

describe('the order of a plan', () => {
  const below = item('frame/below', [{ on: 'event' }], { posture: 'side', secondLook: true });
  const oil = item('frame/oil', [{ on: 'event' }], { action: 'replace', grade: 'reliability' });

  it('does on its side what is done on its side, second look too, and nothing else', () => {
    const steps = planOf([below, oil]);
    const keys = steps.map(s => s.key);
    const down = keys.indexOf('posture side');
    expect(keys.slice(down, down + 4)).toEqual([
      'posture side',
      'look frame/below',
      'second-look frame/below',
      'posture stand',
    ]);
    expect(keys.indexOf('replace frame/oil')).toBeGreaterThan(keys.indexOf('posture stand'));
  });
  it('brings a kart that was left on its side back on the stand before any other work, which waits for that', () => {
    const steps = planOf([oil], [{ kind: 'put on', posture: 'side' }]);
    expect(steps[0]).toMatchObject({ key: 'posture stand', state: 'ready' });
    expect(steps.slice(1).every(s => s.state === 'waiting')).toBe(true);
  });
  it('does what opens a joint with the part of that joint on: brakes are bled with the calipers on', () => {
    const bleed = item('frame/bleed', [{ on: 'event' }], { action: 'replace', opens: ['hub/bolts'] });
    const keys = planOf(
      [bleed],
      [
        { kind: 'taken off', part: 'wheel' },
        { kind: 'taken off', part: 'hub' },
      ],
    ).map(s => s.key);
    const order = ['refit hub', 'replace frame/bleed', 'torque hub/bolts', 'refit wheel'].map(k => keys.indexOf(k));
    expect(order.every(i => i >= 0)).toBe(true);
    expect([...order].sort((a, b) => a - b)).toEqual(order);
  });
  it('tries what a job disturbs once the joints it opened are made: a firm foot after the bleed screws', () => {
    const bleed = item('frame/bleed', [{ on: 'event' }], {
      action: 'replace',
      opens: ['hub/bolts'],
      disturbs: ['frame/a firm foot'],
    });
    const foot = item('frame/a firm foot', [{ on: 'event' }], { action: 'function-test' });
    const keys = planOf([foot, bleed]).map(s => s.key);
    expect(keys.indexOf('function-test frame/a firm foot')).toBeGreaterThan(keys.indexOf('torque hub/bolts'));
  });
  it('asks for second looks in another order than the first ones: one person walks round the other way', () => {
    const looks = ['a', 'b', 'c', 'd', 'e'].map(name => item(`frame/${name}`, [{ on: 'event' }], { secondLook: true }));
    const asked = (people: number, action: string) =>
      makePlan(smallKart(...looks), fold([]), { now: minute(1000), people })
        .steps.filter(s => s.action === action && s.part === 'frame')
        .map(s => s.item);
    expect(asked(1, 'second-look')).toEqual(asked(1, 'look').toReversed());
    expect(asked(2, 'second-look').toSorted()).toEqual(asked(2, 'look').toSorted());
    expect(asked(2, 'second-look')).not.toEqual(asked(2, 'look'));
  });
  it('fills the whole kart before it tries it: fuel before the engine is warmed', () => {
    const fuel = item('frame/fuel', [{ on: 'event' }], { action: 'replace', grade: 'reliability', complete: true });
    const warm = item('frame/warm', [{ on: 'event' }], { action: 'function-test', complete: true });
    const keys = planOf([warm, fuel]).map(s => s.key);
    expect(keys.indexOf('function-test frame/warm')).toBeGreaterThan(keys.indexOf('replace frame/fuel'));
  });
});
