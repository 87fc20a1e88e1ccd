import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { facts, minute } from '../../../test/random-kart.ts';
import { kartFrom, templateKarts } from '../../../test/template-karts.ts';
import { type Fact, fold, type KartEvent, type Payload } from '../../book/index.ts';
import type { Kart, KartFunction } from '../../kart/index.ts';
import { readPriors } from '../../life/index.ts';
import type { FaultTree } from '../fault-tree/index.ts';
import { fitness } from '../fitness.ts';
import { readRetentions } from '../retentions/index.ts';
import { hazardTree } from './hazard-tree.ts';
import { type Hazard, weakLinks } from './index.ts';
import { knownOf, looksOf } from './weak-links.ts';

const read = (file: string): string => readFileSync(new URL(`../../../data/${file}`, import.meta.url), 'utf8');
const retentions = readRetentions(read('retentions.yaml'));
const priors = readPriors(read('priors.yaml'));

/** A brake of few parts: pedal, one of two rods, two of three circuits. */
const FEW = `
parts:
  pedal: { kind: brake pedal, system: brakes }
  rod: { kind: brake push rod, system: brakes, joints: { lock nut: none } }
  link: { kind: brake second link, system: brakes }
  left: { kind: helmet, system: brakes }
  middle: { kind: helmet, system: brakes }
  right: { kind: helmet, system: brakes }
functions:
  stop:
    severity: 1
    hazard: no brakes
    needs: { all of: [pedal, { any of: [rod, link] }, { 2 of: [left, middle, right] }] }
`;
const brake = (over = ''): Kart => kartFrom(`${FEW}${over}`);
const noSecond = FEW.replace(
  'joints: { lock nut: none }',
  'joints: { lock nut: none, clevis pins: { second: none } }',
).replace('{ any of: [rod, link] }', 'rod');

const event: KartEvent = {
  pos: 0,
  fact: 'e',
  at: minute(0),
  by: 'A',
  minutes: 0,
  laps: 0,
  event: 'Round 1',
  from: minute(900),
  until: minute(2000),
  runMinutes: 120,
  runLaps: 60,
  wet: false,
};
const ask = (kart: Kart, book: readonly Fact[]) => ({
  now: minute(800),
  event,
  retentions,
  priors,
  books: [{ kart, facts: book }],
});
const hazardIn = (kart: Kart, book: readonly Fact[], name = 'stop'): Hazard => {
  const found = weakLinks(kart, fold(book), ask(kart, book)).hazards.find(one => one.function === name);
  if (!found) throw new Error(`kart must have ${name}`);
  return found;
};
const PINS = 'rod/clevis pins';
const made: Payload = { kind: 'made', joint: PINS };
/** A while goes by. */
const later: readonly Payload[] = Array.from({ length: 15 }, () => ({ kind: 'note', text: 'other work' }));
const looked: Payload = { kind: 'checked', item: PINS, result: 'pass', secondLook: true };

/** The truth by every state of the events, without the engine. */
function byStates(tree: FaultTree): { readonly top: number; readonly singles: readonly string[] } {
  const events = [...tree.events.keys()];
  const happens = (name: string, on: ReadonlySet<string>): boolean => {
    const gate = tree.gates.get(name);
    if (!gate) return on.has(name);
    const count = gate.inputs.filter(input => happens(input, on)).length;
    if (gate.op === 'atleast') return count >= gate.k;
    return gate.op === 'and' ? count === gate.inputs.length : count >= 1;
  };
  let top = 0;
  for (let state = 0; state < 1 << events.length; state++) {
    const on = new Set(events.filter((_, n) => state & (1 << n)));
    if (!happens(tree.top, on)) continue;
    top += events.reduce(
      (p, name) => p * (on.has(name) ? Number(tree.events.get(name)) : 1 - Number(tree.events.get(name))),
      1,
    );
  }
  return { top, singles: events.filter(name => happens(tree.top, new Set([name]))) };
}

describe('the tree of a function', () => {
  it('has the chance and the single points that trying every state gives', () => {
    const kart = brake();
    const made_ = hazardTree(kart, kart.functions.stop as KartFunction, looksOf(kart, fold([]), ask(kart, [])));
    const known = knownOf(made_);
    const truth = byStates(known);
    const found = hazardIn(kart, []);
    expect(known.events.size).toBeGreaterThan(10);
    expect(found.atLeast?.chance).toBeCloseTo(truth.top, 15);
    expect(found.singlePoints.map(({ id }) => id).sort()).toEqual([...truth.singles].sort());
    expect(truth.singles).toEqual(['pedal', 'pedal/pivot bolt, one hand']);
  });

  it('turns two of three into two that fail', () => {
    const few = brake(`lives: { helmet: { one in ten gone by: 2 h, half gone by: 6 h } }`);
    const kart = {
      ...few,
      functions: {
        stop: { ...few.functions.stop, needs: { kOf: 2, of: ['left', 'middle', 'right'].map(part => ({ part })) } },
      },
    } as Kart;
    const { cutSets, top, links, pairs } = hazardIn(kart, facts([{ kind: 'ran', minutes: 60 }]));
    expect(cutSets).toEqual({ count: 3, byOrder: [0, 3] });
    const p = links[0]?.likely?.chance ?? Number.NaN;
    expect(top?.chance).toBeCloseTo(3 * p * p * (1 - p) + p ** 3, 12);
    expect(pairs.map(({ ids }) => ids.toSorted().join(' + ')).toSorted()).toEqual([
      'left + middle',
      'left + right',
      'middle + right',
    ]);
    for (const { likely } of pairs) expect(likely?.chance).toBeCloseTo(p * p, 12);
    expect(top?.words).toMatch(/ in 100, between /);
  });

  it('counts a joint only where its part is lost by it', () => {
    const [sixSpeed] = templateKarts() as [Kart];
    const state = fold([]);
    const names = (of: string) =>
      [
        ...hazardTree(
          sixSpeed,
          sixSpeed.functions[of] as KartFunction,
          looksOf(sixSpeed, state, ask(sixSpeed, [])),
        ).events.keys(),
      ].filter(id => id.startsWith('axle/'));
    expect(names('keep each wheel').join()).toMatch(/bearing locking screws/);
    expect(names('keep each wheel').join()).not.toMatch(/sprocket carrier|disc carrier/);
    expect(names('stop').join()).toMatch(/disc carrier/);
    expect(names('keep running').join()).toMatch(/sprocket carrier/);
  });
});

describe('weak links', () => {
  it('say one clip stands between you and no brakes, with what it could have besides', () => {
    const [first] = hazardIn(kartFrom(noSecond), []).singlePoints;
    expect(first).toMatchObject({
      sort: 'joint',
      joint: PINS,
      part: 'rod',
      corner: 'whole',
      couldAdd: ['second clip', 'strap round the clevis'],
    });
    expect(first?.sentence).toBe('Nothing but spring clip stands between you and no brakes: rod, 2 × clevis pins.');
    expect(first?.place).toEqual({ x: 0, y: 0 });
  });

  it('show no whole chance where a part has neither record nor guess, and name it', () => {
    const { top, atLeast, unknown } = hazardIn(brake(), []);
    expect(top).toBeNull();
    expect(atLeast?.chance).toBeGreaterThan(0);
    expect(unknown.map(({ id }) => id)).toContain('pedal');
    expect(unknown.every(({ likely, unknown: why }) => likely === null && why !== null && why !== '')).toBe(true);
  });

  it('have a whole chance once the owner says how long each part lasts, and say that it is a guess', () => {
    const said = ['brake pedal', 'brake push rod', 'brake second link', 'helmet'];
    const lives = said.map(kind => `  ${kind}: { one in ten gone by: 30 h, half gone by: 90 h }\n`).join('');
    const { top, unknown } = hazardIn(brake(`lives:\n${lives}`), []);
    expect(unknown).toEqual([]);
    expect(top?.basis).toMatch(/starting guess/);
    expect(top && top.low < top.chance && top.chance < top.high).toBe(true);
  });

  it('give parts no number without an event, for there are no hours to fail in', () => {
    const kart = brake('lives: { brake pedal: { one in ten gone by: 30 h, half gone by: 90 h } }');
    const { event: _, ...now } = ask(kart, []);
    const [{ unknown }] = weakLinks(kart, fold([]), now).hazards as [Hazard];
    expect(unknown.find(({ id }) => id === 'pedal')?.unknown).toMatch(/No event ahead/);
  });

  it('give no number to a part that has failed, nor to a joint whose check has', () => {
    const kart = brake('lives: { brake pedal: { one in ten gone by: 30 h, half gone by: 90 h } }');
    const book = facts([
      { kind: 'ran', minutes: 60 },
      { kind: 'found', part: 'pedal', defect: 'crack', grade: 'safety' },
      { kind: 'checked', item: PINS, result: 'fail', why: 'clip bent' },
    ]);
    const unknown = new Map(hazardIn(kart, book).unknown.map(one => [one.id, one.unknown]));
    expect(unknown.get('pedal')).toMatch(/failed already/);
    expect(unknown.get(PINS)).toMatch(/Failed on .*clip bent/);
  });

  it('count a second that nobody looked at as perhaps gone, and each look brings the pair down to no less than its floor', () => {
    const kart = kartFrom(noSecond.replace('second: none', 'second: strap round the clevis'));
    const of = (...more: Payload[]) => {
      const { links } = hazardIn(kart, facts(more));
      const [first, second, hand] = ['first', 'second', 'one hand'].map(which =>
        links.find(({ id }) => id === `${PINS}, ${which}`),
      );
      const floor = hand?.likely?.chance ?? Number.NaN;
      return {
        floor,
        second: second?.likely?.chance,
        says: hand?.says,
        top: hazardIn(kart, facts(more)).atLeast?.chance ?? 1,
        first: first?.likely?.chance ?? 0,
      };
    };
    const [none, once, twice] = [of(), of(made), of(made, ...later, looked)];
    expect(none.says).toMatch(/not looked at since/);
    expect(once.says).toMatch(/looked at once/);
    expect(twice.says).toMatch(/looked at twice, by one person/);
    expect(none.second ?? 0).toBeGreaterThan(once.second ?? 1);
    expect(twice.floor).toBeLessThan(once.floor);
    expect(twice.top).toBeLessThan(once.top);
    expect(once.top).toBeLessThan(none.top);
    expect(twice.top).toBeGreaterThanOrEqual(twice.floor);
    const single = hazardIn(kartFrom(noSecond), []).atLeast?.chance ?? 0;
    expect(none.top).toBeLessThan(single);
  });

  it('are worth less by another person than by the same one', () => {
    const kart = kartFrom(noSecond.replace('second: none', 'second: strap round the clevis'));
    const by = (who: string) =>
      facts([made, looked]).map((fact, n) => (n === 1 ? { ...fact, by: who } : fact)) as Fact[];
    const floor = (book: readonly Fact[]) =>
      hazardIn(kart, book).links.find(({ sort, joint }) => sort === 'one hand' && joint === PINS)?.likely?.chance ?? 1;
    const first = facts([made])[0]?.by ?? '';
    expect(floor(by('Somebody else'))).toBeLessThan(floor(by(` ${first.toUpperCase()} `)));
  });

  it('never rise with a second retention, and never fall when a link is forgotten', () => {
    const single = hazardIn(kartFrom(noSecond), []);
    for (const second of retentions.retentions.filter(({ chance }) => chance.second !== undefined)) {
      const kart = kartFrom(noSecond.replace('second: none', `second: ${second.words[0]}`));
      const { atLeast } = hazardIn(kart, []);
      expect(atLeast?.chance ?? 1, second.name).toBeLessThanOrEqual(single.atLeast?.chance ?? 0);
    }
    for (const kart of templateKarts())
      for (const { links, atLeast, function: name } of weakLinks(kart, fold([]), ask(kart, [])).hazards)
        for (const { ifForgotten, ifPerfect, id } of links) {
          expect(ifForgotten, `${name} ${id}`).toBeGreaterThanOrEqual(atLeast?.chance ?? 1);
          expect(ifPerfect, `${name} ${id}`).toBeLessThanOrEqual((atLeast?.chance ?? 0) * (1 + 1e-12));
        }
  });

  it('do not depend on the order in which facts arrive, and change nothing of fitness', () => {
    const kart = kartFrom(noSecond.replace('second: none', 'second: strap round the clevis'));
    const book = facts([made, looked, { kind: 'ran', minutes: 20 }, { kind: 'loosened', joint: 'pedal/pivot bolt' }]);
    const before = fitness(kart, fold(book), { now: minute(800) });
    const straight = weakLinks(kart, fold(book), ask(kart, book));
    fc.assert(
      fc.property(fc.shuffledSubarray([...book], { minLength: book.length }), shuffled => {
        expect(weakLinks(kart, fold(shuffled), ask(kart, shuffled))).toEqual(straight);
      }),
      { numRuns: 10 },
    );
    expect(fitness(kart, fold(book), { now: minute(800) })).toEqual(before);
    expect(before.verdict).not.toBe('fit');
  });

  it('of every template are complete, worst first, without a whole that hangs on what nobody knows', () => {
    for (const kart of templateKarts()) {
      const { hazards } = weakLinks(kart, fold([]), ask(kart, []));
      expect(hazards.map(one => one.function).sort()).toEqual(Object.keys(kart.functions).sort());
      expect(hazards.map(({ severity }) => severity)).toEqual(hazards.map(({ severity }) => severity).toSorted());
      for (const { cutSets, singlePoints, top, unknown } of hazards) {
        expect(singlePoints.length).toBe(cutSets?.byOrder[0]);
        expect(top === null).toBe(unknown.length > 0);
      }
    }
  });
});
