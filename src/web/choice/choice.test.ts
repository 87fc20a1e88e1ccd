import { afterEach, expect, test } from 'vitest';
import { keepIn } from '../place.ts';
import { asTyped, dateOf, dayOf, timeOf } from '../words/reads.ts';
import { aimsOf, aimsSaid } from './aims.ts';
import { choice, choiceIn, choose, own, ownUnitOf, readChoice } from './choice.ts';
import { withOwnDays } from './dates.ts';
import { KNOWN_LANGUAGES } from './languages.ts';

const AT = new Date(2026, 10, 26, 14, 5).toISOString();
const keep = keepIn(undefined);
afterEach(() => readChoice(keepIn(undefined), 'en-GB'));

test('before anything is chosen, dates and clock are as the browser reads, and sizes as their maker wrote them', () => {
  expect(choiceIn('en-GB')).toEqual({ date: 'named', clock: '24 h' });
  expect(choiceIn('en-US')).toEqual({ date: 'month first', clock: '12 h' });
  expect(choiceIn('sv-SE')).toEqual({ date: 'year first', clock: '24 h' });
  readChoice(keepIn(undefined), 'en-US');
  expect(choice().units).toEqual({});
  expect(own('146.05 mm')).toBe('146.05 mm');
});

test('a language that is known here reads as the platform has it, and one that is not is asked there', () => {
  expect(KNOWN_LANGUAGES.size).toBeGreaterThan(40);
  for (const [language, known] of KNOWN_LANGUAGES) expect(known, language).toEqual(choiceIn(language));
  expect(KNOWN_LANGUAGES.has('ko')).toBe(false);
  readChoice(keepIn(undefined), 'ko');
  expect(choice()).toMatchObject({ date: 'year first', clock: '12 h' });
});

test.each([
  ['named', '26 Nov 2026', 'Thu 26 Nov'],
  ['year first', '2026-11-26', 'Thu 2026-11-26'],
  ['month first', '11/26/2026', 'Thu 11/26'],
  ['day first', '26/11/2026', 'Thu 26/11'],
])('a date that is written %s', (way, date, day) => {
  choose(keep, 'en-GB', 'date', way);
  expect(dateOf(AT)).toBe(date);
  expect(dayOf(AT).replace(',', '')).toBe(day); // with or without its comma, by the browser
});

test('a day inside a sentence of the core is written as the person chose, and stays that day', () => {
  choose(keep, 'en-GB', 'date', 'named');
  expect(withOwnDays('A knock at the rear left on 2026-11-12, not looked at since.')).toBe(
    'A knock at the rear left on 12 Nov 2026, not looked at since.',
  );
  choose(keep, 'en-GB', 'date', 'month first');
  expect(withOwnDays('open since 2026-01-31, not made')).toBe('open since 01/31/2026, not made');
  expect(withOwnDays('serial 12-2026-11-12-7 and 2026-11-12T09:00')).toBe(
    'serial 12-2026-11-12-7 and 2026-11-12T09:00',
  );
});

test('the time of day has 24 hours or 12', () => {
  choose(keep, 'en-GB', 'clock', '24 h');
  expect(timeOf(AT)).toBe('14:05');
  choose(keep, 'en-GB', 'clock', '12 h');
  expect(timeOf(AT)).toMatch(/^2:05.pm$/);
});

test('every month, day of the week and hour reads as the formatter of the platform writes it', () => {
  const here = keepIn(undefined);
  const as = (parts: Intl.DateTimeFormatOptions) => new Intl.DateTimeFormat('en-US', parts);
  const [weekday, month] = [as({ weekday: 'short' }), as({ month: 'short' })];
  const [late, early] = [
    as({ hour: 'numeric', minute: '2-digit', hour12: true }),
    as({ timeStyle: 'short', hourCycle: 'h23' }),
  ];
  for (let n = 0; n < 400; n++) {
    const at = new Date(2026, 0, 1 + n, n % 24, (n * 7) % 60);
    choose(here, 'en-GB', 'date', 'named');
    expect(dateOf(at.toISOString())).toBe(`${at.getDate()} ${month.format(at)} ${at.getFullYear()}`);
    expect(dayOf(at.toISOString())).toBe(`${weekday.format(at)} ${at.getDate()} ${month.format(at)}`);
    choose(here, 'en-GB', 'clock', '12 h');
    expect(timeOf(at.toISOString()).replace(/\s/, ' ')).toBe(late.format(at).replace(/\s/, ' ').toLowerCase());
    choose(here, 'en-GB', 'clock', '24 h');
    expect(timeOf(at.toISOString())).toBe(early.format(at).padStart(5, '0'));
  }
});

test('what was chosen is kept, may be taken back, and nothing that cannot be chosen counts', () => {
  const here = keepIn(undefined);
  choose(here, 'en-GB', 'size', 'in');
  choose(here, 'en-GB', 'pressure', 'furlongs');
  readChoice(here, 'en-GB');
  expect(choice().units).toEqual({ size: 'in' });
  expect(ownUnitOf('mm')).toBe('in');
  choose(here, 'en-GB', 'size', '');
  expect(choice().units).toEqual({});
});

test('what was typed stands beside what is shown, where it is another unit', () => {
  const here = keepIn(undefined);
  choose(here, 'en-GB', 'size', 'in');
  expect(asTyped('146.05 mm')).toBe('5 3/4 in (typed 146.05 mm)');
  expect(asTyped('5 3/4 in')).toBe('5 3/4 in');
});

test('a step says target and limits in the unit that was chosen, its limits to the strict side, and how they were given', () => {
  const at = (millimetres: number) => ({ si: millimetres / 1000, unit: 'mm', text: `${millimetres} mm` });
  const step = {
    target: { ...at(142.55), text: '142.55 mm (5 5/8 in)' },
    tolerance: { min: at(141.5), max: at(143.5), text: 'at least 141.5 mm, at most 143.5 mm' },
  };
  expect(aimsOf(step)).toEqual({ target: step.target.text, allowed: step.tolerance.text, given: '' });
  const here = keepIn(undefined);
  choose(here, 'en-GB', 'size', 'in');
  expect(aimsOf(step)).toEqual({
    target: '5.612 in (5 5/8 in)',
    allowed: 'at least 5.571 in, at most 5.649 in', // 5.57087 and 5.64961
    given: '142.55 mm (5 5/8 in); at least 141.5 mm, at most 143.5 mm',
  });
  expect(aimsSaid({ target: at(142.5), tolerance: null })).toBe('5.61 in (5 5/8 in), given as 142.5 mm');
});
