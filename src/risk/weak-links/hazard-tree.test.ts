import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { facts, minute } from '../../../test/random-kart.ts';
import { kartFrom } from '../../../test/template-karts.ts';
import { fold, type Payload } from '../../book/index.ts';
import type { Kart, Need } from '../../kart/index.ts';
import { readPriors } from '../../life/index.ts';
import { readRetentions } from '../retentions/index.ts';
import { hazardTree } from './hazard-tree.ts';
import { looksOf, weakLinks } from './weak-links.ts';

const read = (file: string): string => readFileSync(new URL(`../../../data/${file}`, import.meta.url), 'utf8');
const ask = {
  now: minute(9000),
  retentions: readRetentions(read('retentions.yaml')),
  priors: readPriors(read('priors.yaml')),
};
const STRAP = 'clevis pins: { second: strap round the clevis }';
const base = kartFrom(`
parts:
  pedal: { kind: brake pedal, system: brakes }
  left: { kind: brake push rod, system: brakes, joints: { lock nut: none, ${STRAP} } }
  right: { kind: brake push rod, system: brakes, joints: { lock nut: none, ${STRAP} } }
`);
/** Of it a kart that needs this; parts named in `pumps` are master cylinders that nothing holds. */
const needing = (needs: Need, pumps: readonly string[] = []): Kart => ({
  ...base,
  parts: Object.fromEntries(
    Object.entries(base.parts).map(([id, part]) => [
      id,
      pumps.includes(id) ? { ...part, kind: 'master cylinder', joints: [] } : part,
    ]),
  ),
  functions: { stop: { name: 'stop', severity: 1, hazard: 'no brakes', needs } },
});
const [pedal, left, right] = ['pedal', 'left', 'right'].map(part => ({ part })) as [Need, Need, Need];

const hazardOf = (kart: Kart, ...said: Payload[]) => {
  const [hazard] = weakLinks(kart, fold(facts(said)), ask).hazards;
  if (!hazard) throw new Error('the kart needs something');
  return hazard;
};
const treeOf = (kart: Kart) => {
  const fn = kart.functions.stop;
  if (!fn) throw new Error('the kart needs something');
  return hazardTree(kart, fn, looksOf(kart, fold([]), ask)).tree;
};
const enough = (kart: Kart, sort = 'part') =>
  hazardOf(kart)
    .singlePoints.filter(one => one.sort === sort)
    .map(({ id }) => id);

describe('what a function needs, turned round', () => {
  it('names in every gate only what the tree holds, and one gate for each thing', () => {
    const { gates, events } = treeOf(needing({ allOf: [pedal, { anyOf: [left, right] }] }));
    for (const [name, { inputs }] of gates)
      for (const input of inputs) expect(gates.has(input) || events.has(input), `${name}: ${input}`).toBe(true);
    const pins = ['left', 'right'].map(part => `both let go: ${part}/clevis pins`);
    expect(pins.map(name => gates.get(name)?.inputs)).toEqual(
      ['left', 'right'].map(part => [`${part}/clevis pins, first`, `${part}/clevis pins, second`]),
    );
  });

  it('keeps needs inside needs apart', () => {
    const both: Need = { allOf: [left, right] };
    const either: Need = { anyOf: [left, right] };
    expect(enough(needing({ anyOf: [both, pedal] }))).toEqual([]);
    expect(enough(needing({ allOf: [either, pedal] }))).toEqual(['pedal']);
    expect(enough(needing({ anyOf: [both, either] }))).toEqual([]);
    expect(enough(needing({ allOf: [either, both] }))).toEqual(['left', 'right']);
    expect(enough(needing({ allOf: [{ allOf: [either] }, { allOf: [pedal] }] }))).toEqual(['pedal']);
  });

  it('counts a part that is named twice among many twice: two of left, left and right stand and fall with left', () => {
    expect(enough(needing({ kOf: 2, of: [left, left, right] }))).toEqual(['left']);
    expect(enough(needing({ kOf: 2, of: [left, pedal, right] }))).toEqual([]);
    expect(enough(needing({ kOf: 3, of: [left, pedal, right] }))).toEqual(['left', 'pedal', 'right']);
  });
});

describe('two retentions of a joint', () => {
  it('have no number where nobody guessed how the first does, and say so, each in its words', () => {
    const kart = needing(left);
    const pins = kart.joints['left/clevis pins'];
    if (!pins) throw new Error('the kart has it');
    const unknown = 'Nobody guessed how often "good will" lets go.';
    const joints = { ...kart.joints, [pins.id]: { ...pins, retention: 'good will' } };
    const hazard = hazardOf({ ...kart, joints });
    expect(hazard.unknown.map(one => [one.id, one.likely, one.unknown])).toEqual([
      ['left', null, expect.stringMatching(/^No event ahead/)],
      ['left/clevis pins, first', null, unknown],
      ['left/clevis pins, second', expect.objectContaining({ chance: expect.any(Number) }), null],
      ['left/clevis pins, one hand', null, unknown],
    ]);
  });
});

describe('what parts share', () => {
  it('takes only those of its kinds with it', () => {
    expect(enough(needing({ anyOf: [left, right] }, ['left', 'right']), 'shared')).toEqual([
      'the brake fluid',
      'the mounting of the pumps',
    ]);
    expect(enough(needing({ anyOf: [left, pedal] }, ['left']), 'shared')).toEqual([]); // the pedal needs no fluid
  });

  it('is there only where there are as many of its kinds as it takes', () => {
    const { singlePoints } = hazardOf(needing({ allOf: [left, pedal] }, ['left']));
    expect(singlePoints.filter(({ sort }) => sort === 'shared').map(({ id }) => id)).toEqual(['the brake fluid']);
  });
});
