import { describe, expect, test } from 'vitest';
import {
  deviceOf,
  enter,
  isFresh,
  NOBODY,
  plainCode,
  type RegisterState,
  withChain,
  withCode,
  withDevice,
} from './register.ts';

const at = (iso: string): Date => new Date(iso);
const START = at('2026-05-01T08:00:00.000Z');
const CODE = '7K2M-9XQ0';
const coded = withCode(NOBODY, { code: CODE, role: 'mechanic', team: '', now: START });
const entering = { code: CODE, name: 'Phone', id: '0a1b2c3d', token: 'the token of the phone', now: START };

function paired(): RegisterState {
  const { state, give } = enter(coded, entering);
  expect(give).toMatchObject({ id: '0a1b2c3d', role: 'mechanic', chains: [] });
  return state;
}

describe('a code', () => {
  test('lets one device in, once, however it was typed', () => {
    for (const typed of ['7K2M-9XQ0', '7k2m9xq0', ' 7k2m 9xqo '])
      expect(enter(coded, { ...entering, code: typed }).give).toMatchObject({ role: 'mechanic' });
    expect(enter(paired(), { ...entering, id: 'ffffffff' }).give).toMatchObject({ code: 'not allowed' });
    expect(plainCode('il-O0')).toBe('1100');
  });

  test('counts for ten minutes, and a wrong one changes nothing', () => {
    const late = enter(coded, { ...entering, now: at('2026-05-01T08:10:00.000Z') });
    expect(late).toMatchObject({ state: coded, give: { code: 'not allowed' } });
    expect(enter(coded, { ...entering, now: at('2026-05-01T08:09:59.999Z') }).give).toMatchObject({ id: '0a1b2c3d' });
    const wrong = enter(coded, { ...entering, code: '7K2M-9XQ1' });
    expect(wrong.state).toBe(coded);
    const other = enter(NOBODY, entering);
    expect(other.give).toEqual(wrong.give); // it does not say whether there was ever such a code
  });

  test('made again and again leaves no heap of old ones', () => {
    let state = NOBODY;
    for (let n = 0; n < 200; n++) state = withCode(state, { code: `A${n}`, role: 'driver', team: '', now: START });
    expect(state.codes.length).toBeLessThanOrEqual(21);
  });
});

describe('a token', () => {
  const known = (now: string, state = paired()) => deviceOf(state, 'the token of the phone', at(now));

  test('is its device’s until it is revoked', () => {
    expect(known('2026-05-01T09:00:00.000Z')?.name).toBe('Phone');
    expect(deviceOf(paired(), 'another token', START)).toBeUndefined();
    const out = withDevice(paired(), '0a1b2c3d', one => ({ ...one, revoked: START.toISOString() }));
    expect(known('2026-05-01T09:00:00.000Z', out)).toBeUndefined();
  });

  test('is worth nothing after three months without a visit, nor after 400 days with them', () => {
    expect(known('2026-07-30T08:00:00.000Z')).toBeDefined(); // 90 days
    expect(known('2026-08-01T08:00:00.000Z')).toBeUndefined(); // 92
    const used = (day: string) => withDevice(paired(), '0a1b2c3d', one => ({ ...one, seen: day }));
    expect(known('2027-06-04T08:00:00.000Z', used('2027-06-01'))).toBeDefined(); // 399
    expect(known('2027-06-05T08:00:00.000Z', used('2027-06-01'))).toBeUndefined(); // 400
  });

  test('ends when its device comes in again, into its team or another; what it wrote is its own within the team only', () => {
    const wrote = withChain(paired(), '0a1b2c3d', { chain: 'phone-1', there: false }).state;
    for (const team of ['', 'red']) {
      const code = withCode(wrote, { code: 'BB', role: 'driver', team, now: START });
      const again = { ...entering, code: 'BB', id: '11111111', token: 'second', before: 'the token of the phone' };
      const { state, give } = enter(code, again);
      expect(known('2026-05-01T08:00:01.000Z', state)).toBeUndefined();
      expect(deviceOf(state, 'second', START)?.team).toBe(team);
      expect(give).toMatchObject({ chains: team === '' ? ['phone-1'] : [] });
      const strange = enter(code, { ...again, before: 'of nobody' }).state;
      expect(known('2026-05-01T08:00:01.000Z', strange)).toBeDefined();
    }
  });

  test('was shown just now for a quarter of an hour', () => {
    const [one] = paired().devices;
    const asked = ['2026-05-01T08:14:59.999Z', '2026-05-01T08:15:00.000Z'].map(iso => one && isFresh(one, at(iso)));
    expect(asked).toEqual([true, false]);
  });

  test('stands nowhere in the register, nor does a code', () => {
    expect(JSON.stringify(paired())).not.toMatch(/the token|7K2M/);
  });
});

test('a chain belongs to the device that wrote into it first, and none that is in the book can be taken over', () => {
  const two = enter(withCode(paired(), { code: 'BB', role: 'driver', team: '', now: START }), {
    ...entering,
    code: 'BB',
    id: '11111111',
    token: 'second',
  }).state;
  const first = withChain(two, '0a1b2c3d', { chain: 'phone-1', there: false });
  expect(first.give).toBe(true);
  expect(withChain(first.state, '0a1b2c3d', { chain: 'phone-1', there: true }).give).toBe(true);
  expect(withChain(first.state, '11111111', { chain: 'phone-1', there: false }).give).toBe(false);
  expect(withChain(two, '11111111', { chain: 'laptop', there: true }).give).toBe(false);
  let many = two;
  for (let n = 0; n < 20; n++) many = withChain(many, '11111111', { chain: `c${n}`, there: false }).state;
  expect(withChain(many, '11111111', { chain: 'one too many', there: false }).give).toBe(false);
});
