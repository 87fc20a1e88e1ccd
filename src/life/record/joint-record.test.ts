import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { facts } from '../../../test/random-kart.ts';
import { smallKart } from '../../../test/small-kart.ts';
import type { Payload } from '../../book/index.ts';
import { jointRecords } from './joint-record.ts';

const kart = smallKart();
const BOLTS = 'hub/bolts';
const ran = (event: string): Payload => ({ kind: 'ran', minutes: 10, event });
const made: Payload = { kind: 'made', joint: BOLTS };
const look = (result: 'pass' | 'fail' | 'not possible', why?: string): Payload => ({
  kind: 'checked',
  item: BOLTS,
  result,
  ...(why ? { why } : {}),
});
const found = (grade: 'safety' | 'cosmetics' = 'safety'): Payload => ({
  kind: 'found',
  part: 'hub',
  item: BOLTS,
  defect: 'nut gone',
  grade,
});
const failed: Payload = { kind: 'failed', part: 'hub', joint: BOLTS, how: 'both nuts gone' };

const record = (...history: readonly Payload[]) => {
  const [one] = jointRecords([{ kart, facts: facts(history) }]);
  return { events: one?.all.events, letGo: one?.all.letGo.map(({ fact }) => fact), filed: one?.filed };
};

describe('the record of a joint', () => {
  it('counts the events that somebody looked at it after, and no others', () => {
    expect(record(made, ran('one'), ran('one'), ran('two'))).toMatchObject({ events: 0, letGo: [] });
    expect(record(made, ran('one'), ran('one'), ran('two'), look('pass'))).toMatchObject({ events: 2, letGo: [] });
    expect(record(made, ran('one'), look('not possible', 'dark'))).toMatchObject({ events: 0 });
  });
  it('counts an event once, however often it was looked at during it', () => {
    expect(record(made, ran('one'), look('pass'), ran('one'), look('pass'), ran('two'), look('pass'))).toMatchObject({
      events: 2,
    });
  });
  it('takes made again while it was made for a look, and leaves out what ran before it was opened by hand', () => {
    expect(record(made, ran('one'), made)).toMatchObject({ events: 1 });
    const opened: Payload = { kind: 'loosened', joint: BOLTS };
    expect(record(made, ran('one'), opened, made, ran('two'), look('pass'))).toMatchObject({ events: 1 });
    const off: Payload = { kind: 'taken off', part: 'hub' };
    expect(record(made, ran('one'), off, { kind: 'fitted', part: 'hub' }, made)).toMatchObject({ events: 0 });
    const set: Payload = { kind: 'set', item: 'hub/track' };
    expect(record(made, ran('one'), set, made)).toMatchObject({ events: 0 });
  });
  it('had let go when its check failed after it ran, when a defect was found at it, or it failed as it ran', () => {
    expect(record(made, ran('one'), look('fail', 'nut loose'))).toMatchObject({ events: 1, letGo: ['f2'] });
    expect(record(made, ran('one'), found())).toMatchObject({ events: 1, letGo: ['f2'] });
    expect(record(made, ran('one'), failed)).toMatchObject({ events: 1, letGo: ['f2'] });
    expect(record(made, failed)).toMatchObject({ events: 1, letGo: ['f1'] }); // the run is not written down yet
    expect(record(made, ran('one'), found('cosmetics'))).toMatchObject({ events: 0, letGo: [] });
  });
  it('lets go once, however often that is said, until it was made or passed', () => {
    expect(record(made, ran('one'), failed, found(), look('fail', 'gone'))).toMatchObject({ events: 1, letGo: ['f2'] });
    expect(record(made, ran('one'), failed, made, ran('two'), look('fail', 'gone'))).toMatchObject({
      events: 2,
      letGo: ['f2', 'f5'],
    });
  });
  it('a fail caught before it ran says nothing; one of a joint that nobody ever saw right counts', () => {
    expect(record(made, look('fail', 'not tight'))).toMatchObject({ events: 0, letGo: [] });
    expect(record(look('fail', 'loose'))).toMatchObject({ events: 1, letGo: ['f0'] });
  });
  it('a look that is asked for, a joint made without its second, and a struck fact say nothing', () => {
    const asked: Payload = { kind: 'look asked', items: [BOLTS], why: 'a strap wanted', second: 'strap' };
    const without: Payload = { kind: 'made', joint: BOLTS, second: 'not fitted' };
    expect(record(made, ran('one'), asked, without)).toMatchObject({ letGo: [] });
    const struck: Payload = { kind: 'struck', fact: 'f2', why: 'the other side' };
    expect(record(made, ran('one'), look('fail', 'loose'), struck, look('pass'))).toMatchObject({
      events: 1,
      letGo: [],
    });
  });
  it('begins anew for a second retention when a kart file is filed', () => {
    const file: Payload = { kind: 'kart filed', text: 'kart: 1' };
    expect(record(made, ran('one'), look('fail', 'loose'), made, file, ran('two'), look('pass'))).toMatchObject({
      events: 2,
      letGo: ['f2'],
      filed: { events: 1, letGo: [] },
    });
  });

  const payload = fc.constantFrom<Payload>(
    ran('one'),
    ran('two'),
    made,
    look('pass'),
    look('fail', 'loose'),
    found(),
    failed,
    { kind: 'loosened', joint: BOLTS },
    { kind: 'taken off', part: 'hub' },
    { kind: 'kart filed', text: 'x' },
  );
  test('never counts more events than there were runs and failures, nor fewer than it let go; more look-less running adds nothing', () => {
    fc.assert(
      fc.property(fc.array(payload, { maxLength: 30 }), history => {
        const { events = 0, letGo = [], filed } = record(...history);
        const most = history.filter(({ kind }) => kind === 'ran').length + letGo.length;
        expect(events).toBeLessThanOrEqual(most);
        expect(events).toBeGreaterThanOrEqual(letGo.length > 0 ? 1 : 0);
        expect(filed?.events ?? 0).toBeLessThanOrEqual(events);
        expect(record(...history, ran('three'))).toMatchObject({ events, letGo });
      }),
    );
  });
});
