import { expect, test } from 'vitest';
import { item, smallKart } from '../../../test/small-kart.ts';
import type { Part } from '../../kart/index.ts';
import { afterSession, coldSet } from './facts.ts';

const kart = (() => {
  const small = smallKart(item('rear wheel left/hot pressure', [{ on: 'after session' }], { action: 'measure' }));
  const [pattern] = Object.values(small.parts) as [Part];
  const wheel: Part = { ...pattern, id: 'rear wheel left', corner: 'rear left' };
  return { ...small, parts: { ...small.parts, [wheel.id]: wheel } };
})();

test('what is said after a session is a run and then what was read after it, so that it belongs to that run', () => {
  const treads = { 'rear left': { inside: 62, middle: 66, outside: 60 } };
  const drafts = afterSession(kart, {
    ran: { minutes: 12, laps: 10 },
    hot: { 'rear left': '0.79 bar' },
    treads,
    plug: 'right',
    litres: 3.1,
  });
  expect(drafts).toEqual([
    { kind: 'ran', minutes: 12, laps: 10 },
    { kind: 'checked', item: 'rear wheel left/hot pressure', result: 'pass', reading: '0.79 bar' },
    { kind: 'treads probed', celsius: treads },
    { kind: 'plug read', says: 'right' },
    { kind: 'fuel used', litres: 3.1 },
  ]);
  expect(afterSession(kart, { ran: { minutes: 12 } })).toEqual([{ kind: 'ran', minutes: 12 }]);
});

test('a pressure of a tyre that the kart file has no item for is not left out: it is handed on, and refused by name', () => {
  expect(coldSet(kart, { 'front left': '0.62 bar' })).toMatchObject([
    { item: 'front left wheel/cold pressure', reading: '0.62 bar' },
  ]);
});
