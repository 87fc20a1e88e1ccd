import { describe, expect, test } from 'vitest';
import type { Kart, Need } from '../src/kart/index.ts';
import { templateKarts } from '../test/template-karts.ts';

const karts = templateKarts();
const partsOf = (need: Need): readonly string[] => {
  if ('part' in need) return [need.part];
  return ('allOf' in need ? need.allOf : 'anyOf' in need ? need.anyOf : need.of).flatMap(partsOf);
};
const needing = (kart: Kart, part: string): readonly string[] =>
  Object.values(kart.functions)
    .filter(({ needs }) => partsOf(needs).includes(part))
    .map(({ name }) => name);

describe('the functions of every template', () => {
  test('are all that can hurt or stop, each with what there is without it', () => {
    const severity = {
      stop: 1,
      steer: 1,
      'keep each wheel': 1,
      'close the throttle': 1,
      'hold the fuel': 1,
      'cut the engine': 2,
      'hold the driver': 2,
      'hold the ballast': 2,
      'guard the chain': 2,
      'breathe clean air': 3,
      'keep running': 4,
    };
    for (const { functions } of karts) {
      expect(Object.fromEntries(Object.values(functions).map(one => [one.name, one.severity]))).toEqual(severity);
      expect(Object.values(functions).filter(({ hazard }) => hazard === undefined)).toEqual([]);
    }
  });

  test('and its parts say the same of which part carries what', () => {
    const apart = karts.flatMap(kart =>
      Object.values(kart.parts).filter(
        ({ id, carries }) => [...carries].sort().join() !== [...needing(kart, id)].sort().join(),
      ),
    );
    expect(apart.map(({ id }) => id)).toEqual([]);
  });

  test('leave out only what takes blows, protects, watches or tunes: nothing hangs on it', () => {
    const free = [
      'front bumper',
      'front fairing',
      'front panel',
      'side box',
      'side bumper',
      'rear guard',
      'disc guard pad',
      'helmet',
      'driver clothing',
      'body protection',
      'paddock kit',
      'data logger',
      'torsion bar',
      'starter motor and button',
      'battery',
    ];
    const left = karts.flatMap(kart => Object.values(kart.parts).filter(({ id }) => needing(kart, id).length === 0));
    expect(left.length).toBeGreaterThan(20);
    expect([...new Set(left.map(({ kind }) => kind))].filter(kind => !free.includes(kind))).toEqual([]);
  });

  test('are named by every joint that is lost to some of them only', () => {
    const joints = karts.flatMap(kart =>
      Object.values(kart.joints).flatMap(({ id, part, carries = [] }) =>
        carries.map(name => ({ id, name, has: kart.parts[part]?.carries.includes(name) })),
      ),
    );
    expect(joints.length).toBeGreaterThan(10);
    expect(joints.filter(({ has }) => !has)).toEqual([]);
  });

  test('are held against the way of a blow: wheel, hub, axle or stub, and on into the frame', () => {
    const way = (kart: Kart, end: 'front' | 'rear') => [
      ...new Set(
        Object.values(kart.parts)
          .filter(({ loadPath }) => loadPath?.[end] !== undefined)
          .sort((a, b) => (a.loadPath?.[end] ?? 0) - (b.loadPath?.[end] ?? 0))
          .map(({ kind }) => kind),
      ),
    ];
    for (const kart of karts) {
      expect(way(kart, 'rear')).toEqual(['rear wheel', 'split clamp hub', 'axle', 'axle bearing', 'frame']);
      expect(way(kart, 'front')).toEqual([
        'front wheel',
        'front hub',
        'stub axle',
        'kingpin',
        'tie rod',
        'steering column',
        'steering hub',
        'steering wheel',
        'frame',
      ]);
    }
  });
});
