import { describe, expect, it } from 'vitest';
import { facts, minute } from '../../test/random-kart.ts';
import { item, smallKart } from '../../test/small-kart.ts';
import { fold, type Payload } from '../book/index.ts';
import type { Item, Lapse } from '../kart/index.ts';
import { type Horizon, standing } from './standing.ts';

const ran = (more: Partial<Extract<Payload, { kind: 'ran' }>> = {}): Payload => ({
  kind: 'ran',
  minutes: 30,
  laps: 20,
  event: 'one',
  ...more,
});
const pass = (id = 'frame/x'): Payload => ({ kind: 'checked', item: id, result: 'pass' });

const stands = (it: Item, history: readonly Payload[], horizon: Partial<Horizon> = {}) => {
  const kart = smallKart(it);
  return standing(kart, fold(facts(history)), it, { now: minute(1000), ...horizon });
};
const cause = (when: Lapse, history: readonly Payload[], horizon: Partial<Horizon> = {}) =>
  stands(item('frame/x', [when]), history, horizon).cause;

describe('an item lapses', () => {
  it('when nobody ever passed it: unknown does not hold', () => {
    expect(cause({ on: 'days', limit: 400 }, [])).toBe('never');
  });
  it('not while only running can show it and it has never run: a hot pressure', () => {
    const hot = item('frame/x', [{ on: 'after session' }]);
    expect(stands(hot, [])).toMatchObject({ holds: true, why: 'To be done once it has run.' });
    expect(stands(hot, [ran()]).cause).toBe('never');
    expect(stands(item('frame/x', [{ on: 'after session' }, { on: 'event' }]), []).cause).toBe('never');
  });
  it('when its part failed while it ran, until it is passed on the one put right; a joint that let go is open instead', () => {
    const frame = item('frame/x', [{ on: 'days', limit: 400 }]);
    const broke: Payload = { kind: 'failed', part: 'frame', how: 'tube cracked through' };
    const after = stands(frame, [pass(), ran(), broke]);
    expect(after).toMatchObject({ holds: false, cause: 'failed', facts: ['f2', 'f0'] });
    expect(after.why).toBe('Frame failed while it ran on 2026-01-01: tube cracked through.');
    const mended: Payload = { kind: 'mended', found: 'f2', how: 'welded by a welder' };
    expect(stands(frame, [pass(), ran(), broke, mended])).toMatchObject({
      cause: 'failed',
      why: expect.stringContaining('welded by a welder; not looked at again'),
    });
    expect(stands(frame, [pass(), ran(), broke, mended, pass()]).holds).toBe(true);
    const letGo: Payload = { kind: 'failed', part: 'hub', joint: 'hub/bolts', how: 'both nuts gone' };
    const bolts = smallKart().items['hub/bolts'] as Item;
    const madeAndSeen: Payload[] = [
      { kind: 'made', joint: 'hub/bolts' },
      { kind: 'checked', item: 'hub/bolts', result: 'pass', secondLook: true },
    ];
    expect(stands(bolts, madeAndSeen).holds).toBe(true);
    expect(stands(bolts, [...madeAndSeen, letGo]).cause).toBe('joint open');
  });
  it('replacing a part that failed is done once another one is on', () => {
    const renew = item('wheel/renew', [{ on: 'days', limit: 400 }], { action: 'replace', needsOff: [['wheel']] });
    const broke: Payload = { kind: 'failed', part: 'wheel', how: 'rim broken' };
    const another: Payload[] = [
      { kind: 'taken off', part: 'wheel' },
      { kind: 'fitted', part: 'wheel', fresh: true },
    ];
    expect(stands(renew, [pass('wheel/renew'), broke]).cause).toBe('failed');
    expect(stands(renew, [pass('wheel/renew'), broke, ...another]).holds).toBe(true);
  });
  it('when a look is asked for, until it is passed again', () => {
    const frame = item('frame/x', [{ on: 'days', limit: 400 }]);
    const asked: Payload = { kind: 'look asked', items: ['frame/x'], why: 'another frame cracked' };
    expect(stands(frame, [pass(), asked])).toMatchObject({
      holds: false,
      cause: 'asked',
      why: 'Asked for on 2026-01-01: another frame cracked.',
      facts: ['f1'],
    });
    expect(stands(frame, [pass(), asked, pass()]).holds).toBe(true);
    expect(stands(frame, [asked]).cause).toBe('asked');
  });
  it('after a blow in which something failed, as after one in a run', () => {
    const hit: Payload = {
      kind: 'failed',
      part: 'wheel',
      how: 'rim broken',
      impact: { corner: 'rear left', severity: 'hit' },
    };
    expect(cause({ on: 'impact' }, [pass(), hit])).toBe('impact');
    expect(cause({ on: 'impact' }, [pass(), hit, pass()])).toBeUndefined();
  });
  it('when a defect found at it was mended: the mend itself is checked', () => {
    const found: Payload = { kind: 'found', part: 'frame', item: 'frame/x', defect: 'nut gone', grade: 'safety' };
    const mended: Payload = { kind: 'mended', found: facts([pass(), found])[1]?.id ?? '', how: 'new nut' };
    expect(cause({ on: 'event' }, [pass(), found])).toBeUndefined(); // the defect itself stands against running
    expect(stands(item('frame/x', [{ on: 'event' }]), [pass(), found, mended])).toMatchObject({
      cause: 'disturbed',
      why: expect.stringContaining('"nut gone" was mended'),
    });
    expect(cause({ on: 'event' }, [pass(), found, mended, pass()])).toBeUndefined();
  });
  it('each event: a run at another event than the next since the pass, and not a run at this one', () => {
    expect(cause({ on: 'event' }, [pass(), ran()], { event: 'two' })).toBe('event');
    expect(cause({ on: 'event' }, [ran(), pass()], { event: 'two' })).toBeUndefined();
    expect(cause({ on: 'event' }, [pass(), ran({ event: 'two' })], { event: 'two' })).toBeUndefined();
  });
  it('each session: any run since the pass', () => {
    expect(cause({ on: 'session' }, [pass(), ran()], { event: 'one' })).toBe('session');
    expect(cause({ on: 'after session' }, [pass(), ran()], { event: 'one' })).toBe('after session');
    expect(cause({ on: 'session' }, [ran(), pass()], { event: 'one' })).toBeUndefined();
  });
  it('after the first run of an event, and not after its second', () => {
    expect(cause({ on: 'first run' }, [pass(), ran()])).toBe('first run');
    expect(cause({ on: 'first run' }, [ran(), pass(), ran()])).toBeUndefined();
    expect(cause({ on: 'first run' }, [ran(), pass(), ran({ event: 'two' })])).toBe('first run');
  });
  it('after the first run since its joint was made, in the middle of an event too', () => {
    const kart = smallKart();
    const bolts = { ...(kart.items['hub/bolts'] as Item), when: [{ on: 'first run' as const }] };
    const state = fold(facts([ran(), { kind: 'made', joint: 'hub/bolts' }, ran()]));
    expect(standing(kart, state, bolts, { now: minute(1000) }).cause).toBe('first run');
  });
  it('by run-hours, at the limit', () => {
    expect(cause({ on: 'hours', limit: 1 }, [pass(), ran()])).toBeUndefined();
    expect(cause({ on: 'hours', limit: 1 }, [pass(), ran(), ran()])).toBe('hours');
  });
  it('by laps and by days', () => {
    expect(cause({ on: 'laps', limit: 41 }, [pass(), ran(), ran()])).toBeUndefined();
    expect(cause({ on: 'laps', limit: 40 }, [pass(), ran(), ran()])).toBe('laps');
    expect(cause({ on: 'days', limit: 2 }, [pass()], { now: minute(2 * 1440) })).toBe('days');
    expect(cause({ on: 'days', limit: 2 }, [pass()], { now: minute(2 * 1440 - 1) })).toBeUndefined();
  });
  it('ahead of an event whose running would pass its limit, and says so', () => {
    const found = stands(item('frame/x', [{ on: 'hours', limit: 2 }]), [pass(), ran()], { event: 'two', minutes: 95 });
    expect(found).toMatchObject({ holds: false, ahead: true, cause: 'hours' });
    expect(found.why).toBe('0.5 h run; the 1.6 h to come would pass its 2 h.');
    expect(cause({ on: 'hours', limit: 2 }, [pass(), ran()], { minutes: 90 })).toBeUndefined(); // exactly at its limit when it ends
    expect(cause({ on: 'days', limit: 2 }, [pass()], { now: minute(1440), until: minute(3 * 1440) })).toBe('days');
  });
  it('is not asked for again before it has run, however long the event', () => {
    expect(cause({ on: 'hours', limit: 1 }, [ran(), pass()], { minutes: 600 })).toBeUndefined();
  });
  it('after a wet run, and after an impact', () => {
    expect(cause({ on: 'wet' }, [pass(), ran()])).toBeUndefined();
    expect(cause({ on: 'wet' }, [pass(), ran({ wet: true })])).toBe('wet');
    expect(cause({ on: 'impact' }, [pass(), ran({ impact: { corner: 'front left', severity: 'hit' } })])).toBe(
      'impact',
    );
  });
  it('after a knock only at its own corner, or where the item belongs to none', () => {
    const hub = item('hub/x', [{ on: 'impact' }]);
    const knock = (corner: 'front left' | 'rear left', severity: 'knock' | 'hit') =>
      stands(hub, [pass('hub/x'), ran({ impact: { corner, severity } })]).cause;
    expect(knock('front left', 'knock')).toBeUndefined();
    expect(knock('rear left', 'knock')).toBe('impact');
    expect(knock('front left', 'hit')).toBe('impact');
  });
  it('when its own part, or one that names it, was off or put back', () => {
    const own = item('wheel/x', [{ on: 'disturbed' }]);
    expect(stands(own, [pass('wheel/x'), { kind: 'taken off', part: 'wheel' }]).cause).toBe('disturbed');
    expect(
      stands(own, [pass('wheel/x'), { kind: 'taken off', part: 'wheel' }, { kind: 'fitted', part: 'wheel' }]).cause,
    ).toBe('disturbed');
    const kart = smallKart();
    const track = kart.items['hub/track'] as Item;
    const state = fold(facts([pass('hub/track'), { kind: 'taken off', part: 'hub' }, { kind: 'fitted', part: 'hub' }]));
    expect(standing(kart, state, track, { now: minute(1000) })).toMatchObject({
      cause: 'disturbed',
      why: 'Hub was put back on 2026-01-01; not checked since.',
    });
  });
  it('when another part was fitted, and starts its hours anew with what the part had run', () => {
    expect(
      stands(item('wheel/x', [{ on: 'fitted' }]), [pass('wheel/x'), { kind: 'fitted', part: 'wheel', fresh: true }])
        .cause,
    ).toBe('fitted');
    const worn = item('wheel/x', [{ on: 'hours', limit: 2 }]);
    const another = (carriedMinutes: number): Payload => ({
      kind: 'fitted',
      part: 'wheel',
      fresh: true,
      carriedMinutes,
    });
    expect(stands(worn, [ran(), ran(), ran(), ran(), another(0), ran()]).holds).toBe(true);
    expect(stands(worn, [another(90), ran()]).cause).toBe('hours');
  });
  it('when it failed, until it is passed; and when it could not be done', () => {
    expect(cause({ on: 'event' }, [pass(), { kind: 'checked', item: 'frame/x', result: 'fail', why: 'crack' }])).toBe(
      'failed',
    );
    expect(
      cause({ on: 'event' }, [{ kind: 'checked', item: 'frame/x', result: 'fail', why: 'crack' }, pass()]),
    ).toBeUndefined();
    expect(cause({ on: 'event' }, [{ kind: 'checked', item: 'frame/x', result: 'not possible', why: 'no dye' }])).toBe(
      'not possible',
    );
  });
  it('while its second look is missing, and holds once it is taken', () => {
    const killer = item('frame/x', [{ on: 'event' }], { secondLook: true });
    expect(stands(killer, [pass()]).cause).toBe('second look');
    expect(stands(killer, [pass(), { kind: 'checked', item: 'frame/x', result: 'pass', secondLook: true }]).holds).toBe(
      true,
    );
  });
});

describe('a joint', () => {
  const kart = smallKart();
  const bolts = kart.items['hub/bolts'] as Item;
  const causeAfter = (...history: Payload[]) =>
    standing(kart, fold(facts([{ kind: 'made', joint: 'hub/bolts' }, ...history])), bolts, { now: minute(1000) }).cause;
  it('is open once its part came off, was loosened, or was opened by a setting, until it is made', () => {
    expect(causeAfter({ kind: 'taken off', part: 'hub' }, { kind: 'fitted', part: 'hub' })).toBe('joint open');
    expect(causeAfter({ kind: 'loosened', joint: 'hub/bolts' })).toBe('joint open');
    expect(causeAfter({ kind: 'set', item: 'hub/track' })).toBe('joint open');
    expect(causeAfter({ kind: 'set', item: 'hub/track' }, { kind: 'made', joint: 'hub/bolts' })).toBe('second look');
  });
  it('is not opened by reading the dimension', () => {
    expect(causeAfter(pass('hub/track'))).toBe('second look');
  });
  it('is not made by looking at it', () => {
    expect(causeAfter({ kind: 'loosened', joint: 'hub/bolts' }, pass('hub/bolts'))).toBe('joint open');
  });
});
