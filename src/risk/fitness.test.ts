import { describe, expect, it } from 'vitest';
import { facts, minute } from '../../test/random-kart.ts';
import { item, smallKart } from '../../test/small-kart.ts';
import { fold, type Payload } from '../book/index.ts';
import { fitness } from './fitness.ts';

const kart = smallKart(
  item('frame/welds', [{ on: 'hours', limit: 1 }]),
  item('frame/paint', [{ on: 'session' }], { grade: 'cosmetics' }),
);
const all: Payload[] = [
  { kind: 'made', joint: 'hub/bolts' },
  { kind: 'checked', item: 'hub/bolts', result: 'pass', secondLook: true },
  { kind: 'checked', item: 'hub/track', result: 'pass' },
  { kind: 'checked', item: 'frame/welds', result: 'pass' },
  { kind: 'checked', item: 'frame/paint', result: 'pass' },
];
const judged = (...more: Payload[]) => fitness(kart, fold(facts([...all, ...more])), { now: minute(1000) });

describe('fitness', () => {
  it('is fit when nothing in the record stands against running', () => {
    expect(judged()).toMatchObject({ verdict: 'fit', against: [], unknown: [], open: [] });
  });
  it('is not known for a kart nobody has written anything about', () => {
    const found = fitness(kart, fold([]), { now: minute(0) });
    expect(found.verdict).toBe('not known');
    expect(found.unknown.length).toBe(3);
  });
  it('is not fit with a part off, and says which', () => {
    const found = judged({ kind: 'taken off', part: 'wheel' });
    expect(found.verdict).toBe('not fit');
    expect(found.against[0]?.text).toBe('wheel is off the kart.');
  });
  it('is not fit with a joint open, a safety item lapsed or failed, or a second look missing', () => {
    expect(judged({ kind: 'loosened', joint: 'hub/bolts' }).verdict).toBe('not fit');
    expect(judged({ kind: 'ran', minutes: 60 }).verdict).toBe('not fit');
    expect(judged({ kind: 'checked', item: 'frame/welds', result: 'fail', why: 'crack at the waist' }).verdict).toBe(
      'not fit',
    );
    expect(judged({ kind: 'made', joint: 'hub/bolts' }).verdict).toBe('not fit');
  });
  it('is not fit with an open safety defect, and fit again once it is mended', () => {
    const found: Payload = { kind: 'found', part: 'frame', defect: 'crack', grade: 'safety' };
    expect(judged(found).verdict).toBe('not fit');
    expect(judged(found, { kind: 'mended', found: 'f5', how: 'replaced' }).verdict).toBe('fit');
  });
  it('is not fit after a part failed or a joint let go, until another one is fitted or it is made again', () => {
    const broke: Payload = { kind: 'failed', part: 'frame', how: 'broke at the waist' };
    expect(judged(broke)).toMatchObject({ verdict: 'not fit', against: [{ what: 'defect', on: 'frame' }, {}] });
    const look: Payload = { kind: 'checked', item: 'frame/welds', result: 'pass' };
    expect(judged(broke, look).verdict).toBe('not fit'); // a look mends nothing
    expect(judged(broke, { kind: 'fitted', part: 'frame', fresh: true }, look).verdict).toBe('fit');
    const letGo: Payload = { kind: 'failed', part: 'hub', joint: 'hub/bolts', how: 'both nuts gone' };
    expect(judged(letGo).against.map(({ what, on }) => [what, on])).toEqual([['joint open', 'hub/bolts']]);
  });
  it('is not fit while a look that somebody asked for at a safety item is not taken', () => {
    const asked: Payload = { kind: 'look asked', items: ['frame/welds'], why: 'another frame broke' };
    expect(judged(asked).verdict).toBe('not fit');
    expect(judged(asked, { kind: 'checked', item: 'frame/welds', result: 'pass' }).verdict).toBe('fit');
  });
  it('lists what is due below safety without holding it against running', () => {
    const found = judged({ kind: 'ran', minutes: 10 });
    expect(found.verdict).toBe('fit');
    expect(found.open.map(o => o.on)).toEqual(['frame/paint']);
  });
  it('is not known when a safety item could not be looked at; not fit outweighs not known', () => {
    const not: Payload = { kind: 'checked', item: 'frame/welds', result: 'not possible', why: 'no light' };
    expect(judged(not).verdict).toBe('not known');
    expect(judged(not, { kind: 'taken off', part: 'wheel' }).verdict).toBe('not fit');
  });
  it('says of each reason what it is, where, how grave, in words, and from which fact', () => {
    const reasons = judged(
      { kind: 'taken off', part: 'wheel' },
      { kind: 'loosened', joint: 'hub/bolts' },
      { kind: 'found', part: 'frame', item: 'frame/welds', defect: 'crack', grade: 'safety' },
      { kind: 'checked', item: 'hub/track', result: 'fail', why: 'too wide' },
    ).against;
    expect(reasons).toEqual([
      { what: 'part off', on: 'wheel', grade: 'safety', text: 'wheel is off the kart.', facts: ['f5'] },
      {
        what: 'joint open',
        on: 'hub/bolts',
        grade: 'safety',
        text: 'hub: bolts opened and not made since.',
        facts: ['f6'],
      },
      { what: 'defect', on: 'frame/welds', grade: 'safety', text: 'frame: crack', facts: ['f7'] },
      {
        what: 'item',
        on: 'hub/track',
        grade: 'safety',
        text: expect.stringMatching(/^track \(hub\): Failed on .*too wide/),
        facts: ['f8'],
      },
    ]);
  });
  it('holds a part that went back on against nothing, nor a defect below safety, which is listed before what is less grave', () => {
    expect(judged({ kind: 'taken off', part: 'wheel' }, { kind: 'fitted', part: 'wheel' }).against).toEqual([]);
    const { verdict, open } = judged(
      { kind: 'ran', minutes: 10 },
      { kind: 'found', part: 'hub', defect: 'rattles', grade: 'performance' },
      { kind: 'found', part: 'frame', defect: 'runs hot', grade: 'reliability' },
    );
    expect(verdict).toBe('fit');
    expect(open.map(({ on, grade }) => [on, grade])).toEqual([
      ['frame', 'reliability'],
      ['hub', 'performance'],
      ['frame/paint', 'cosmetics'],
    ]);
  });
  it('counts what lapses during the event it would run at', () => {
    const before: Payload = { kind: 'ran', minutes: 10 };
    const at = (minutes: number) => {
      const event: Payload = { kind: 'event', event: 'Round 1', from: minute(900), until: minute(990), minutes };
      const state = fold(facts([...all, before, event]));
      return fitness(kart, state, {
        now: minute(800),
        ...(state.events['Round 1'] && { event: state.events['Round 1'] }),
      });
    };
    expect(at(50)).toMatchObject({ verdict: 'fit', kart: 'small' });
    expect(at(51)).toMatchObject({ verdict: 'not fit', against: [{ on: 'frame/welds' }] });
  });
});
