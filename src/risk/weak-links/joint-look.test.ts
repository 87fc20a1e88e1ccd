import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { facts, minute } from '../../../test/random-kart.ts';
import { smallKart } from '../../../test/small-kart.ts';
import { fold, type Payload } from '../../book/index.ts';
import type { Joint } from '../../kart/index.ts';
import { readRetentions } from '../retentions/index.ts';
import { lookAt } from './joint-look.ts';
import { retentionRecord } from './retention-record.ts';

const retentions = readRetentions(readFileSync(new URL('../../../data/retentions.yaml', import.meta.url), 'utf8'));
const record = retentionRecord([], retentions);
const kart = smallKart();
const BOLTS = 'hub/bolts';
const joint = (retention: string, second?: string): Joint => ({
  ...(kart.joints[BOLTS] as Joint),
  retention,
  ...(second === undefined ? {} : { second }),
});
const at = { now: minute(100), retentions, record };
const look = (of: Joint, ...said: Payload[]) => lookAt({ ...kart, joints: { [BOLTS]: of } }, fold(facts(said)), of, at);
const made: Payload = { kind: 'made', joint: BOLTS };
const looked: Payload = { kind: 'checked', item: BOLTS, result: 'pass', secondLook: true };
const retention = (name: string) => retentions.retentions.find(one => one.name === name);

describe('how a joint is held', () => {
  it('has the number of what it is held by, and none where nobody guessed one', () => {
    const { first, ...rest } = look(joint('split pin'));
    expect(first).toMatchObject({ text: 'split pin', unknown: null, own: false });
    expect(first.likely?.chance).toBe(retention('split pin')?.chance.first);
    expect(rest).toMatchObject({ second: undefined, notCounted: undefined, inWork: false });
    expect(look(joint('good will')).first).toEqual({
      text: 'good will',
      likely: null,
      unknown: 'Nobody guessed how often "good will" lets go.',
      own: false,
    });
  });

  it.each([
    ['witness mark', 'witness mark: it shows that something moved, and holds nothing'],
    ['wire where drilled', 'wire where drilled: nobody said whether this kart has it'],
    ['good will', 'good will: not known as something that holds a joint'],
  ])('does not count %s for a second, and says why', (second, notCounted) => {
    expect(look(joint('split pin', second))).toMatchObject({ second: undefined, notCounted, inWork: false });
  });

  it('has no number while it is open, and its second does not count', () => {
    const open = `open since ${minute(1).slice(0, 10)}, not made`;
    expect(look(joint('split pin', 'tether'), made, { kind: 'loosened', joint: BOLTS })).toMatchObject({
      first: { text: 'split pin', likely: null, unknown: open },
      second: undefined,
      notCounted: `tether: ${open}`,
      inWork: true,
    });
  });

  it('has no number while a fail is not answered, or while it could not be looked at', () => {
    const failed = look(joint('split pin'), made, { kind: 'checked', item: BOLTS, result: 'fail', why: 'bent' });
    expect(failed).toMatchObject({
      inWork: true,
      first: { likely: null, unknown: expect.stringMatching(/^Failed on .*bent$/) },
    });
    const dark = look(joint('split pin'), made, {
      kind: 'checked',
      item: BOLTS,
      result: 'not possible',
      why: 'no light',
    });
    expect(dark).toMatchObject({ inWork: true, first: { likely: null, unknown: expect.stringContaining('no light') } });
    expect(look(joint('split pin'), { kind: 'checked', item: BOLTS, result: 'fail' }, made).inWork).toBe(false);
  });

  it('is in work once it is to have a second retention, but not for a look alone', () => {
    const asked = (more: object): Payload => ({ kind: 'look asked', items: [BOLTS], why: 'one let go', ...more });
    expect(look(joint('split pin'), made, asked({ second: 'tether' }))).toMatchObject({
      inWork: true,
      first: { likely: null, unknown: expect.stringMatching(/[^.]$/) },
    });
    expect(look(joint('split pin'), made, asked({}))).toMatchObject({ inWork: false, first: { unknown: null } });
    expect(look(joint('split pin', 'tether'), asked({ second: 'tether' }), made).inWork).toBe(false); // it has it now
  });

  it('says why in the words of the record, without its last stop', () => {
    const why = 'bent. At the tip';
    const asked: Payload = { kind: 'look asked', items: [BOLTS], why, second: 'tether' };
    const day = minute(0).slice(0, 10);
    expect(look(joint('split pin'), made, asked).first.unknown).toBe(`Asked for on ${day}: ${why}`);
    const failed: Payload = { kind: 'checked', item: BOLTS, result: 'fail', why };
    expect(look(joint('split pin'), made, failed).first.unknown).toBe(`Failed on ${day}: ${why}`);
  });
});

describe('a second retention', () => {
  it('may be gone until somebody looks, as far as that is guessed', () => {
    const never = look(joint('split pin', 'tether')).second;
    const once = look(joint('split pin', 'tether'), made, looked).second;
    const [q, gone] = [retention('tether')?.chance.second ?? Number.NaN, retentions.unverified.gone];
    const factor = retentions['trusted to a factor of'];
    expect(once).toMatchObject({
      text: 'tether',
      latent: false,
      likely: { chance: q },
      looked: 'looked at twice at once, by one person',
    });
    expect(never).toMatchObject({ latent: true, looked: 'not looked at since' });
    const latent = (g: number, p: number) => 1 - (1 - g) * (1 - p); // gone already, or lets go
    expect(never?.likely?.chance).toBeCloseTo(latent(gone, q), 12);
    expect(never?.likely?.low).toBeCloseTo(latent(gone / factor, q / factor), 12);
    expect(never?.likely?.high).toBeCloseTo(latent(Math.min(1, gone * factor), q * factor), 12);
    expect(never?.likely?.basis).toMatch(/Nobody has looked whether it is there\.$/);
    expect(once?.likely?.basis).not.toMatch(/Nobody has looked/);
  });

  it('is named as the kart file names it', () => {
    expect(look(joint('split pin', 'wire tether'), made, looked).second?.text).toBe('wire tether');
  });

  it('has in common with its first what one look leaves, worked by hand: half and a little of the less likely', () => {
    // high dependence (1 + p) / 2, NUREG/CR-1278 table 20-17 (memory): p is the pin's 0.002, the tether's is 0.03
    expect(look(joint('split pin', 'tether'), made, looked).second?.share).toBeCloseTo((1 + 0.002) / 2, 15);
    // an R-clip's first is 0.004: then a lock tab, 0.01, is still the likelier one
    expect(look(joint('R-clip', 'lock tab'), made, looked).second?.share).toBeCloseTo((1 + 0.004) / 2, 15);
    // and with a first that nobody guessed, the second's own
    expect(look(joint('good will', 'tether'), made, looked).second?.share).toBeCloseTo((1 + 0.03) / 2, 15);
  });

  it('shares more with a first that works the same way', () => {
    const shares = ['thread-locker', 'split pin'].map(first =>
      ['thread-locker', 'tether'].map(second => look(joint(first, second), made, looked).second?.share ?? 0),
    );
    const alike = retention('thread-locker');
    if (alike?.chance.second !== undefined) expect(shares[0]?.[0]).toBeGreaterThan(shares[1]?.[0] ?? 1);
    expect(shares[1]?.[1]).toBeGreaterThan(0);
  });
});
