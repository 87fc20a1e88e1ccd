import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import type { Fact } from '../book/index.ts';
import { demoText, kartReader, libraryFiles } from '../host/index.ts';
import type { Kart } from '../kart/index.ts';
import { readRetentions } from '../risk/index.ts';
import { memoryStore } from '../store/memory/index.ts';
import { createApp, edited, type KartEdit, kartChange, kartChoices, MAIN_DIMENSIONS, mayBeNamed } from './index.ts';

const library = libraryFiles();
const reader = kartReader(library);
const now = '2026-06-20T12:00:00.000Z';
const { kart: text } = demoText();
let facts: readonly Fact[];
let kart: Kart;
beforeAll(async () => {
  let n = 0;
  const ids = { next: () => `id-${n++}`, salt: () => '0'.repeat(32) };
  const app = createApp({ store: memoryStore(), clock: { now: () => new Date(now) }, ids, reader, device: 'test' });
  await app.seedDemo(demoText());
  facts = (await app.facts('41')).map(({ fact }) => fact);
  kart = await app.kart('41');
});
const changed = async (...edits: KartEdit[]) => {
  const read = await reader.read(edits.reduce<string>(edited, text));
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join('\n'));
  return read.kart;
};
const change = async (...edits: KartEdit[]) => kartChange(kart, await changed(...edits), { facts, now });

describe('what another kart file does', () => {
  test('is nothing where it says the same', async () => {
    expect(await change()).toMatchObject({ parts: { added: [], gone: [] }, functions: [], isOther: false });
  });

  test('a part of safety that goes is named with what it carried, its looks and the reasons that go with it', async () => {
    const done = await change({ is: 'part out', part: 'brake push rod', below: true });
    expect(done.parts.gone).toEqual([{ part: 'brake push rod', safety: true, carried: ['stop'] }]);
    expect(done.functions).toEqual([
      expect.objectContaining({ name: 'stop', is: 'less', severity: 1, without: ['brake push rod'] }),
    ]);
    expect(done.items.gone.every(({ part }) => part === 'brake push rod')).toBe(true);
    expect(done.items.gone.length).toBeGreaterThan(0);
    expect(done.items.added).toEqual([]);
    expect(done.plan.after.steps).toBeLessThanOrEqual(done.plan.before.steps);
  });

  test('what lies off and is taken away stands no longer against running, and that is said', async () => {
    const off = Object.keys(kart.parts).find(part => part === 'rear hub left') ?? '';
    const done = await change({ is: 'part out', part: off, below: true });
    expect(done.reasonsGone.join(' ')).toContain('rear hub left is off the kart');
  });

  test('a function that nothing carries any more is gone, gravest first', async () => {
    const needed = Object.keys(kart.parts).filter(part => /brake|master|caliper/.test(part));
    const done = await change(...needed.map(part => ({ is: 'part out', part, below: true }) as const));
    expect(done.functions[0]).toMatchObject({ name: 'stop', severity: 1 });
    expect(done.functions.map(({ severity }) => severity)).toEqual(
      done.functions.map(({ severity }) => severity).toSorted((a, b) => a - b),
    );
  });

  test('second retentions and dimensions are told as they were and as they would be', async () => {
    const done = await change(
      { is: 'second out', part: 'brake push rod', joint: 'clevis pins' },
      { is: 'dimension', name: 'wheelbase', value: '1050 mm' },
    );
    expect(done.seconds).toEqual([
      { joint: 'brake push rod/clevis pins', before: expect.stringContaining('strap'), after: null },
    ]);
    expect(done.dimensions).toEqual([{ name: 'wheelbase', before: '1045 mm', after: '1050 mm' }]);
    expect(done.parts.gone).toEqual([]);
  });
});

describe('what can be tapped', () => {
  const retentions = readRetentions(readFileSync(new URL('../../data/retentions.yaml', import.meta.url), 'utf8'));

  test('is every part of the template, those on the kart with how they are held, and a system for every kind', async () => {
    const { parts, kinds } = kartChoices(kart, library, retentions);
    expect(
      parts
        .filter(({ on }) => on)
        .map(({ part }) => part)
        .toSorted(),
    ).toEqual(Object.keys(kart.parts).toSorted());
    const rod = parts.find(({ part }) => part === 'brake push rod');
    expect(rod?.joints[0]).toMatchObject({
      name: 'clevis pins',
      retention: 'spring clip',
      could: expect.arrayContaining([]),
    });
    const without = kartChoices(
      await changed({ is: 'part out', part: 'brake push rod', below: true }),
      library,
      retentions,
    );
    expect(without.parts.find(({ part }) => part === 'brake push rod')).toMatchObject({ on: false, below: true });
    expect(without.parts.length).toBe(parts.length);
    expect(kinds.find(({ kind }) => kind === 'split clamp hub')?.system).toBe('axle and hubs');
    expect(kinds.length).toBeGreaterThan(80);
  });

  test('is a second retention with the one that template or kind have, and which dimensions nobody measured', async () => {
    const bare = await changed({ is: 'second out', part: 'brake push rod', joint: 'clevis pins' });
    const { parts, dimensions } = kartChoices(bare, library, retentions);
    const joint = parts.find(({ part }) => part === 'brake push rod')?.joints[0];
    expect(joint).toMatchObject({ second: null, beneath: 'second clip or strap round the clevis' });
    expect(joint?.could.length).toBeGreaterThan(0);
    expect(dimensions.find(({ name }) => name === 'wheelbase')).toEqual({
      name: 'wheelbase',
      text: '1045 mm',
      measured: true,
    });
    expect(dimensions.find(({ name }) => name === 'caster')?.measured).toBe(false);
  });

  test('is a name for a new part that no other has, and that a kart file may hold', () => {
    const { parts } = kartChoices(kart, library, retentions);
    expect(mayBeNamed(' second chain guard ', parts)).toBe(true);
    for (const name of ['', '  ', 'radiator', ' radiator', 'a/b', 'self', 'mate tie rod', 'x'.repeat(91), 'a\nb'])
      expect(mayBeNamed(name, parts), name).toBe(false);
  });

  test('begins with the main dimensions, which the template has', () => {
    const { dimensions } = kartChoices(kart, library, retentions);
    const names = dimensions.map(({ name }) => name);
    expect(MAIN_DIMENSIONS.filter(name => !names.includes(name))).toEqual([]);
  });
});
