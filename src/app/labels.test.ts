import { expect, test } from 'vitest';
import { smallKart } from '../../test/small-kart.ts';
import { boxesOf, labelsFor } from './labels.ts';

const small = smallKart();
const kart = { ...small, costs: { spares: { thing: { alike: true } } } };
const base = 'http://192.168.1.20:50271/?x=1#/kart';

test('each part has a label with its system and the address that opens it, whatever its name holds', () => {
  const labels = labelsFor(small, { base });
  expect(labels.map(({ name }) => name).sort()).toEqual(Object.keys(small.parts).sort());
  expect(labels.find(({ name }) => name === 'hub')).toEqual({
    what: 'part',
    name: 'hub',
    under: 'axle and hubs',
    kart: 'small',
    url: 'http://192.168.1.20:50271/#/part/small%2Fhub',
  });
});

test('spares that serve several parts alike have one box, left and right one each', () => {
  expect(boxesOf(kart)).toEqual([['thing', Object.keys(kart.parts)]]);
  expect(labelsFor(kart, { base, only: 'boxes' })).toMatchObject([
    { what: 'box', name: 'thing', under: 'for 3 parts' },
  ]);
  const apart = { ...kart, costs: { spares: { thing: { alike: false } } } };
  expect(boxesOf(apart)).toHaveLength(3);
  expect(boxesOf(small)).toEqual([]);
});

test('one system alone can be asked for', () => {
  expect(labelsFor(kart, { base, only: 'brakes' })).toEqual([]);
  expect(labelsFor(kart, { base, only: 'axle and hubs' })).toHaveLength(3);
});

test('an address that a phone cannot open is refused with an example', () => {
  for (const wrong of ['', 'my laptop', 'file:///kart.html', 'javascript:alert(1)'])
    expect(() => labelsFor(small, { base: wrong })).toThrow(/address at which a phone opens the page/);
});
