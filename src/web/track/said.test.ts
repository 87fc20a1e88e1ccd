import { describe, expect, test } from 'vitest';
import { item, smallKart } from '../../../test/small-kart.ts';
import type { Kart, Part } from '../../kart/index.ts';
import { afterSaid, fieldAfter, outOfLimits, saidAgain } from './after-said.ts';
import { weatherSaid } from './air-said.ts';
import { lapsSaid } from './said.ts';

const kart: Kart = (() => {
  const small = smallKart(
    item('wheel/hot pressure', [{ on: 'after session' }], { action: 'measure', measure: { unit: 'bar' } }),
  );
  const [pattern] = Object.values(small.parts) as [Part];
  return { ...small, parts: { ...small.parts, wheel: { ...pattern, id: 'wheel', corner: 'rear left' } } };
})();

describe('the air as it was typed', () => {
  test('a bare number is in the unit beside its field, and another unit is understood', () => {
    const typed = { celsius: '70 °F', pascal: '1002', pressureIs: 'station', humidity: '55', trackCelsius: '30' };
    expect(weatherSaid(typed, 'Hollow Lane')).toEqual({
      ok: true,
      value: {
        kind: 'weather',
        celsius: expect.closeTo(21.1111, 4), // 70 °F is 21.1 °C: NIST SP 811, 2008, App. B.8
        pascal: 100_200,
        pressureIs: 'station',
        humidity: 0.55,
        trackCelsius: 30,
        track: 'Hollow Lane',
      },
    });
  });
  test('a pressure is not taken before it is said which it is; height counts only where it is asked', () => {
    const asked = weatherSaid({ celsius: '20', pascal: '1013' }, undefined);
    expect(asked.ok ? [] : asked.problems.map(({ where }) => where)).toEqual(['fact.pressureIs']);
    const here = weatherSaid({ pascal: '1002', pressureIs: 'station', elevation: '120' }, undefined);
    expect(here.ok && 'elevation' in here.value).toBe(false);
    const map = weatherSaid({ pascal: '1013', pressureIs: 'sea level', elevation: '120' }, undefined);
    expect(map.ok && map.value.elevation).toBe(120);
  });
  test('everything that is no number is said at once, each at its field', () => {
    const heard = weatherSaid({ celsius: 'warm', humidity: '12 bar' }, undefined);
    expect(heard.ok ? [] : heard.problems.map(({ where }) => where)).toEqual(['fact.celsius', 'fact.humidity']);
    expect(weatherSaid({}, undefined).ok).toBe(false);
  });
});

describe('a session as it was typed', () => {
  const heard = afterSaid(
    kart,
    { minutes: '10', laps: '12', 'hot rear left': '0.81', plug: 'right', litres: '3.6' },
    'L',
  );
  test('it is the run, and after it everything that was read', () => {
    expect(heard).toEqual({
      ok: true,
      value: [
        { kind: 'ran', minutes: 10, laps: 12, track: 'L' },
        { kind: 'checked', item: 'wheel/hot pressure', result: 'pass', reading: '0.81 bar' },
        { kind: 'plug read', says: 'right' },
        { kind: 'fuel used', litres: 3.6 },
      ],
    });
  });
  test('a refusal of the batch goes back to the field it is about', () => {
    const drafts = heard.ok ? heard.value : [];
    const at = (where: string) => fieldAfter(kart, drafts, { code: 'far outside', where, message: '', remedy: '' });
    expect(at('facts[0].minutes')).toBe('minutes');
    expect(at('facts[1].reading')).toBe('hot rear left');
    expect(at('facts[3].litres')).toBe('litres');
    expect(at('by')).toBeUndefined();
  });
  test('a pressure out of its limits is no pass: said again, it is written as a fail with what was read', () => {
    const drafts = heard.ok ? heard.value : [];
    const problem = { code: 'outside limits', where: 'facts[1].reading', message: '', remedy: '' } as const;
    expect(saidAgain([problem], false)).toBe(true);
    expect(saidAgain([{ ...problem, code: 'runs backwards' }], false)).toBe(false);
    expect(outOfLimits(drafts, [problem])[1]).toMatchObject({ result: 'fail', reading: '0.81 bar' });
    expect(outOfLimits(drafts, [problem])[0]).toEqual(drafts[0]);
  });
  test('a tyre probed at two places, a run without minutes and laps by halves are asked about', () => {
    const half = afterSaid(
      kart,
      { laps: '9.5', 'tread rear left inside': '70', 'tread rear left middle': '72' },
      undefined,
    );
    expect(half.ok ? [] : half.problems.map(({ where }) => where).toSorted()).toEqual([
      'fact.laps',
      'fact.minutes',
      'fact.tread rear left outside',
    ]);
    expect(lapsSaid({ laps: '501' })).toMatchObject({ where: 'fact.laps' });
    expect(lapsSaid({})).toBeUndefined();
  });
});
