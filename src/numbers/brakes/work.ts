/** The brakes worked out in numbers, before they are put into figures and words. */
import { frontLocks, idealFrontShare, type Kart, rearLifts, rearLocks, weightOf } from './balance.ts';
import {
  barOffset,
  barShare,
  barShareFor,
  caliperTorque,
  masterPressure,
  pedalRatio,
  pistonArea,
  radiusEvenWear,
} from './hydraulics.ts';
import type { Circuit, Input } from './input.ts';
import { type Stop, stopEnergy, temperatureRise, type Wear } from './stop.ts';

export const ENDS = ['front', 'rear'] as const;
export type End = (typeof ENDS)[number];

/** Usual values: efficiency, rotating share, specific heat from memory; the pad limit is common practice. */
const USUAL = { efficiency: 0.95, rotating: 0.04, padLimit: 0.002 } as const;
const SPECIFIC_HEAT = 460; // J/(kg·K), steel and iron

export type Braked = {
  readonly pressure: number; // gauge [Pa]
  readonly torque: number; // of one caliper [N·m]
  readonly force: number; // at the ground, whole axle [N]
  readonly discs: number;
};
export type Worked = {
  readonly input: Input;
  readonly kart: Kart;
  readonly ends: Readonly<Partial<Record<End, Braked>>>;
  readonly share: number; // front share of the brakes' force [1]
  readonly asked: number; // deceleration the pedal asks for [g]
  readonly locks: Readonly<Record<End, number>>; // [g]
  readonly lifts: number; // [g]
  readonly first: End;
  readonly reached: number; // deceleration without locking a wheel [g]
  readonly pedalAtLock: number; // [N]
  readonly ideal: number; // front share of the brakes that uses both axles fully [1]
  readonly bar?: { readonly share: number; readonly wanted: number; readonly offset: number; readonly move: number };
  readonly stop?: Stop;
  readonly energy: number; // of the whole stop [J], not a number without one
  readonly heat: Readonly<Partial<Record<End, number>>>; // [K]
  readonly wear: readonly (Wear & { readonly name: string; readonly known: boolean })[];
  readonly assumed: readonly string[];
};

export function work(input: Input): Worked {
  const { wheelbase, mass } = input;
  const kart: Kart = {
    wheelbase: wheelbase.si,
    ahead: input['front load share'].si * wheelbase.si,
    height: input['centre height'].si,
  };
  const weight = weightOf(mass.si);
  const [spacing, offset] = [input['bar spacing'], input['bar offset']];
  const onFront = spacing && offset ? barShare(spacing.si, offset.si) : 0;
  const rod = input['pedal force'].si * ratioOf(input) * (input.efficiency?.si ?? USUAL.efficiency);
  const friction = input['pad friction'].si;
  const rear = braked(input.rear, rod * (1 - onFront), friction, 1);
  const front = input.front && braked(input.front, rod * onFront, friction, 2);
  const brakes = rear.force + (front?.force ?? 0);
  const share = (front?.force ?? 0) / brakes;
  const grip = input['tyre grip'].si;
  const drag = (input['engine drag']?.si ?? 0) / weight;
  const asked = brakes / weight + drag;
  const locks = {
    front: frontLocks(kart, { frontShare: share, grip, drag }),
    rear: rearLocks(kart, { frontShare: share, grip, drag }),
  };
  const first: End = locks.front < locks.rear ? 'front' : 'rear';
  const lifts = rearLifts(kart);
  const atLock = Math.min(locks[first], lifts);
  const reached = Math.min(asked, atLock);
  // Both axles at their grip at z = grip; the engine takes its part of the rear.
  const ideal = Math.min(1, (grip * idealFrontShare(kart, grip)) / Math.max(1e-9, grip - drag));
  const gain = front && {
    front: front.force / (rod * onFront),
    rear: rear.force / (rod * (1 - onFront)),
  };
  const wanted = gain && barShareFor(ideal, gain);
  const stop = input.speed && { from: input.speed.si, to: input['speed after']?.si ?? 0 };
  const rotating = input['rotating share']?.si ?? USUAL.rotating;
  const energy = stop ? stopEnergy(stop, mass.si, rotating) : Number.NaN;
  const ends = { ...(front && { front }), rear };
  return {
    input,
    kart,
    ends,
    share,
    asked,
    locks,
    lifts,
    first,
    reached,
    pedalAtLock: (input['pedal force'].si * Math.max(0, atLock - drag) * weight) / brakes,
    ideal,
    ...(wanted !== undefined &&
      spacing &&
      offset && {
        bar: {
          share: onFront,
          wanted,
          offset: barOffset(spacing.si, wanted),
          move: barOffset(spacing.si, wanted) - offset.si,
        },
      }),
    ...(stop && { stop }),
    energy,
    heat: stop ? heat(input, ends, (energy * brakes) / (brakes + drag * weight)) : {},
    wear: ENDS.flatMap(end => wears(end, input[end])),
    assumed: [
      ...(input.efficiency ? [] : [`efficiency ${USUAL.efficiency}`]),
      ...(stop && !input['rotating share'] ? [`rotating share ${USUAL.rotating}`] : []),
    ],
  };
}

const ratioOf = (input: Input): number =>
  input['pedal ratio']?.si ??
  pedalRatio(input['pad to pivot']?.si ?? Number.NaN, input['rod to pivot']?.si ?? Number.NaN);

function braked(circuit: Circuit, force: number, friction: number, calipers: number): Braked {
  const discs = circuit.calipers?.si ?? calipers;
  const pressure = masterPressure(force, circuit['master bore'].si);
  const area = pistonArea(circuit['piston diameter'].si, circuit['pistons a side'].si);
  const torque = caliperTorque({ pressure, area, friction, radius: radiusOf(circuit) });
  return { pressure, torque, discs, force: (discs * torque) / (circuit['tyre diameter'].si / 2) };
}

const radiusOf = (circuit: Circuit): number => {
  const outer = (circuit['disc diameter']?.si ?? Number.NaN) / 2;
  return circuit['effective radius']?.si ?? radiusEvenWear(outer, outer - (circuit['pad height']?.si ?? Number.NaN));
};

/** Rise of one disc of each end; `energy` is what the brakes take, the engine takes the rest. */
function heat(input: Input, ends: Worked['ends'], energy: number): Worked['heat'] {
  const whole = (ends.front?.force ?? 0) + (ends.rear?.force ?? 0);
  return Object.fromEntries(
    ENDS.flatMap(end => {
      const [braked, mass] = [ends[end], input[end]?.['disc mass']];
      if (!braked || !mass) return [];
      return [[end, temperatureRise((energy * braked.force) / whole / braked.discs, mass.si, SPECIFIC_HEAT)]];
    }),
  );
}

const wears = (end: End, circuit: Circuit | undefined): Worked['wear'] =>
  (['pad', 'disc'] as const).flatMap(name => {
    const wear = circuit?.[name];
    return wear
      ? [
          {
            name: `${end} ${name}`,
            now: wear.now.si,
            fresh: wear.new?.si ?? Number.NaN,
            limit: wear.limit?.si ?? USUAL.padLimit,
            hours: wear['hours run']?.si ?? Number.NaN,
            known: wear.new !== undefined,
          },
        ]
      : [];
  });
