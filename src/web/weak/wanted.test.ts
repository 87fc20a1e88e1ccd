import { expect, test } from 'vitest';
import { facts } from '../../../test/random-kart.ts';
import { smallKart } from '../../../test/small-kart.ts';
import { fold, type Payload } from '../../book/index.ts';
import { wantedIn } from './wanted.ts';

const kart = smallKart();
const BOLTS = 'hub/bolts';
const file: Payload = { kind: 'kart filed', text: 'kart: 1' };
const want: Payload = { kind: 'look asked', items: [BOLTS], why: 'wanted', second: 'strap' };
const wanted = (...said: readonly Payload[]) => wantedIn({ kart, state: fold(facts(said)) });

test('what was made a job is in the plan until its joint is made, and can be taken back whole', () => {
  expect(wanted(file, file, want)).toEqual([
    { joint: BOLTS, retention: 'strap', step: `torque ${BOLTS}`, takeBack: ['f2', 'f1'] },
  ]);
  expect(wanted(file, file, want, { kind: 'made', joint: BOLTS })).toEqual([]);
  const back: Payload[] = ['f2', 'f1'].map(fact => ({ kind: 'struck', fact, why: 'taken back' }));
  expect(wanted(file, file, want, ...back)).toEqual([]);
});
test('after another kart file there is no taking back, for that names it too', () => {
  expect(wanted(file, file, want, file)).toMatchObject([{ takeBack: undefined }]);
});
test('a look asked for without a second retention is no job of this kind', () => {
  expect(wanted(file, { kind: 'look asked', items: [BOLTS], why: 'failed elsewhere' })).toEqual([]);
});
