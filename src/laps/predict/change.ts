/** What can be changed on a kart, each in steps that a person would make, and what a step is worth in a lap. */
import type { LapKart } from './kart.ts';
import type { Predictor } from './lap.ts';

export const CHANGES = ['mass', 'grip', 'power', 'drag', 'scrub', 'shift time', 'brakes', 'rolling radius'] as const;
export type Change = (typeof CHANGES)[number];

type Making = {
  /** One step: kg, s, or a share. */
  readonly step: number;
  readonly text: string;
  /** The kart with so many kg, s, or such a share more. */
  readonly with: (kart: LapKart, by: number) => LapKart;
};

export const MAKING: Readonly<Record<Change, Making>> = {
  mass: { step: 1, text: '1 kg', with: (kart, by) => ({ ...kart, mass: kart.mass + by }) },
  grip: {
    ...{ step: 0.01, text: '1 %' },
    with: (kart, by) => {
      const { side, along } = kart.grip;
      return { ...kart, grip: { ...kart.grip, side: side * (1 + by), along: along * (1 + by) } };
    },
  },
  power: {
    ...{ step: 0.01, text: '1 %' },
    with: (kart, by) => ({ ...kart, engine: { ...kart.engine, scale: kart.engine.scale * (1 + by) } }),
  },
  drag: { step: 0.01, text: '1 %', with: (kart, by) => ({ ...kart, dragArea: kart.dragArea * (1 + by) }) },
  scrub: {
    ...{ step: 0.1, text: '10 %' },
    with: (kart, by) => ({ ...kart, scrub: { flat: kart.scrub.flat * (1 + by), tight: kart.scrub.tight * (1 + by) } }),
  },
  'shift time': {
    ...{ step: 0.01, text: '10 ms' },
    with: (kart, by) => ({ ...kart, engine: { ...kart.engine, shiftTime: Math.max(0, kart.engine.shiftTime + by) } }),
  },
  brakes: { step: 0.05, text: '5 %', with: (kart, by) => ({ ...kart, brakeCap: kart.brakeCap * (1 + by) }) },
  'rolling radius': {
    ...{ step: 0.01, text: '1 %' },
    with: (kart, by) => ({ ...kart, wheel: { ...kart.wheel, radius: kart.wheel.radius * (1 + by) } }),
  },
};

export type Sensitivity = { readonly change: Change; readonly by: string; readonly seconds: number };

/** What one step more of each adds to a lap, s: half the difference between one more and one less. */
export const sensitivitiesOf = (predictor: Predictor, kart: LapKart): readonly Sensitivity[] =>
  CHANGES.map(change => {
    const { step, text, with: made } = MAKING[change];
    const seconds = (timeOf(predictor, made(kart, step)) - timeOf(predictor, made(kart, -step))) / 2;
    return { change, by: text, seconds };
  });

/** s; endless for a kart that does not get round. */
export function timeOf(predictor: Predictor, kart: LapKart): number {
  const lap = predictor.lap(kart);
  return lap.kind === 'lap' ? lap.time : Number.POSITIVE_INFINITY;
}
