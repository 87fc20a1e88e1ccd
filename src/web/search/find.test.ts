import fc from 'fast-check';
import { expect, test } from 'vitest';
import { find, prepared, type Sort, type Thing } from './find.ts';

const thing = (sort: Sort, title: string, under = ''): Thing => ({ sort, title, under, hash: `#/${title}` });
const things = prepared([
  thing('part', 'rear hub left', 'axle and hubs'),
  thing('part', 'rear hub right', 'axle and hubs'),
  thing('part', 'brake disc rear', 'brakes'),
  thing('joint', 'pinch bolts', 'rear hub left'),
  thing('check', 'Gap from bearing to hub', 'rear hub left'),
  thing('entry', 'Note: Café, new hub ordered', '12 Oct 2026'),
]);
const titles = (typed: string): string[] => find(things, typed).flatMap(({ first }) => first.map(({ title }) => title));

test('every word has to be there, in any order and in any case', () => {
  expect(titles('HUB left rear')).toEqual(['rear hub left', 'Gap from bearing to hub', 'pinch bolts']);
  expect(titles('hub wing')).toEqual([]);
  expect(titles('cafe')).toEqual(['Note: Café, new hub ordered']);
});

test('nothing typed finds nothing', () => {
  for (const nothing of ['', '  ', '/', '…']) expect(find(things, nothing)).toEqual([]);
});

test('what is called so comes before what is only near it', () => {
  expect(titles('pinch')[0]).toBe('pinch bolts');
  expect(titles('rear hub left')[0]).toBe('rear hub left');
  expect(find(things, 'gap').map(({ sort }) => sort)).toEqual(['check']);
});

test('a sort shows its best eight and says how many there are', () => {
  const many = prepared(Array.from({ length: 30 }, (_, n) => thing('entry', `Checked ${n}`)));
  expect(find(many, 'checked')).toMatchObject([{ sort: 'entry', all: 30 }]);
  expect(find(many, 'checked')[0]?.first).toHaveLength(8);
});

test('a title typed in full is found, whatever signs it holds', () => {
  fc.assert(
    fc.property(fc.string({ minLength: 1, unit: 'grapheme' }), title => {
      const found = find(prepared([thing('part', title)]), title);
      if (/[\p{L}\p{N}]/u.test(title.normalize('NFD').replace(/\p{M}/gu, '')))
        expect(found[0]?.first[0]?.title).toBe(title);
    }),
  );
});
