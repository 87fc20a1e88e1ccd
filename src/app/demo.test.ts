import { describe, expect, test } from 'vitest';
import { NOW, SMALL_KART, smallBench } from '../../test/fixtures/small-bench.ts';
import { verifyChain } from '../book/index.ts';
import { expandDemo } from './demo.ts';

const season = (entries: string): string => `
demo: 1
kart: small.yaml
filed: { day: -9, time: "18:00", by: A }
entries:
${entries}`;
const kart = async () => (await smallBench()).app.kart('small');
const expand = async (entries: string) =>
  expandDemo({ kart: SMALL_KART, season: season(entries) }, await kart(), NOW.slice(0, 10));

describe('the demo season', () => {
  test('counts its days back from the day the book is made, and makes the same facts each time', async () => {
    const entries =
      '  - { day: -8, time: "09:30", by: B, fact: { kind: event, event: Round 1, minutes: 60, from: { day: 6, time: "08:00" } } }';
    const facts = await expand(entries);
    expect(facts.map(fact => fact.at)).toEqual(['2026-03-05T18:00:00.000Z', '2026-03-06T09:30:00.000Z']);
    expect(facts[1]).toMatchObject({ kind: 'event', from: '2026-03-20T08:00:00.000Z', by: 'B', device: 'demo' });
    expect(await expand(entries)).toEqual(facts);
    expect(verifyChain(facts)).toEqual([]);
  });

  test('an entry may lie so many minutes before the book is made, whatever the day', async () => {
    const text = season('  - { ago: 40, by: B, fact: { kind: weather, celsius: 17 } }');
    const facts = expandDemo({ kart: SMALL_KART, season: text }, await kart(), '2026-03-14T00:10:00.000Z');
    expect(facts[1]).toMatchObject({ kind: 'weather', at: '2026-03-13T23:30:00.000Z' });
    await expect(expand('  - { ago: 0, by: B, fact: { kind: weather, celsius: 17 } }')).rejects.toThrow();
  });

  test('a label stands for the id of its fact', async () => {
    const facts = await expand(`
  - { day: -8, time: "09:30", by: A, label: dent, fact: { kind: found, part: wheel, defect: dent, grade: safety } }
  - { day: -7, time: "09:30", by: A, fact: { kind: mended, found: "@dent", how: new rim } }`);
    expect(facts[2]).toMatchObject({ kind: 'mended', found: facts[1]?.id });
  });

  test('pass all writes one fact an item with its usual reading, none of a part that is off, and second looks where asked', async () => {
    const facts = await expand(`
  - day: -8
    time: "18:00"
    by: A
    pass all: {}
    readings: { "hub/gap": 145.5 mm }
    second look by: B
  - { day: -7, time: "18:00", by: A, fact: { kind: taken off, part: wheel } }
  - { day: -7, time: "19:00", by: A, pass all: { lapses: [event] } }`);
    const said = facts.slice(1).map(fact => {
      const on = 'item' in fact ? fact.item : 'joint' in fact ? fact.joint : fact.kind;
      const value = 'reading' in fact ? fact.reading?.text : undefined;
      return [on, value, fact.by].filter(Boolean).join(' ');
    });
    expect(said).toEqual([
      'hub/gap 145.5 mm A', // named in readings
      'hub/width 1400 mm A', // the one limit there is
      'wheel/nuts 20 N·m A', // middle of 18..22 N·m
      'wheel/rim A',
      'wheel/rim B', // the only item that asks for a second look
      'taken off A',
      'hub/gap 146 mm A', // target
      'hub/width 1400 mm A',
    ]);
  });

  test('a season that does not keep its format is a bug, and the entry is named', async () => {
    await expect(expand('  - { day: -8, time: "18:00", by: A, fact: { kind: ran, minutes: many } }')).rejects.toThrow(
      'entry 1',
    );
  });

  test('is put into an empty book only', async () => {
    const { app } = await smallBench();
    expect(await app.seedDemo({ kart: SMALL_KART, season: season('  []') })).toBeUndefined();
  });
});
