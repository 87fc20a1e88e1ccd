/** What is said before and after a session, written as the facts it is: all of them or none. */
import { Option } from 'commander';
import { type Problem, Refusal } from '../../app/index.ts';
import { TYRES, type Tyre } from '../../book/index.ts';
import { type AfterSaid, afterSession, coldSet, type PressuresSaid } from '../../prep/index.ts';
import { TYPED } from '../kinds.ts';
import type { Session } from '../session.ts';
import { type Given, payloadOf, type Ready } from '../typed.ts';
import type { World } from '../world.ts';
import { type Writing, write } from './log.ts';
import type { Done } from './track.ts';

export async function setTyres(world: World, on: Session, words: readonly string[], options: Writing): Promise<void> {
  const cold = pressuresOf(words, 'track set');
  if (cold.problems.length > 0) throw new Refusal(cold.problems);
  await write(world, on, coldSet(await on.app.kart(on.kart), cold.said), options);
}

export async function sessionDone(world: World, on: Session, options: Done): Promise<void> {
  const { hot: hotWords = [], treads: treadWords, plug, fuel } = options;
  const hands = { world, app: on.app };
  const hot = pressuresOf(hotWords, '--hot');
  const read = await Promise.all([
    payloadOf('ran', TYPED.ran, [], ranGiven(options), hands),
    fuel === undefined ? NOTHING : payloadOf('fuel used', TYPED['fuel used'], [fuel], [], hands),
    treadWords === undefined ? NOTHING : payloadOf('treads probed', TYPED['treads probed'], treadWords, [], hands),
  ]);
  const problems = [...read.flatMap(one => (one.ok ? [] : one.problems)), ...hot.problems];
  if (problems.length > 0) throw new Refusal(problems);
  const [ran, used, treads] = read.map((one): Readonly<Record<string, unknown>> => (one.ok ? one.payload : {}));
  // What is missing or wrong in them is the app's to say, with everything else.
  const said = { ran, hot: hot.said, plug, litres: used?.litres, treads: treads?.celsius } as AfterSaid;
  await write(world, on, afterSession(await on.app.kart(on.kart), said), options);
}

const NOTHING: Ready = { ok: true, payload: {} };

/** Those options of `log ran` that were given; some of them `track` itself knows too, and has read already. */
const ranGiven = (options: Done): readonly Given[] =>
  TYPED.ran.options.flatMap(option => {
    const value = (options as Readonly<Record<string, unknown>>)[new Option(option.flag).attributeName()];
    return value === undefined ? [] : [{ option, value: value === true ? true : String(value) }];
  });

/** `front left=0.62 bar`, once a tyre. */
function pressuresOf(words: readonly string[], where: string): { said: PressuresSaid; problems: readonly Problem[] } {
  const said: Partial<Record<Tyre, string>> = {};
  const problems: Problem[] = [];
  for (const word of words) {
    const [, name = '', text = ''] = /^\s*(.*?)\s*=\s*(.+?)\s*$/.exec(word) ?? [];
    const tyre = TYRES.find(one => one === name.toLowerCase());
    if (tyre === undefined || said[tyre] !== undefined)
      problems.push({
        code: 'wrong shape',
        where,
        message: `Expected each tyre once with its pressure, got "${word}".`,
        remedy: `Write it like "front left=0.62 bar". Tyres: ${TYRES.join(', ')}.`,
      });
    else said[tyre] = text;
  }
  return { said, problems };
}
