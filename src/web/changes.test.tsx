// @vitest-environment happy-dom
import { expect, test } from 'vitest';
import { drawn, settled } from '../../test/dom.ts';
import { useChanges } from './changes.ts';

function counted() {
  const heard = new Set<() => void>();
  let count = 0;
  return {
    heard,
    count: () => count,
    rises(): void {
      count++;
      for (const listener of heard) listener();
    },
    onChange(listener: () => void) {
      heard.add(listener);
      return () => heard.delete(listener);
    },
  };
}

test('what changes in the turn in which it was drawn is seen, not only with the next change', async () => {
  const [one, other] = [counted(), counted()];
  function Sum() {
    useChanges(one, other);
    return <b>{one.count() + other.count()}</b>;
  }
  const page = drawn();
  const shown = page.show(<Sum />);
  one.rises();
  other.rises();
  await shown;
  expect(page.text()).toBe('2');
  other.rises();
  await settled();
  expect(page.text()).toBe('3');
  await page.show(null);
  expect([one.heard.size, other.heard.size]).toEqual([0, 0]);
});
