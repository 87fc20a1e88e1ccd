import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { templateKarts } from '../../../test/template-karts.ts';
import type { Joint } from '../../kart/index.ts';
import { additionsFor, namedBy, type Retention, readRetentions } from './index.ts';

const text = readFileSync(new URL('../../../data/retentions.yaml', import.meta.url), 'utf8');
const catalogue = readRetentions(text);
const named = (words: string, role: 'first' | 'second' = 'second') => {
  const found = namedBy(words, role, catalogue);
  return found.is === 'holds' ? found.retention.name : found.is;
};

describe('the words for retentions', () => {
  it.each([
    ['split pin, wire or second nut', 'split pin'],
    ['strap', 'second strap'],
    ['witness mark', 'sign'],
    ['witness mark across nut and rod', 'sign'], // the nut in it holds nothing a second time
    ['witness mark, locating collar beside the bearing', 'locating collar'],
    ['witness mark, wire where drilled', 'perhaps'],
    ['large washers', 'sign'],
    ['tier', 'unknown'],
    ['a good feeling', 'unknown'],
  ])('%s as a second is %s', (words, meant) => expect(named(words)).toBe(meant));

  it('every joint of every template says what holds it, and no second is a riddle', () => {
    const joints = templateKarts().flatMap(kart => Object.values(kart.joints));
    expect(joints.length).toBeGreaterThan(100);
    const firsts = joints.filter(({ retention }) => namedBy(retention, 'first', catalogue).is !== 'holds');
    const seconds = joints.filter(({ second }) => second !== undefined && named(second) === 'unknown');
    expect([...firsts, ...seconds].map(({ id, retention, second }) => `${id}: ${retention}, ${second}`)).toEqual([]);
  });

  it('what is added is named by its own name again, so that the kart file that names it is understood', () => {
    const fitting = catalogue.retentions.filter(({ fits }) => fits !== undefined);
    expect(fitting.length).toBeGreaterThan(8);
    expect(fitting.filter(({ name }) => named(name) !== name).map(({ name }) => name)).toEqual([]);
  });
});

describe('what can be added', () => {
  it('is priced for every piece of the joint, the quickest first', () => {
    const [joint] = templateKarts().flatMap(({ joints }) => joints['brake push rod/clevis pins'] ?? []);
    if (!joint) throw new Error('a template must have a push rod');
    const additions = additionsFor(joint, catalogue);
    expect(additions.map(({ retention, money, minutes }) => [retention.name, money, minutes])).toEqual([
      ['second clip', 4, 4],
      ['strap round the clevis', 4, 6],
    ]);
  });

  it('is for kinds of joints that there are', () => {
    const kinds = new Set(templateKarts().flatMap(({ joints }) => Object.values(joints).map(({ kind }) => kind)));
    const named = catalogue.retentions.flatMap(({ fits = [] }) => fits);
    expect(named.filter(kind => !kinds.has(kind))).toEqual([]);
  });
});

describe('what can be added at like minutes', () => {
  const pin = (name: string, minutes?: number, money?: number): Retention => ({
    name,
    words: [name],
    way: 'pin',
    chance: {},
    fits: ['bolt'],
    ...(minutes === undefined ? {} : { minutes }),
    ...(money === undefined ? {} : { money }),
  });
  const joint: Joint = { id: 'j', part: 'p', name: 'n', kind: 'bolt', count: 2, retention: 'nut', item: 'j' };
  it('comes by its price, and what has none costs nothing', () => {
    const retentions = [pin('dear', 2, 9), pin('slow', 3, 1), pin('cheap', 2, 4), pin('free')];
    expect(
      additionsFor(joint, { ...catalogue, retentions }).map(each => [each.retention.name, each.minutes, each.money]),
    ).toEqual([
      ['free', 0, 0],
      ['cheap', 4, 8],
      ['dear', 4, 18],
      ['slow', 6, 2],
    ]);
  });
});

describe('the file that is shipped', () => {
  it('is read as it stands', () => expect(readRetentions(text)).toEqual(parse(text)));

  it('may name every dependence of the handbook', () => {
    for (const word of ['none', 'low', 'moderate', 'high', 'complete'])
      expect(readRetentions(text.replace('one look: high', `one look: ${word}`)).dependence['one look']).toBe(word);
  });
});

describe('words with signs of their own', () => {
  it('are taken as they are written, letter by letter', () => {
    const retentions = catalogue.retentions.map(one => (one.name === 'tether' ? { ...one, words: ['a.b (c)'] } : one));
    const meant = (words: string) => namedBy(words, 'second', { ...catalogue, retentions }).is;
    expect([meant('one a.b (c)'), meant('one axb (c)')]).toEqual(['holds', 'unknown']);
  });
});

describe('a file of another shape', () => {
  it.each([
    ['first: 0.002, second: 0.02', 'first: 0', /chance/],
    ['first: 0.002, second: 0.02', 'first: 1.5, second: 0.02', /chance/],
    ['one look: high', 'one look: sometimes', /dependence/],
    ['first: 0.002, second: 0.02', 'first: 0.002', /one that fits a joint has money, minutes and a chance as second/],
    ['money: 2\n    minutes: 3', 'minutes: 3', /fits a joint/],
    ['money: 2\n    minutes: 3', 'money: 2', /fits a joint/],
    ['money: 2\n    minutes: 3', 'money: -2\n    minutes: 3', /money/],
    ['trusted to a factor of: 3', 'trusted to a factor of: 0.5', /trusted to a factor of/],
    ['weight: 2.64', 'weight: 0', /weight/],
    ['gone: 0.1', 'gone: 1', /gone/],
    ['at once within: 10', 'at once within: -1', /at once within/],
    ['  1: 1000', '  1: -1', /weights/],
    ['least: 2', 'least: 1.5', /least/],
    ['way: strap', "way: ''", /way/],
    ['words: [split pin]', 'words: []', /words/],
  ])('with %s as %s is refused with the place', (was, is, said) => {
    expect(text).toContain(was);
    expect(() => readRetentions(text.replace(was, is))).toThrow(said);
  });
});
