import { expect, test } from 'vitest';
import { fold } from '../../book/index.ts';
import { demoText, kartReader, libraryFiles } from '../../host/index.ts';
import { SYSTEMS } from '../../kart/index.ts';
import { jointsOf, mapOfJoints } from './of-system.ts';

const read = await kartReader(libraryFiles()).read(demoText().kart);
if (!read.ok) throw new Error(read.problems.map(p => p.message).join('\n'));
const kart = read.kart;
const state = fold([]);

test('the systems together hold every joint of the kart once, and each stands at one numbered place', () => {
  const lines = SYSTEMS.flatMap(system => jointsOf(kart, state, system));
  expect(lines.map(({ joint }) => joint.id).toSorted()).toEqual(Object.keys(kart.joints).toSorted());
  for (const system of SYSTEMS) {
    const own = jointsOf(kart, state, system);
    expect(mapOfJoints(kart, own).flatMap(mark => mark.lines)).toHaveLength(own.length);
  }
});

test('a joint with a second retention, one without, one of a part that lies off are told apart', () => {
  const kindOf = (id: string, of = state) =>
    jointsOf(kart, of, 'axle and hubs').find(({ joint }) => joint.id === id)?.kind;
  expect(kindOf('rear hub left/pinch bolts')).toBe('together');
  const off = {
    ...state,
    parts: { 'rear hub left': { on: false, ageMinutes: 0, ageLaps: 0, sinceMinutes: 0, sinceLaps: 0 } },
  };
  expect(kindOf('rear hub left/pinch bolts', off)).toBe('off');
  const bare = Object.values(kart.joints).filter(({ second }) => second === undefined);
  const alone = SYSTEMS.flatMap(system => jointsOf(kart, state, system)).filter(({ kind }) => kind === 'retention');
  expect(alone).toHaveLength(bare.length);
});
