import { expect, test } from 'vitest';
import { demoText, kartReader, libraryFiles } from '../../host/index.ts';
import type { SinglePoint } from '../../risk/index.ts';
import { placeOf } from '../drawing/geometry.ts';
import { mapOf } from './map.ts';

const read = await kartReader(libraryFiles()).read(demoText().kart);
if (!read.ok) throw new Error(read.problems.map(p => p.message).join('\n'));
const { kart } = read;

const point = (part: string, sort: SinglePoint['sort']): SinglePoint => {
  const { corner, place, system } = kart.parts[part] ?? {};
  return {
    id: `${part} ${sort}`,
    sort,
    part,
    corner: corner ?? 'whole',
    ...(place && { place }),
    ...(system && { system }),
    says: part,
    likely: null,
    unknown: null,
    sentence: part,
    couldAdd: [],
  };
};

test('a link stands where its part is drawn, near ones under one number, and the one that can be helped gives the shape', () => {
  const marks = mapOf(kart, [
    point('rear hub left', 'part'),
    point('rear hub left', 'joint'),
    point('rear wheel left', 'one hand'),
    point('steering wheel', 'shared'),
  ]);
  expect(marks).toHaveLength(2);
  const [wheel, hub] = marks;
  expect(hub?.lines).toHaveLength(3);
  expect(hub?.kind).toBe('retention');
  expect(wheel?.kind).toBe('together');
  const part = kart.parts['rear hub left'];
  expect(hub?.at).toEqual(part && placeOf(part));
});
