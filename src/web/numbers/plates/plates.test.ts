import fc from 'fast-check';
import { isValidElement, type VNode } from 'preact';
import { describe, expect, test } from 'vitest';
import { MEANS, type Subject, subjects } from '../../../numbers/index.ts';
import { SHEET_WIDTH } from '../../drawing/lines.tsx';
import { plotX, plotY, roundSteps } from '../../drawing/plot.tsx';
import { across } from '../../drawing/scale.tsx';
import type { Drawn } from './index.ts';
import { PLATES, plateOf } from './index.ts';
import { DRAWN } from './means-drawn.tsx';

const named = (name: string): Subject => {
  const found = subjects.find(one => one.name === name);
  if (found === undefined) throw new Error(`no subject is called ${name}`);
  return found;
};
function drawn(name: string, change: Readonly<Record<string, unknown>> = {}): Drawn {
  const subject = named(name);
  const question = Object.fromEntries(
    Object.entries({ ...subject.example, ...change }).filter(([, value]) => value !== undefined),
  );
  const answer = subject.ask(question);
  if (answer.kind !== 'answer') throw new Error(JSON.stringify(answer.problems));
  const plate = plateOf(name, { question, answer });
  if (plate === undefined) throw new Error(`${name} has no plate for this answer`);
  return plate;
}

/** Every element of a drawing, the components in it carried out. */
function elements(node: unknown): readonly VNode<Record<string, unknown>>[] {
  if (Array.isArray(node)) return node.flatMap(elements);
  if (!isValidElement(node)) return [];
  const vnode = node as VNode<Record<string, unknown>>;
  if (typeof vnode.type === 'function') return elements((vnode.type as (props: unknown) => unknown)(vnode.props));
  return [vnode, ...elements(vnode.props.children)];
}

describe('the plates', () => {
  for (const name of Object.keys(PLATES)) {
    test(`${name}: the example is drawn from numbers only, inside its sheet, and said as a table too`, () => {
      const plate = drawn(name);
      const parts = elements(plate.drawing);
      expect(parts.length).toBeGreaterThan(10);
      for (const { props } of parts)
        for (const [key, value] of Object.entries(props))
          if (key !== 'children' && value !== undefined)
            expect(`${key}=${value}`).not.toMatch(/NaN|undefined|Infinity/);
      for (const { type, props } of parts.filter(p => p.type === 'text' || p.type === 'rect')) {
        expect(Number(props.x), `${String(type)} ${JSON.stringify(props)}`).toBeLessThanOrEqual(SHEET_WIDTH);
      }
      expect(plate.title.length).toBeGreaterThan(20);
      expect(plate.rows.length).toBeGreaterThan(3);
      for (const row of plate.rows) expect(row.length).toBe(plate.head.length);
      expect(JSON.stringify(plate.rows)).not.toMatch(/not known|NaN/);
    });
  }

  test('the rear axle says which hub to move, and which way, on the side that is wrong', () => {
    expect(drawn('rear-track').title).toContain('Left hub: in 3.15 mm (1/8 in). Right hub: leave it.');
    const other = drawn('rear-track', { 'gap left': '146.05 mm', 'gap right': '142.9 mm' });
    expect(other.title).toContain('Left hub: leave it. Right hub: out 3.15 mm (1/8 in).');
  });

  test('wheels that toe in stand closer in front, wheels that toe out closer behind', () => {
    expect(drawn('alignment').title).toContain('toe-out');
    const inward = { 'front apart': '1000 mm', 'rear apart': '1002 mm' };
    const once = { 'front apart after half a turn': undefined, 'rear apart after half a turn': undefined };
    expect(drawn('alignment', { ...inward, ...once }).title).toContain('toe-in');
  });

  test('steering left is the mirror of steering right where both sides are alike', () => {
    const rows = drawn('front-end').rows.map(([, left = '', right = '']) => [left, right]);
    expect(rows.length).toBeGreaterThan(6);
    expect(rows.toReversed().map(([left, right]) => [right, left])).toEqual(rows);
  });

  test('a hub that slips with a film of oil says so in words, not by colour alone', () => {
    const slips = drawn('hub-hold').rows.find(([name]) => name === 'Side load, outer wheel');
    expect(slips?.[1]).toBe('1.75');
    expect(slips?.[2]).toBe('0.87: slips');
  });
});

describe('the drawn joint', () => {
  const signals = (plate: Drawn) => elements(plate.drawing).filter(({ props }) => props.class === 'signal').length;

  test('a split pin behind a torqued nut is still there, and nothing is in the signal colour', () => {
    const plate = drawn('retention');
    expect(plate.title).toContain('The second is still there');
    expect(plate.rows).toContainEqual(['friction lost', 'lets go', 'holds']);
    expect(plate.rows).toContainEqual(['pin or tab sheared', 'holds', 'lets go']);
    expect(signals(plate)).toBe(0);
  });

  test('a means that goes the same way, or that only marks, leaves nothing behind the first, said in words too', () => {
    for (const second of ['second nut', 'witness mark']) {
      const plate = drawn('retention', { first: 'self-locking nut', second });
      expect(plate.title).toContain('Nothing stands behind the first');
      expect(signals(plate)).toBeGreaterThan(0);
    }
    const rows = drawn('retention', { first: 'self-locking nut', second: 'witness mark' }).rows;
    expect(rows).toContainEqual(['friction lost', 'lets go', 'holds nothing']);
  });

  test('words that nothing is known of are not taken for a second means', () => {
    const plate = drawn('retention', { second: 'luck' });
    expect(plate.title).toContain('Not known whether the second holds');
    expect(signals(plate)).toBeGreaterThan(0);
  });

  test('asked about one means alone it draws that, and says what was not asked', () => {
    const plate = drawn('retention', { first: undefined, second: undefined });
    expect(plate.title).toContain('First: split pin. Second: not said. What stands behind it was not asked');
    expect(signals(plate)).toBe(0);
  });

  test('every means that is known has its own shape', () => {
    expect(DRAWN.toSorted()).toEqual(MEANS.map(({ name }) => name).toSorted());
  });
});

describe('the scales under the plates', () => {
  const span = fc
    .tuple(fc.double({ min: -1e6, max: 1e6, noNaN: true }), fc.double({ min: 1e-3, max: 1e6, noNaN: true }))
    .map(([low, size]) => ({ low, high: low + size }));

  test('what lies off a scale stays at its edge, and order is kept', () => {
    fc.assert(
      fc.property(
        span,
        fc.double({ noNaN: true, noDefaultInfinity: true }),
        fc.double({ noNaN: true, noDefaultInfinity: true }),
        (scale, a, b) => {
          const [low, high] = [across(Math.min(a, b), scale), across(Math.max(a, b), scale)];
          expect(low).toBeLessThanOrEqual(high);
          expect(low).toBeGreaterThanOrEqual(0);
          expect(high).toBeLessThanOrEqual(SHEET_WIDTH);
        },
      ),
    );
  });

  test('steps are round, evenly spaced, inside, and no more than asked for', () => {
    fc.assert(
      fc.property(span, fc.integer({ min: 2, max: 12 }), ({ low, high }, most) => {
        const steps = roundSteps(low, high, most);
        expect(steps.length).toBeLessThanOrEqual(most + 1);
        for (const step of steps) {
          expect(step).toBeGreaterThanOrEqual(low - (high - low) * 1e-6 - Math.abs(low) * 1e-9);
          expect(step).toBeLessThanOrEqual(high + (high - low) * 1e-6 + Math.abs(high) * 1e-9);
        }
      }),
    );
    expect(roundSteps(-20, 20, 6)).toEqual([-20, -10, 0, 10, 20]);
    expect(roundSteps(-15.1, 15.1, 6)).toEqual([-10, 0, 10]);
  });

  test('a plot has its highest value on top and its largest on the right', () => {
    const axes = { x: [-10, 10], y: [0, 5], top: 20, height: 100 } as const;
    expect(plotY(5, axes)).toBe(20);
    expect(plotY(0, axes)).toBe(120);
    expect(plotX(10, axes)).toBeGreaterThan(plotX(-10, axes));
  });
});
