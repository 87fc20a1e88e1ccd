/** The hold of a hub worked out in numbers, before it is put into figures and words. */
import { type Clamp, type Contact, type Demand, leastPreload, slipMargin } from './clamp.ts';
import { FILMS, type Film, FRICTION, NUT_FACTOR, SCATTER } from './friction.ts';
import type { Input } from './input.ts';
import { hubTorque, type OfWheel, rearLoads, sideLeft, sideLoad, USUAL_LOADS, WHEELS, type Wheel } from './loads.ts';

/** Cases, each held against the seat by itself; `together` is a corner with the larger torque, one grip for both. */
export const CASES = ['side', 'braking', 'drive', 'together'] as const;
export type Case = (typeof CASES)[number];
export type Cases = Readonly<Partial<Record<Case, Demand>>>;

export type Worked = {
  readonly input: Input;
  readonly preload: number; // least of one bolt [N]
  readonly force: number; // least of all bolts [N]
  readonly clamp: Readonly<Record<Film, Clamp>>;
  readonly loads: OfWheel<number>; // static on the tyre [N]
  readonly sideFactor: number;
  readonly demands: OfWheel<Cases>;
  readonly wanted: number; // margin
  readonly assumed: readonly string[];
};

export function work(input: Input): Worked {
  const assumed: string[] = [];
  const or = (path: keyof Input & keyof typeof WORDS, usual: number): number => {
    const given = input[path];
    if (given !== undefined) return given.si;
    assumed.push(`${WORDS[path]} ${usual}`);
    return usual;
  };
  const diameter = input['axle diameter'].si;
  const preload =
    input.preload?.si ??
    leastPreload({
      torque: input['bolt torque']?.si ?? Number.NaN,
      running: input['running torque']?.si ?? 0,
      nutFactor: or('nut factor', NUT_FACTOR),
      diameter: input['bolt diameter']?.si ?? Number.NaN,
      scatter: or('scatter', SCATTER),
    });
  const force = preload * input.bolts.si;
  const contact: Contact = input.contact ?? 'two lines';
  const friction = { clean: or('friction clean', FRICTION.clean), film: or('friction film', FRICTION.film) };
  const clampOf = (film: Film): Clamp => ({ force, friction: friction[film], diameter, contact });
  const [outer, inner] = [input['outer wheel load'], input['inner wheel load']];
  const loads =
    outer && inner
      ? { outer: outer.si, inner: inner.si }
      : rearLoads(input.mass?.si ?? Number.NaN, or('rear share', USUAL_LOADS.rearShare));
  const grip = or('tyre grip', USUAL_LOADS.grip);
  const sideFactor = or('dynamic factor', USUAL_LOADS.sideFactor);
  const torqueFactor = or('torque factor', USUAL_LOADS.torqueFactor);
  const drive = driveTorque(input);
  const rolling = input['tyre diameter'];
  const demandsOf = (wheel: Wheel): Cases => {
    // Without a tyre to slip, only a torque that was given is known.
    const tyre = { load: loads[wheel], grip, radius: rolling ? rolling.si / 2 : Number.POSITIVE_INFINITY };
    const known = [input['brake torque']?.si ?? (rolling && Number.POSITIVE_INFINITY), drive];
    const [braking, driven] = known.map(axle => axle && torqueFactor * hubTorque(axle, 0.5, tyre));
    const inCorner = known.map(axle => (axle ? hubTorque(axle, wheel === 'outer' ? 1 : 0.5, tyre) : 0));
    const most = Math.max(...inCorner);
    return {
      side: { torque: 0, axial: sideLoad(loads[wheel], grip, sideFactor) },
      ...(braking && { braking: { torque: braking, axial: 0 } }),
      ...(driven && { drive: { torque: driven, axial: 0 } }),
      ...(most > 0 && { together: { torque: torqueFactor * most, axial: sideFactor * sideLeft(most, tyre) } }),
    };
  };
  return {
    input,
    preload,
    force,
    clamp: { clean: clampOf('clean'), film: clampOf('film') },
    loads,
    sideFactor,
    demands: { outer: demandsOf('outer'), inner: demandsOf('inner') },
    wanted: or('wanted margin', USUAL_LOADS.margin),
    assumed,
  };
}

const WORDS = {
  'nut factor': 'nut factor',
  scatter: 'scatter of preload ±',
  'friction clean': 'friction clean',
  'friction film': 'friction with a film',
  'rear share': 'share of weight at the rear',
  'tyre grip': 'tyre grip',
  'dynamic factor': 'dynamic factor on the side load',
  'torque factor': 'factor on torque',
  'wanted margin': 'wanted margin',
} as const;

/** Engine torque at the axle [N·m]. */
const driveTorque = (input: Input): number | undefined => {
  const [engine, ratio] = [input['engine torque'], input['overall ratio']];
  return engine && ratio ? engine.si * ratio.si * (input['driveline efficiency']?.si ?? 1) : undefined;
};

/** The smallest margin of a film over both wheels and the cases wanted, with where it is. */
export function least(
  worked: Worked,
  film: Film,
  cases: readonly Case[],
): { readonly margin: number; readonly wheel: Wheel; readonly case: Case } | undefined {
  const all = WHEELS.flatMap(wheel =>
    cases.flatMap(each => {
      const demand = worked.demands[wheel][each];
      return demand ? [{ margin: slipMargin(worked.clamp[film], demand), wheel, case: each }] : [];
    }),
  );
  return all.sort((a, b) => a.margin - b.margin)[0];
}

export { FILMS, WHEELS };
