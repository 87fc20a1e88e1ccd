// @vitest-environment happy-dom
import { expect, test } from 'vitest';
import { drawn } from '../../../test/dom.ts';
import { SpeedMap } from './speed-map.tsx';

test('the line of a lap is as thick as the kart is fast there, and lies where the kart was', async () => {
  const count = 400;
  const turn = (n: number): number => (2 * Math.PI * n) / (count - 1);
  const around = Float64Array.from({ length: count }, (_, n) => turn(n));
  const path = { x: around.map(Math.cos).map(x => 50 * x), y: around.map(Math.sin).map(y => 50 * y) };
  const speed = around.map(a => 20 - 10 * Math.cos(a)); // slow in the east, fast in the west
  const page = drawn();
  await page.show(
    <SpeedMap title="Speed" path={path} speed={speed} signs={[{ at: { x: 50, y: 0 }, text: 'start' }]} />,
  );
  const pieces = [...document.querySelectorAll<SVGPathElement>('path.speed')].map(piece => {
    const [, x = '', y = ''] = /^M([\d.-]+) ([\d.-]+)/.exec(piece.getAttribute('d') ?? '') ?? [];
    return { x: Number(x), y: Number(y), width: Number.parseFloat(piece.style.strokeWidth) };
  });
  expect(pieces.length).toBeGreaterThan(100);
  const byWidth = pieces.toSorted((a, b) => a.width - b.width);
  const byPlace = pieces.toSorted((a, b) => b.x - a.x); // east first: x grows to the right of the sheet
  expect(byWidth[0]?.x).toBeCloseTo(byPlace[0]?.x as number, 0);
  expect(byWidth.at(-1)?.x).toBeCloseTo(byPlace.at(-1)?.x as number, 0);
  // Between the two the width goes with the speed: half way round it is in the middle.
  const north = pieces.toSorted((a, b) => a.y - b.y)[0]; // y grows downwards on the sheet
  const [thin, thick] = [byWidth[0]?.width ?? 0, byWidth.at(-1)?.width ?? 0];
  expect(thick / thin).toBeGreaterThan(5);
  expect(north?.width).toBeCloseTo((thin + thick) / 2, 0);
  expect(document.querySelector('svg')?.textContent).toContain('start');
});
