/** The bare work as numbers: parts and jobs are bits, so that a whole state of the kart is three integers. */
import { partMinutes, type Work } from './bare-work.ts';
import type { Access } from './least.ts';
import { type Postures, posturesOf } from './postures.ts';

/** No more parts and no more jobs than fit into the bits of an integer, and both together into those of a double. */
export const MOST_BITS = 30;
export const MOST_TOGETHER = 48;

export type MaskPart = {
  readonly bit: number;
  readonly access: readonly number[];
  readonly remove: number;
  readonly back: number; // refit and verify
  readonly posture: number;
  /** Jobs after which it does not come off. */
  readonly notAfter: number;
  /** What comes off whichever way it is reached, itself included. */
  readonly must: number;
};

export type MaskJob = {
  readonly bit: number;
  readonly minutes: number;
  readonly posture: number;
  readonly ways: readonly number[];
  readonly on: number;
  readonly after: number;
  readonly complete: boolean;
  /** Parts that do not come off after it. */
  readonly spoiledBy: number;
  readonly must: number;
  /** For each way all that comes off with it. */
  readonly whole: readonly number[];
};

export type Masks = {
  readonly parts: readonly MaskPart[];
  readonly jobs: readonly MaskJob[];
  readonly postures: Postures;
  readonly start: { readonly off: number; readonly done: number; readonly posture: number };
  readonly end: number;
};

export const fits = (work: Work): boolean =>
  work.parts.length <= MOST_BITS &&
  work.jobs.length <= MOST_BITS &&
  work.parts.length + work.jobs.length <= MOST_TOGETHER &&
  work.postures.length <= 8;

export const masksOf = (work: Work): Masks => {
  const partBit = new Map(work.parts.map((p, i) => [p.id, 1 << i]));
  const jobBit = new Map(work.jobs.map((j, i) => [j.id, 1 << i]));
  const set = (ids: readonly string[], bits: ReadonlyMap<string, number>): number =>
    ids.reduce((all, id) => all | (bits.get(id) ?? 0), 0);
  const sets = (access: Access): number[] => access.map(way => set(way, partBit));
  const postures = posturesOf(work);
  const all = (1 << work.parts.length) - 1;
  const access = work.parts.map(p => sets(p.access));
  const must = access.map((_, i) => 1 << i);
  const wholeWay = (way: number): number => bits(way).reduce((sum, p) => sum | (must[p] ?? 0), way);
  const inEvery = (ways: readonly number[]): number =>
    ways.length === 0 ? 0 : ways.map(wholeWay).reduce((a, b) => a & b);
  for (let grew = true; grew; ) {
    grew = false;
    access.forEach((ways, i) => {
      const now = (must[i] ?? 0) | inEvery(ways);
      grew ||= now !== must[i];
      must[i] = now;
    });
  }
  const spoils = work.jobs.map(j =>
    j.needsComplete ? all & ~set(j.keepAfter, partBit) : set(j.invalidatedBy, partBit),
  );
  return {
    postures,
    parts: work.parts.map((p, i) => ({
      bit: 1 << i,
      access: access[i] ?? [],
      remove: p.removeMin,
      back: partMinutes(p) - p.removeMin,
      posture: postures.of(p.posture),
      notAfter: spoils.reduce((jobs, s, k) => (s & (1 << i) ? jobs | (1 << k) : jobs), 0),
      must: must[i] ?? 0,
    })),
    jobs: work.jobs.map((j, k) => {
      const ways = sets(j.needsRemoved);
      return {
        bit: 1 << k,
        minutes: j.minutes,
        posture: postures.of(j.posture),
        ways,
        on: set(j.needsOn, partBit),
        after: set(j.after, jobBit),
        complete: j.needsComplete,
        spoiledBy: spoils[k] ?? 0,
        must: inEvery(ways),
        whole: ways.map(wholeWay),
      };
    }),
    start: {
      off: set(work.start.off, partBit),
      done: set(work.start.done, jobBit),
      posture: Math.max(0, postures.of(work.start.posture)),
    },
    end: postures.of(work.end),
  };
};

/** The numbers of the bits of a set. */
export const bits = (set: number): readonly number[] => {
  const list: number[] = [];
  for (let left = set; left !== 0; left &= left - 1) list.push(31 - Math.clz32(left & -left));
  return list;
};

/** Is one of the ways wholly off? */
export const isOpen = (ways: readonly number[], off: number): boolean =>
  ways.length === 0 || ways.some(way => (way & off) === way);
