/** A torque for a joint whose maker's figure is not at hand: computed, and said to be. */

import { scatterOf } from './scatter.ts';
import { isStrength, type Strength, strengthOf } from './strength.ts';
import { pitchDiameter, stressArea } from './stress-area.ts';
import { isThread, readThread, type Thread } from './thread.ts';
import { preloadAtYield, torqueByNutFactor } from './torque.ts';

export type JointTorque = {
  readonly min: number; // N·m, of the joint itself: the running torque of a locking nut comes on top
  readonly max: number; // N·m
  readonly source: string; // begins with 'computed'
  readonly notes: readonly string[];
};
export type NoJointTorque = { readonly expected: string; readonly remedy: string; readonly of: 'thread' | 'class' };
export type Lubrication = 'dry' | 'oiled';

export const isJointTorque = (read: JointTorque | NoJointTorque): read is JointTorque => 'max' in read;

/** Nut factor taken for a range: dry 0.20, oiled 0.15. Source: nut-factor. */
export const NUT_FACTOR: Readonly<Record<Lubrication, number>> = { dry: 0.2, oiled: 0.15 };
/** The lower end of the range as a share of its upper end (common practice). */
const LOWER_END = 0.85;
/** Friction at which yield in tension and twist is worked out; lower friction twists the bolt less. */
const FRICTION = 0.12;

/**
 * The range to pull a steel bolt to, from its thread and its class alone.
 *   Tmax = K d FM(90 % of yield) / (1 + Γ);  Tmin = 0.85 Tmax
 * so that even the preload at the upper end of the scatter Γ of a torque wrench stays below 90 % of yield in tension and
 * twist. Where it is not known whether the thread is dry, it is taken as oiled: a dry figure on an oiled thread
 * overstretches the bolt. Valid for a bolt through steel; a clamp on a thin casting or a tube takes less.
 * Source: vdi-2230 (FM), preload-scatter (Γ), nut-factor (K), common practice (0.85).
 */
export function jointTorque(o: {
  readonly thread: string;
  readonly propertyClass: string;
  readonly lubricated?: boolean;
  readonly lockingNut?: boolean;
}): JointTorque | NoJointTorque {
  const thread = readThread(o.thread);
  if (!isThread(thread)) return { ...thread, of: 'thread' };
  const strength = strengthOf(o.propertyClass, thread);
  if (!isStrength(strength)) return { ...strength, of: 'class' };
  const state: Lubrication = o.lubricated === false ? 'dry' : 'oiled';
  const { min, max } = torqueRange(thread, strength, state);
  return {
    min,
    max,
    source: `computed from ${thread.name} ${strength.mark}, not the maker's figure`,
    notes: [
      `${o.lubricated === undefined ? 'Taken as oiled, because it is not known to be dry' : `For ${state === 'dry' ? 'a dry' : 'an oiled'} thread`}. The manual of the part wins; a thread in aluminium, a clamp on a thin casting or a tube takes less.`,
      ...(o.lockingNut === true ? ['Add the running torque of the locking nut, measured before it seats.'] : []),
      ...doubts(thread, strength),
    ],
  };
}

/** The range itself [N·m]. */
export function torqueRange(
  thread: Thread,
  strength: Strength,
  state: Lubrication,
): { readonly min: number; readonly max: number } {
  const preload = highestPreload(thread, strength);
  const scatter = scatterOf('torque wrench', state === 'oiled') ?? Number.NaN;
  const max = torqueByNutFactor({
    factor: NUT_FACTOR[state],
    diameter: thread.diameter,
    preload: preload / (1 + scatter),
  });
  return { min: LOWER_END * max, max };
}

/** Preload at a share of yield, 90 % unless said otherwise, in tension and twist [N]. */
export const highestPreload = (thread: Thread, strength: Strength, share = 0.9, friction = FRICTION): number =>
  preloadAtYield({
    area: stressArea(thread),
    pitchDiameter: pitchDiameter(thread),
    pitch: thread.pitch,
    yield: strength.yield,
    share,
    threadFriction: friction,
  });

/** Where thread or class lies outside what the formulas were checked for. */
export function doubts(thread: Thread, strength: Strength): readonly string[] {
  return [
    ...(thread.diameter < 0.005 - 1e-9 || thread.diameter > 0.016 + 1e-9
      ? [`Outside the range this was checked for: ${thread.name}; M5 to M16 were.`]
      : []),
    ...(strength.seen === 'memory' ? [`The strength of ${strength.mark} is from memory, not from the standard.`] : []),
    ...(strength.mark.startsWith('A')
      ? [
          'Stainless threads seize: use an anti-seize paste. Dry, their nut factor is 0.30 to 0.50 and the preload much lower.',
        ]
      : []),
    ...(thread.series === 'unified' && strength.ultimate > 690e6
      ? ['For inch bolts this strong a slightly smaller stress area is used: the loads are a little high.']
      : []),
  ];
}
