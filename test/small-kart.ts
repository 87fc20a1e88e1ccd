/** A kart of three parts, for tests that name one rule each: a hub behind its wheel, and a frame. */
import type { Item, Kart, Lapse, Part } from '../src/kart/index.ts';

const free = { minutes: 2, posture: 'any' as const, tools: [] };

const part = (id: string, more: Partial<Part>): Part => ({
  id,
  system: 'axle and hubs',
  kind: 'thing',
  removable: true,
  behind: [],
  takeOff: free,
  refit: free,
  joints: [],
  disturbs: [],
  fits: {},
  carries: [],
  corner: 'rear left',
  place: { x: 0, y: 0 },
  ...more,
});

export const item = (id: string, when: readonly Lapse[], more: Partial<Item> = {}): Item => ({
  id,
  key: id.split('/')[1] ?? id,
  part: id.split('/')[0] ?? id,
  system: 'axle and hubs',
  title: id.split('/')[1] ?? id,
  action: 'look',
  how: 'look',
  accept: 'no crack',
  source: 'common practice',
  grade: 'safety',
  when,
  minutes: 2,
  posture: 'any',
  needsOff: [],
  complete: false,
  disturbs: [],
  opens: [],
  secondLook: false,
  tools: [],
  consumables: [],
  ...more,
});

export const smallKart = (...items: readonly Item[]): Kart => {
  const bolts = item('hub/bolts', [{ on: 'disturbed' }], { joint: 'hub/bolts', action: 'torque', secondLook: true });
  const track = item('hub/track', [{ on: 'disturbed' }], { action: 'measure', opens: ['hub/bolts'] });
  const all = [bolts, track, ...items];
  return {
    format: 1,
    name: 'small',
    invented: true,
    dimensions: {},
    parts: {
      frame: part('frame', { removable: false, corner: 'whole' }),
      wheel: part('wheel', {}),
      hub: part('hub', { behind: [['wheel']], joints: ['hub/bolts'], disturbs: ['hub/track'] }),
    },
    joints: {
      'hub/bolts': {
        id: 'hub/bolts',
        part: 'hub',
        name: 'bolts',
        kind: 'bolt',
        count: 2,
        retention: 'nut',
        item: 'hub/bolts',
      },
    },
    items: Object.fromEntries(all.map(i => [i.id, i])),
    functions: {},
  };
};
