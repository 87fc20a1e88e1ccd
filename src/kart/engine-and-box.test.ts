import { expect, test } from 'vitest';
import { bad, good, HEAD } from '../../test/fixtures/kart-text.ts';

const SHEET = `
engine:
  primary: 3.9
  gears: [2.29, 1.78, 1.45]
  torque: { 11000 rpm: 24.5 N·m, 8000 rpm: 18 N·m }
  jets are numbered by: flow
  source: invented
box:
  main jets: [165, 160, 165]
  rear sprockets: [25, 24]
`;

test('the engine sheet and the box are read: the curve by rising speed, sizes once and smallest first', () => {
  const { engine, box } = good(HEAD + SHEET);
  expect(engine).toMatchObject({ primary: 3.9, gears: [2.29, 1.78, 1.45], jetsNumberedBy: 'flow', source: 'invented' });
  expect(engine?.torque?.map(({ speed, torque }) => [speed.text, torque.si])).toEqual([
    ['8000 rpm', 18],
    ['11000 rpm', 24.5],
  ]);
  expect(box).toEqual({ mainJets: [160, 165], frontSprockets: [], rearSprockets: [24, 25] });
});

test('a kart file without them has none: nothing is guessed', () => {
  const kart = good(HEAD);
  expect(kart.engine).toBeUndefined();
  expect(kart.box).toBeUndefined();
});

test.each([
  ['gears that rise', 'engine: { gears: [1.0, 1.2] }', 'a ratio below the 1'],
  ['half a tooth', 'box: { rear sprockets: [24.5] }', 'a whole number of teeth'],
  ['a sprocket nobody makes', 'box: { front sprockets: [3] }', 'a sprocket of at least 8 teeth'],
  ['a jet of no size', 'box: { main jets: [0] }', 'a number above 0'],
  ['an engine speed without a unit', 'engine: { torque: { "8000": 18 N·m } }', 'rotational speed with its unit'],
  ['a torque in another unit', 'engine: { torque: { 8000 rpm: 18 kW } }', 'torque with its unit'],
  ['jets numbered by a guess', 'engine: { jets are numbered by: size }', 'one of: diameter, flow'],
  ['a key nobody knows', 'engine: { gear: [2, 1] }', 'a key that is known here'],
])('%s is refused with what is right, at its line', (_, written, expected) => {
  const problems = bad(`${HEAD}\n${written}\n`);
  expect(problems.map(one => one.expected).join()).toContain(expected);
  expect(problems[0]?.line).toBeGreaterThan(1);
});
