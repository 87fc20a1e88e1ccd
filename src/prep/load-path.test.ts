import { describe, expect, it } from 'vitest';
import { facts, minute } from '../../test/random-kart.ts';
import { templateKarts } from '../../test/template-karts.ts';
import { fold, type Payload } from '../book/index.ts';
import type { Corner, Kart } from '../kart/index.ts';
import { dueList } from './due.ts';
import { placeOnPath } from './load-path.ts';
import { makePlan } from './plan.ts';

const [kart] = templateKarts() as [Kart];
/** Everything passed and made, then a blow. */
const hit = (corner: Corner, severity: 'knock' | 'crash') => {
  const done = Object.values(kart.items).flatMap((one): Payload[] => [
    one.joint === undefined ? { kind: 'checked', item: one.id, result: 'pass' } : { kind: 'made', joint: one.joint },
    { kind: 'checked', item: one.id, result: 'pass', secondLook: true },
  ]);
  return fold(facts([...done, { kind: 'ran', minutes: 8, impact: { corner, severity } }]));
};
const kindsOf = (parts: readonly string[]): readonly string[] => [
  ...new Set(parts.map(id => kart.parts[id]?.kind ?? '')),
];
const ways = {
  'rear left': ['rear wheel', 'split clamp hub', 'axle', 'axle bearing', 'frame'],
  'front right': [
    'front wheel',
    'front hub',
    'stub axle',
    'kingpin',
    'tie rod',
    'steering column',
    'steering hub',
    'steering wheel',
    'frame',
  ],
};

describe('after an impact', () => {
  it.each(['rear left', 'front right'] as const)(
    'at the %s what is due first is the way of the blow, from the wheel on',
    corner => {
      const due = dueList(kart, hit(corner, 'knock'), { now: minute(2000) });
      const onPath = due.filter(({ path }) => path !== undefined);
      const safety = onPath.filter(({ grade }) => grade === 'safety');
      expect(safety.length).toBeGreaterThan(4);
      expect(due.slice(0, safety.length)).toEqual(safety);
      const way = kindsOf(safety.map(({ part }) => part));
      expect(way).toEqual(ways[corner].filter(kind => way.includes(kind)));
      expect(way).toContain('frame');
      const corners = new Set(onPath.map(({ part }) => kart.parts[part]?.corner));
      expect([...corners].filter(one => one !== corner && one !== 'whole')).toEqual([]);
    },
  );

  it('a crash reaches the other side too, after the one that was hit', () => {
    const due = dueList(kart, hit('rear left', 'crash'), { now: minute(2000) }).filter(
      ({ path, grade }) => path !== undefined && grade === 'safety',
    );
    const places = due.map(({ path }) => path ?? 0);
    expect(places).toEqual([...places].sort((a, b) => a - b));
    expect(due.some(({ part }) => part === 'rear hub right')).toBe(true);
  });

  it('what can be looked at on the way comes in the plan before a part is taken off', () => {
    const steps = makePlan(kart, hit('front right', 'crash'), { now: minute(2000) }).steps.filter(
      ({ state }) => state !== 'done',
    );
    const looks = steps.filter(({ item }) => {
      const one = kart.items[item ?? ''];
      const part = one && placeOnPath(kart.parts[one.part], 'front right');
      return (
        one?.grade === 'safety' &&
        part !== undefined &&
        one.joint === undefined &&
        !one.complete &&
        one.needsOff.length === 0 &&
        one.when.some(({ on }) => on === 'impact')
      );
    });
    const off = steps.findIndex(({ action }) => action === 'take-off');
    const first = looks.filter(({ action }) => action !== 'second-look');
    expect(first.length).toBeGreaterThan(2);
    expect(off === -1 || first.every(({ n }) => n < (steps[off]?.n ?? 0))).toBe(true);
  });

  it('a part that no blow leads through has no place on the way', () => {
    expect(placeOnPath(kart.parts.silencer, 'rear left')).toBeUndefined();
    expect(placeOnPath(kart.parts['rear wheel left'], 'front left')).toBeUndefined();
    expect(placeOnPath(kart.parts['rear wheel left'], 'whole')).toBe(1);
    expect(placeOnPath(undefined, 'rear left')).toBeUndefined();
  });
});
