import { expect, test } from 'vitest';
import { demoText, kartReader, libraryFiles } from '../../host/index.ts';
import { drawKart, placeOf, type Shape } from './geometry.ts';
import { spread } from './marks.ts';

const read = await kartReader(libraryFiles()).read(demoText().kart);
if (!read.ok) throw new Error(read.problems.map(p => p.message).join('\n'));
const kart = read.kart;

const right = (shape: Shape): number => (shape.as === 'box' ? shape.box.x + shape.box.width : Number.NaN);
const mm = (name: string): number => (kart.dimensions[name]?.si ?? Number.NaN) * 1000;

test('the wheels stand as wide as the kart says it is, front and rear', () => {
  const { wheels } = drawKart(kart);
  expect(wheels).toHaveLength(4);
  expect(right(wheels[1]?.shape as Shape)).toBeCloseTo(mm('overall rear width') / 2, 6);
  expect(right(wheels[3]?.shape as Shape)).toBeCloseTo(mm('overall front width') / 2, 6);
});

test('a kart with a longer wheelbase has its front wheels further up', () => {
  const longer = {
    ...kart,
    dimensions: {
      ...kart.dimensions,
      wheelbase: { si: 1.2, unit: 'mm', text: '1200 mm', dimension: 'length' as const },
    },
  };
  const front = (drawn: ReturnType<typeof drawKart>): number => {
    const shape = drawn.wheels.find(w => w.corner === 'front left')?.shape;
    return shape?.as === 'box' ? shape.box.y : Number.NaN;
  };
  expect(front(drawKart(kart)) - front(drawKart(longer))).toBeCloseTo(1200 - mm('wheelbase'), 6);
});

test('what lies to the left of the driver is drawn on the left, what is in front further up', () => {
  const left = Object.values(kart.parts).find(p => p.corner === 'rear left' && p.place.y > 0);
  expect(left && placeOf(left).x).toBeLessThan(0);
  const front = Object.values(kart.parts).find(p => p.corner === 'front left');
  expect(front && placeOf(front).y).toBeLessThan(-500);
});

test('every part of the kart is inside the sheet', () => {
  const { view, under, parts: above } = drawKart(kart);
  const parts = [...under, ...above];
  expect(parts.length).toBe(Object.keys(kart.parts).length);
  for (const p of parts) {
    expect(p.at.x).toBeGreaterThan(view.x);
    expect(p.at.x).toBeLessThan(view.x + view.width);
    expect(p.at.y).toBeGreaterThan(view.y);
    expect(p.at.y).toBeLessThan(view.y + view.height);
  }
});

test('numbers in the margin keep their order and stay on the sheet', () => {
  const view = { x: 0, y: 0, width: 100, height: 1000 };
  const ys = spread([10, 12, 14, 990, 995, 999], view);
  for (const [i, y] of ys.entries()) {
    expect(y).toBeGreaterThanOrEqual(0);
    expect(y).toBeLessThanOrEqual(1000);
    if (i > 0) expect(y).toBeGreaterThan(ys[i - 1] as number);
  }
});
