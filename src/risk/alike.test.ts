import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { facts, minute } from '../../test/random-kart.ts';
import { item, smallKart } from '../../test/small-kart.ts';
import { fold, type Payload } from '../book/index.ts';
import type { Joint, Kart, Part } from '../kart/index.ts';
import { alikeOf } from './alike.ts';
import { readRetentions } from './retentions/index.ts';

const retentions = readRetentions(readFileSync(new URL('../../data/retentions.yaml', import.meta.url), 'utf8'));

/** A kart with two hubs of one kind, bolted alike, and a seat whose stay is held by the same sort of nut. */
function kart(name: string): Kart {
  const small = smallKart(
    item('hub/face', []),
    item('hub/torque paint', [], { action: 'clean' }),
    item('hub/bolts look', [], { joint: 'hub/bolts' }),
    item('hub two/face', [], { action: 'measure' }),
    item('hub two/turn', [], { action: 'function-test' }),
  );
  const hub: Part = { ...(small.parts.hub as Part), kind: 'hub' };
  const bolts: Joint = { ...(small.joints['hub/bolts'] as Joint), retention: 'split pin' };
  const joint = (part: string, own: Partial<Joint>): Joint => ({
    ...bolts,
    id: `${part}/bolts`,
    part,
    item: `${part}/bolts`,
    ...own,
  });
  return {
    ...small,
    name,
    parts: {
      ...small.parts,
      hub,
      'hub two': { ...hub, id: 'hub two', corner: 'rear right', joints: ['hub two/bolts'] },
      seat: { ...hub, id: 'seat', kind: 'seat', joints: ['seat/bolts'] },
      tank: { ...hub, id: 'tank', kind: 'tank', joints: ['tank/bolts'] },
    },
    joints: {
      'tank/bolts': joint('tank', { retention: 'nothing known', second: 'split pin beside it' }),
      'seat/bolts': joint('seat', { retention: 'thread-locker', second: 'two split pins' }),
      'hub two/bolts': joint('hub two', { retention: 'split pins' }),
      'hub/bolts': bolts,
      'frame/stay': joint('frame', { id: 'frame/stay', retention: 'thread-locker' }),
    },
  };
}
const now = (name: string, ...said: Payload[]) => ({ kart: kart(name), state: fold(facts(said)) });
const pass = (what: string, secondLook = false): Payload => ({
  kind: 'checked',
  item: what,
  result: 'pass',
  secondLook,
});
const ids = (found: readonly { readonly kart: string; readonly part: string }[]) =>
  found.map(one => `${one.kart} ${one.part}`);

describe('what else of this kind', () => {
  it('leaves the one that failed out, and no other of its name', () => {
    const found = alikeOf([now('41'), now('42')], { kart: '41', part: 'hub' }, retentions);
    expect(found).toMatchObject({ of: { kart: '41', part: 'hub' }, kind: 'hub', retention: null, joints: [] });
    expect(ids(found.parts)).toEqual(['41 hub two', '42 hub', '42 hub two']);
  });

  it('says where a part is, how long it ran, and what a look at it passes', () => {
    const run = now('41', { kind: 'ran', minutes: 90 }, { kind: 'taken off', part: 'hub two' }, pass('hub two/turn'));
    const [first, second] = [...alikeOf([run, now('42')], { kart: '42', part: 'hub two' }, retentions).parts].reverse();
    expect(first).toEqual({
      kart: '41',
      part: 'hub two',
      corner: 'rear right',
      on: false,
      hours: 1.5,
      lastLook: { at: minute(2), by: 'A. Tester' },
      items: ['hub two/face', 'hub two/turn'],
    });
    expect(second).toMatchObject({ on: true, hours: 0, items: ['hub/track', 'hub/face'], lastLook: null });
  });

  it('puts what was never looked at first, then what was looked at longest ago, whichever item was looked at last', () => {
    const early = now('41', pass('hub two/face'), pass('hub two/turn'));
    const late = now(
      '42',
      { kind: 'note', text: 'x' },
      pass('hub two/turn'),
      pass('hub two/turn', true),
      pass('hub two/face'),
    );
    const { parts } = alikeOf([late, early], { kart: '41', part: 'hub' }, retentions);
    expect(ids(parts)).toEqual(['42 hub', '41 hub two', '42 hub two']);
    expect(parts.map(({ lastLook }) => lastLook?.at)).toEqual([undefined, minute(1), minute(3)]);
    const looked = now('43', pass('hub two/turn'), { ...pass('hub two/turn', true) });
    const again = alikeOf([looked], { kart: '43', part: 'hub' }, retentions).parts[0];
    expect(again?.lastLook?.at).toBe(minute(1)); // a second look is a look
  });

  it('finds joints held alike whatever they are called, as first or as second, twins first', () => {
    const found = alikeOf(
      [now('41', pass('seat/bolts')), now('42')],
      { kart: '41', part: 'hub', joint: 'hub/bolts' },
      retentions,
    );
    expect(found.retention).toBe('split pin');
    expect(found.joints.map(one => `${one.kart} ${one.joint}: ${one.retention}${one.twin ? ', twin' : ''}`)).toEqual([
      '41 hub two/bolts: split pins, twin',
      '42 hub two/bolts: split pins, twin',
      '42 hub/bolts: split pin, twin',
      '41 tank/bolts: split pin beside it',
      '42 tank/bolts: split pin beside it',
      '42 seat/bolts: two split pins',
      '41 seat/bolts: two split pins',
    ]);
    expect(found.joints.at(-1)).toMatchObject({ items: ['seat/bolts'], lastLook: { at: minute(0) } });
  });

  it('reads a text by its place: "tether wire" as a first is wire like any other, as a second it is a tether', () => {
    const [of, other] = [now('41'), now('42')];
    const held = (one: typeof of, joints: Readonly<Record<string, Partial<Joint>>>): typeof of => ({
      ...one,
      kart: {
        ...one.kart,
        joints: Object.fromEntries(
          Object.entries(one.kart.joints).map(([id, joint]) => [id, { ...joint, retention: 'glue', ...joints[id] }]),
        ),
      },
    });
    const failed = held(of, { 'hub/bolts': { retention: 'lock wire' } });
    const among = held(other, {
      'hub/bolts': { retention: 'tether wire' },
      'hub two/bolts': { retention: 'safety wire', name: 'inner bolts' },
      'seat/bolts': { second: 'tether wire' },
      'tank/bolts': { second: 'safety wire' },
    });
    const { joints } = alikeOf([failed, among], { kart: '41', part: 'hub', joint: 'hub/bolts' }, retentions);
    expect(joints.map(({ joint, twin }) => [joint, twin])).toEqual([
      ['hub/bolts', true],
      ['tank/bolts', false],
      ['hub two/bolts', false], // of the same kind, but another joint
    ]);
  });

  it('takes what the catalogue does not know for alike only where it is called the same', () => {
    const joints = (joint: string, part: string) =>
      alikeOf([now('41'), now('42')], { kart: '41', part, joint }, retentions).joints.map(
        one => `${one.kart} ${one.joint}`,
      );
    expect(joints('tank/bolts', 'tank')).toEqual(['42 tank/bolts']);
  });

  it.each([
    { kart: '43', part: 'hub' },
    { kart: '41', part: 'wing' },
    { kart: '41', part: 'hub', joint: 'hub/welds' },
  ])('is not asked of what is not there: %j', of => {
    expect(() => alikeOf([now('41')], of, retentions)).toThrow(
      `alikeOf: of must name a part and joint of a kart among them, got ${JSON.stringify(of)}`,
    );
  });
});
