import { expect, test } from 'vitest';
import { createAddress } from './address.ts';

function bar() {
  const at = { hash: '#/work/one' };
  const tap = (to: string): void => {
    at.hash = to;
  };
  let waiting: (() => void) | undefined;
  const address = createAddress({ here: () => at.hash, put: tap }, work => {
    waiting = work;
    return () => {
      waiting = undefined;
    };
  });
  return { address, painted: () => waiting?.(), here: () => at.hash, tap };
}

test('a place is written into the address once it is painted, the last of several', () => {
  const { address, painted, here } = bar();
  address.say('#/work/two');
  address.say('#/work/three');
  expect(here()).toBe('#/work/one');
  painted();
  expect(here()).toBe('#/work/three');
});

test('a tap that goes elsewhere before then is not overwritten', () => {
  const { address, painted, here, tap } = bar();
  address.say('#/work/two');
  tap('#/fit');
  painted();
  expect(here()).toBe('#/fit');
});

test('who is back where the address stands writes nothing later', () => {
  const { address, painted, here } = bar();
  address.say('#/work/two');
  address.say('#/work/one');
  painted();
  expect(here()).toBe('#/work/one');
});
