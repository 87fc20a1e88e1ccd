/** A lap predicted: the track is cut once, then asked with one kart after another without taking new memory. */
import { cellsOf } from './cells.ts';
import { emptyEnvelope, sweepBack } from './envelope.ts';
import { forcesOf } from './forces.ts';
import { emptyDriven, sweepForward } from './forward.ts';
import type { LapKart } from './kart.ts';
import type { Track } from './track.ts';

export type Run = {
  readonly step: number; // m, no cell is longer
  /** Of an open track, m/s: at its start, if so much can be held there; and at its end. */
  readonly begin?: number;
  readonly end?: number;
};
export type Predicted =
  | {
      readonly kind: 'lap';
      readonly time: number; // s
      readonly vMax: number; // m/s
      readonly vMin: number;
      readonly vEnd: number;
      readonly upshifts: number;
    }
  | { readonly kind: 'stuck'; readonly at: number }; // m: there the engine does not beat what holds the kart

export type Predictor = {
  readonly length: number; // m
  readonly lap: (kart: LapKart) => Predicted;
  /** Of the lap asked last. */
  readonly trail: () => Trail;
  readonly corners: () => readonly Slowest[];
};
/** At the start of each cell and at the end of the last: m from the line, m/s, s since the line. */
export type Trail = { readonly at: Float64Array; readonly speed: Float64Array; readonly time: Float64Array };
/** Where a corner is slowest: m from the line, m/s. */
export type Slowest = { readonly at: number; readonly speed: number };

const NO_LIMIT = Number.POSITIVE_INFINITY;

export function predictorOf(track: Track, { step, begin = NO_LIMIT, end = NO_LIMIT }: Run): Predictor {
  const cells = cellsOf(track, step, !track.closed && begin === 0);
  const space = emptyEnvelope(cells.count);
  const driven = emptyDriven(cells.count);
  const lap = (kart: LapKart): Predicted => {
    const forces = forcesOf(kart);
    const envelope = sweepBack(forces, cells, end ** 2, space);
    const outcome = sweepForward(forces, cells, envelope, begin ** 2, driven);
    if (outcome.kind === 'stuck') return { kind: 'stuck', at: cells.at[outcome.cell] as number };
    const last = driven.z[track.closed ? 0 : cells.count] as number;
    let least = last;
    let most = last;
    let time = 0;
    let upshifts = 0;
    for (let cell = 0; cell < cells.count; cell++) {
      time += driven.time[cell] as number;
      upshifts += driven.shifts[cell] as number;
      most = Math.max(most, driven.top[cell] as number);
      least = Math.min(least, driven.z[cell] as number);
    }
    const [vMax, vMin, vEnd] = [Math.sqrt(most), Math.sqrt(least), Math.sqrt(last)];
    return { kind: 'lap', time, vMax, vMin, vEnd, upshifts };
  };
  const trail = (): Trail => {
    const time = new Float64Array(cells.count + 1);
    for (let n = 0; n < cells.count; n++) time[n + 1] = (time[n] as number) + (driven.time[n] as number);
    const speed = driven.z.map(Math.sqrt);
    if (track.closed) speed[cells.count] = speed[0] as number;
    return { at: cells.at, speed, time };
  };
  const corners = (): readonly Slowest[] => {
    const { at, speed } = trail();
    const slowest: Slowest[] = [];
    for (let cell = 0; cell < cells.count; cell++) {
      const corner = cells.corner[cell] as number;
      for (const node of corner < 0 ? [] : [cell, cell + 1])
        if (!((slowest[corner]?.speed ?? NO_LIMIT) <= (speed[node] as number)))
          slowest[corner] = { at: at[node] as number, speed: speed[node] as number };
    }
    return slowest;
  };
  return { length: cells.length, lap, trail, corners };
}
