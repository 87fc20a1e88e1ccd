import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { templateKarts } from '../../../test/template-karts.ts';
import { additionsFor, namedBy, readRetentions } from './index.ts';

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

describe('a file of another shape', () => {
  it.each([
    ['first: 0.002, second: 0.02', 'first: 0', /chance/],
    ['first: 0.002, second: 0.02', 'first: 1.5, second: 0.02', /chance/],
    ['one look: high', 'one look: sometimes', /dependence/],
    ['first: 0.002, second: 0.02', 'first: 0.002', /fits a joint/],
  ])('with %s as %s is refused with the place', (was, is, said) => {
    expect(text).toContain(was);
    expect(() => readRetentions(text.replace(was, is))).toThrow(said);
  });
});
