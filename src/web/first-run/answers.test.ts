import { expect, test } from 'vitest';
import { libraryFiles } from '../../host/index.ts';
import { keepIn } from '../place.ts';
import {
  firstAnswers,
  keepAnswers,
  keptAnswers,
  LONG_DAY_MIN,
  questionOf,
  readAnswers,
  type Typed,
} from './answers.ts';

import { templatesIn } from './templates.ts';

const now = new Date('2026-11-26T18:00:00'); // a Thursday
const FIRST: Typed = { ...firstAnswers(now, ['My kart']), template: 'six-speed gearbox' };
const how = { taken: ['41'], now, sure: false, unknownHours: false };
const refusedOf = (typed: Partial<Typed>) =>
  readAnswers({ ...FIRST, hours: '3', ...typed }, how).problems.map(one => [questionOf(one), one.code]);

test('every question but the kind of kart and the hours is answered already: a free name, the next Saturday, a long day', () => {
  expect(FIRST).toMatchObject({ name: 'My kart 2', day: '2026-11-28', minutes: '' });
  expect(firstAnswers(new Date('2026-11-28T18:00:00'), [])).toMatchObject({ name: 'My kart', day: '2026-12-05' });
  const { said, problems } = readAnswers(FIRST, { ...how, unknownHours: true });
  expect(problems).toEqual([]);
  expect(said.event).toEqual({
    event: 'Next event',
    from: new Date('2026-11-28T09:00').toISOString(),
    minutes: LONG_DAY_MIN,
  });
  expect(said.rebuilt).toBeUndefined();
});

test('hours and running are understood with and without their unit', () => {
  for (const [hours, is] of [
    ['3', 3],
    ['3,5', 3.5],
    ['90 min', 1.5],
    ['0', 0],
  ] as const)
    expect(readAnswers({ ...FIRST, hours }, how).said.rebuilt?.hours).toBe(is);
  expect(readAnswers({ ...FIRST, hours: '3', minutes: '2 h' }, how).said.event?.minutes).toBe(120);
});

test('nonsense is refused at its question and nowhere else', () => {
  expect(refusedOf({})).toEqual([]);
  for (const name of ['', '   ', '41', ' 41 ']) expect(refusedOf({ name })).toEqual([['name', 'wrong shape']]);
  for (const hours of ['', 'ten', '-3', '1e400', '3 kg', 'NaN'])
    expect(refusedOf({ hours })).toEqual([['hours', 'wrong shape']]);
  expect(refusedOf({ hours: '99999' })).toEqual([['hours', 'far outside']]);
  expect(refusedOf({ day: '2020-02-30' })).toEqual([['event', 'not a time']]);
  expect(refusedOf({ day: '2020-02-03' })).toEqual([['event', 'not a time']]);
  expect(refusedOf({ day: '' })).toEqual([['event', 'not a time']]);
  for (const minutes of ['0', '-5', 'long']) expect(refusedOf({ minutes })).toEqual([['event', 'wrong shape']]);
  expect(refusedOf({ event: ' ', noEvent: false })).toEqual([['event', 'wrong shape']]);
  expect(refusedOf({ event: ' ', day: 'never', minutes: '-1', noEvent: true })).toEqual([]);
});

test('what was answered is there after a reload, whatever else was written in its place', () => {
  const keep = keepIn(undefined);
  expect(keptAnswers(keep, FIRST)).toEqual(FIRST);
  keepAnswers(keep, { ...FIRST, name: '7', question: 'event' });
  expect(keptAnswers(keep, FIRST)).toMatchObject({ name: '7', question: 'event' });
  keep.set('first run', 'torn{');
  expect(keptAnswers(keep, FIRST)).toEqual(FIRST);
});

test('the templates that are shipped are offered, the gearbox kart first, each with what it is', () => {
  const offered = templatesIn(libraryFiles());
  expect(offered.map(({ name }) => name)).toEqual([
    'six-speed gearbox',
    'single-speed direct-drive',
    'four-stroke junior',
  ]);
  expect(offered.every(({ about }) => about.startsWith('A '))).toBe(true);
  expect(templatesIn({ templates: { 'a.yaml': 'template: "my own"\r\n', 'b.yaml': 'torn' } })).toEqual([
    { name: 'my own', about: '' },
  ]);
});
