/** A bolt worked out in numbers, before it is put into figures and words. */
import type { InputProblem } from '../subject.ts';
import type { Input } from './input.ts';
import { highestPreload, type Lubrication, NUT_FACTOR, torqueRange } from './joint-torque.ts';
import { type Method, preloadRange, scatterOf } from './scatter.ts';
import { isStrength, proofLoad, type Strength, strengthOf, ultimateLoad } from './strength.ts';
import { pitchDiameter, stressArea } from './stress-area.ts';
import { headOf, LEAST_RUNNING_TORQUE, POUND_INCH } from './tables.ts';
import { isThread, readThread, type Thread } from './thread.ts';
import {
  meanBearing,
  preloadByNutFactor,
  releaseTorque,
  type Turning,
  tighteningTorque,
  torqueByNutFactor,
  unwindingMoment,
} from './torque.ts';

export type Range = { readonly min: number; readonly max: number };
export type Worked = {
  readonly input: Input;
  readonly thread: Thread;
  readonly strength?: Strength;
  readonly state: Lubrication;
  readonly method: Method;
  readonly area: number; // m²
  readonly proof?: number; // N
  readonly ultimate?: number; // N
  readonly highest?: { readonly preload: number; readonly torque?: number }; // at the share of yield
  readonly range?: Range; // torque to pull to [N·m]
  /** What the torque or preload that was given comes to. */
  readonly made?: {
    readonly torque: number;
    readonly preload: number;
    readonly reach?: Range; // with the scatter of the method; none by feel
    readonly release?: number;
    readonly unwinding: number;
  };
  readonly oiledByDryFigure?: { readonly preload: number; readonly meant: number; readonly tableTorque: number };
  readonly running: number; // N·m
  readonly leastRunning?: number; // N·m, of a locking nut used again
};

export function work(input: Input, thread: Thread, strength: Strength | undefined): Worked {
  const state: Lubrication = input.threads ?? 'oiled';
  const method = input.method ?? 'torque wrench';
  const area = stressArea(thread);
  const share = input['yield share']?.si ?? 0.9;
  const friction = input['thread friction']?.si ?? 0.12;
  const turning = turningOf(input, thread, friction);
  const highest = strength && highestPreload(thread, strength, share, friction);
  const least = LEAST_RUNNING_TORQUE[thread.name];
  return {
    input,
    thread,
    state,
    method,
    area,
    ...(strength && {
      strength,
      proof: proofLoad(strength, area),
      ultimate: ultimateLoad(strength, area),
      range: torqueRange(thread, strength, state),
    }),
    ...(highest !== undefined && {
      highest: { preload: highest, ...(turning && { torque: tighteningTorque({ ...turning, preload: highest }) }) },
    }),
    ...made(input, thread, state, method, turning),
    ...dryFigure(input, thread),
    running: input['running torque']?.si ?? 0,
    ...(least !== undefined && { leastRunning: least * POUND_INCH }),
  };
}

/** Friction that was given decides by the long form; else the nut factor does. */
function made(
  input: Input,
  thread: Thread,
  state: Lubrication,
  method: Method,
  turning: Omit<Turning, 'preload'> | undefined,
): Pick<Worked, 'made'> {
  const { diameter } = thread;
  if (input.torque === undefined && input.preload === undefined) return {};
  const long = input['thread friction'] !== undefined && input['nut factor'] === undefined && turning !== undefined;
  const factor = input['nut factor']?.si ?? NUT_FACTOR[state];
  const perNewton = long
    ? tighteningTorque({ ...turning, preload: 1 })
    : torqueByNutFactor({ factor, diameter, preload: 1 });
  const preload = input.preload?.si ?? (input.torque?.si ?? Number.NaN) / perNewton;
  const torque = preload * perNewton;
  const reach = preloadReach(input, method, { torque, preload, factor, diameter, long });
  return {
    made: {
      torque,
      preload,
      ...(reach && { reach }),
      ...(turning && { release: releaseTorque({ ...turning, preload }) }),
      unwinding: unwindingMoment({ preload, pitch: thread.pitch }),
    },
  };
}

/**
 * Least and largest preload. Where nothing is known of the threads, the least is that of dry ones and the largest that of
 * oiled ones: not to know falls on the safe side of slip and of strength.
 */
function preloadReach(
  input: Input,
  method: Method,
  o: { torque: number; preload: number; factor: number; diameter: number; long: boolean },
): Range | undefined {
  const of = (state: Lubrication, preload: number): Range | undefined => {
    const scatter = scatterOf(method, state === 'oiled');
    if (scatter === undefined) return undefined;
    // Limits of a measured factor take the place of the scatter of the method where they are wider.
    const spread = Math.max(scatter, (input['nut factor']?.half ?? 0) / o.factor);
    return preloadRange(preload, spread);
  };
  if (input.threads !== undefined) return of(input.threads, o.preload);
  const by = (state: Lubrication): number =>
    input['nut factor'] !== undefined || o.long
      ? o.preload
      : preloadByNutFactor({ factor: NUT_FACTOR[state], diameter: o.diameter, torque: o.torque });
  const [dry, oiled] = [of('dry', by('dry')), of('oiled', by('oiled'))];
  return dry && oiled && { min: dry.min, max: Math.max(dry.max, oiled.max) };
}

/** The same torque on an oiled thread; the table rule takes 10 % off a dry torque for engine oil. Source: army-lubricated. */
function dryFigure(input: Input, { diameter }: Thread): Pick<Worked, 'oiledByDryFigure'> {
  const torque = input['dry figure']?.si;
  if (torque === undefined) return {};
  return {
    oiledByDryFigure: {
      meant: preloadByNutFactor({ factor: NUT_FACTOR.dry, diameter, torque }),
      preload: preloadByNutFactor({ factor: NUT_FACTOR.oiled, diameter, torque }),
      tableTorque: 0.9 * torque,
    },
  };
}

function turningOf(input: Input, thread: Thread, friction: number): Omit<Turning, 'preload'> | undefined {
  const head = headOf(thread.diameter);
  const face = input['face diameter']?.si ?? head?.face;
  const hole = input['hole diameter']?.si ?? head?.hole;
  if (face === undefined || hole === undefined) return undefined;
  return {
    pitch: thread.pitch,
    pitchDiameter: pitchDiameter(thread),
    bearingDiameter: meanBearing({ face, hole }),
    threadFriction: friction,
    headFriction: input['head friction']?.si ?? friction,
  };
}

/** Everything in the question that cannot be, at once. */
export function read(
  input: Input,
): { readonly thread: Thread; readonly strength?: Strength } | { readonly problems: readonly InputProblem[] } {
  const thread = readThread(input.thread);
  const found: InputProblem[] = [];
  if (!isThread(thread))
    found.push({ path: 'thread', expected: thread.expected, got: `"${input.thread}"`, remedy: thread.remedy });
  // A thread that does not exist still tells metric from inch, so that a wrong class is named with it.
  const series = /^\s*m/i.test(input.thread) ? 'metric' : 'unified';
  const strength =
    input.class === undefined
      ? undefined
      : strengthOf(input.class, isThread(thread) ? thread : { series, diameter: 0.008 });
  if (strength && !isStrength(strength))
    found.push({ path: 'class', expected: strength.expected, got: `"${input.class}"`, remedy: strength.remedy });
  found.push(...ranges(input), ...(isThread(thread) ? diameters(input, thread) : []));
  if (found.length > 0 || !isThread(thread)) return { problems: found };
  return { thread, ...(strength && isStrength(strength) && { strength }) };
}

function ranges(input: Input): readonly InputProblem[] {
  const found: InputProblem[] = [];
  const check = (path: keyof Input, good: (si: number) => boolean, expected: string, remedy: string): void => {
    const value = input[path];
    if (typeof value === 'object' && !good(value.si)) found.push({ path, expected, got: value.text, remedy });
  };
  for (const path of ['torque', 'preload', 'dry figure', 'running torque'] as const)
    check(path, si => si > 0, 'more than 0', 'write it without a sign, or leave it out');
  for (const path of ['thread friction', 'head friction'] as const)
    check(path, si => si > 0 && si < 1, 'between 0 and 1, usually 0.08 to 0.20', 'write for example "0.12"');
  check('nut factor', si => si > 0 && si < 1, 'between 0 and 1, usually 0.10 to 0.35', 'write for example "0.20"');
  const factor = input['nut factor'];
  if (factor?.half !== undefined && factor.half >= factor.si)
    found.push({
      path: 'nut factor',
      expected: 'limits smaller than the value',
      got: factor.text,
      remedy: 'write for example "0.20 ± 0.02"',
    });
  check('yield share', si => si > 0 && si <= 1, 'over 0 % up to 100 %', 'write for example "90 %"');
  if (input.torque && input.preload)
    found.push({
      path: 'preload',
      expected: 'a torque or a preload',
      got: 'both',
      remedy: 'leave one out: each gives the other',
    });
  return found;
}

function diameters(input: Input, thread: Thread): readonly InputProblem[] {
  const found: InputProblem[] = [];
  const hole = input['hole diameter'];
  const face = input['face diameter'];
  const size = `${+(thread.diameter * 1000).toFixed(2)} mm`;
  if (hole && hole.si < thread.diameter)
    found.push({
      path: 'hole diameter',
      expected: `${size} or more: the bolt goes through it`,
      got: hole.text,
      remedy: 'give the diameter, not the radius',
    });
  const through = hole?.si ?? headOf(thread.diameter)?.hole ?? thread.diameter;
  if (face && !(face.si > through))
    found.push({
      path: 'face diameter',
      expected: `more than the hole, ${+(through * 1000).toFixed(2)} mm`,
      got: face.text,
      remedy: 'give the outer diameter of the face; exchange the two if they were swapped',
    });
  return found;
}
