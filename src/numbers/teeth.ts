/** Sprockets that do not exist, said once for gearing and chain. */
import type { Measure } from '../quantity/index.ts';
import { wrong } from './asked.ts';
import type { InputProblem } from './subject.ts';

/** Fewer do not run, more are not made for a kart; common practice. */
export const TEETH = { least: 8, most: 100 } as const;

export const oddTeeth = (path: string, { si, text }: Measure): readonly InputProblem[] =>
  Number.isInteger(si) && si >= TEETH.least && si <= TEETH.most
    ? []
    : [
        wrong(
          path,
          `a whole number of teeth from ${TEETH.least} to ${TEETH.most}`,
          text,
          'is this a ratio or a diameter? Count the teeth and write for example "17"',
        ),
      ];

/** On a kart the axle turns slower than the sprocket of the engine. */
export const oddPair = (front: Measure, rear: Measure): readonly InputProblem[] =>
  rear.si >= front.si
    ? []
    : [
        wrong(
          'front sprocket',
          `at most the rear sprocket, ${rear.text}`,
          front.text,
          'are front (engine) and rear (axle) exchanged? Write the smaller one in front',
        ),
      ];
