import fc from 'fast-check';
import { isValidElement, type VNode } from 'preact';
import { expect, test } from 'vitest';
import { clock, dayCurve } from './day-curve.tsx';
import { SHEET_WIDTH } from './lines.tsx';

function elements(node: unknown): readonly VNode<Record<string, unknown>>[] {
  if (Array.isArray(node)) return node.flatMap(elements);
  if (!isValidElement(node)) return [];
  const vnode = node as VNode<Record<string, unknown>>;
  if (typeof vnode.type === 'function') return elements((vnode.type as (props: unknown) => unknown)(vnode.props));
  return [vnode, ...elements(vnode.props.children)];
}

const morning = { minute: 8 * 60, density: 1.242, band: 0.006 };
const noon = { minute: 12 * 60 + 30, density: 1.181, band: 0.006 };

test('a cold morning and a warm noon are told in the order of time, with the side the baseline lies on', () => {
  const day = dayCurve({ points: [noon, morning], baseline: 1.2 });
  expect(day?.title).toBe(
    'Air at 8:00 1.242 kg/m³, at 12:30 1.181 kg/m³; thinner than the baseline: the same jet is rich.',
  );
  expect(day?.rows).toEqual([
    ['8:00', '1.242 kg/m³', '± 0.006 kg/m³'],
    ['12:30', '1.181 kg/m³', '± 0.006 kg/m³'],
  ]);
  expect(dayCurve({ points: [morning], baseline: 1.2 })?.title).toContain('lean, it can seize');
  expect(dayCurve({ points: [morning], baseline: 1.24 })?.title).toContain('cannot be told');
});

test('a reading that is no number is left out, and a day without any is not drawn', () => {
  expect(dayCurve({ points: [] })).toBeUndefined();
  expect(dayCurve({ points: [{ minute: 60, density: Number.NaN, band: 0 }] })).toBeUndefined();
  const unsure = dayCurve({ points: [{ ...morning, band: Number.NaN }, noon] });
  expect(unsure?.rows[0]?.[2]).toBe('not known');
});

test('any day is drawn from numbers only, inside its sheet', () => {
  const point = fc.record({
    minute: fc.integer({ min: 0, max: 1439 }),
    density: fc.double({ min: 0.8, max: 1.4, noNaN: true }),
    band: fc.oneof(fc.constant(Number.NaN), fc.double({ min: 0, max: 0.1, noNaN: true })),
  });
  fc.assert(
    fc.property(
      fc.array(point, { minLength: 1, maxLength: 30 }),
      fc.option(fc.double({ min: 0.8, max: 1.4, noNaN: true })),
      (points, baseline) => {
        const day = dayCurve({ points, ...(baseline === null ? {} : { baseline }) });
        for (const { props } of elements(day?.drawing))
          for (const [key, value] of Object.entries(props))
            if (key !== 'children' && value !== undefined) {
              expect(`${key}=${String(value)}`).not.toMatch(/NaN|undefined|Infinity/);
              if (['x', 'x1', 'x2', 'cx'].includes(key)) {
                expect(Number(value)).toBeGreaterThanOrEqual(0);
                expect(Number(value)).toBeLessThanOrEqual(SHEET_WIDTH);
              }
            }
      },
    ),
  );
});

test('a time reads as on a clock', () => {
  expect([clock(0), clock(605), clock(1439)]).toEqual(['0:00', '10:05', '23:59']);
});
