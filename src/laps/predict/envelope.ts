/** The most a kart may have at each place to hold every bend and brake down to all that comes: swept back along the way. */
import type { Cells } from './cells.ts';
import { BRAKE, type Forces, lateralLimit } from './forces.ts';
import { bulgeFor, finer, type Reached, step, timeOver } from './step.ts';

export type Envelope = {
  readonly z: Float64Array; // at the start of each cell, and at the end of the last
  readonly bulge: Float64Array; // of each cell
  readonly time: Float64Array; // s, to ride it through each cell
  /** 1 where the limit of a bend and not the brake sets the start of the cell: there the kart may fall below. */
  readonly bent: Uint8Array;
  /** The cell before whose start the least can be held. */
  readonly least: number;
};

export function emptyEnvelope(count: number): Envelope {
  const of = (more: number): Float64Array => new Float64Array(count + more);
  return { z: of(1), bulge: of(0), time: of(0), bent: new Uint8Array(count), least: 0 };
}

/** @param end z that must not be passed at the end of an open track */
export function sweepBack(f: Forces, cells: Cells, end: number, into: Envelope): Envelope {
  const { count, closed, long, first, last } = cells;
  const { z: limit, bulge, time, bent } = into;
  const least = limits(f, cells, limit);
  let z: number;
  if (closed) z = limit[least] as number;
  else {
    limit[count] = Math.min(limit[count] as number, end);
    z = limit[count] as number;
  }
  const reached: Reached = { z: Number.NaN, bulge: Number.NaN };
  // Going back from the place of the least limit nothing can lie above it there: one sweep closes the lap.
  let cell = closed ? least : count;
  let atLimit = true;
  for (let turn = 0; turn < count; turn++) {
    cell = cell === 0 ? count - 1 : cell - 1;
    const h = long[cell] as number;
    const from = first[cell] as number;
    const to = last[cell] as number;
    const held = limit[cell] as number;
    const behind = z;
    step(f, behind, h, to, from, BRAKE, reached);
    if (atLimit && reached.z <= held) stepFiner(f, behind, h, to, from, reached);
    atLimit = reached.z > held;
    z = atLimit ? held : reached.z;
    bent[cell] = atLimit ? 1 : 0;
    bulge[cell] = atLimit ? Math.min(0, lateralLimit(f, (from + to) / 2) - (z + behind) / 2) : reached.bulge;
    limit[cell] = z;
    time[cell] = timeOver(h, z, behind, bulge[cell] as number);
  }
  if (closed) limit[count] = limit[0] as number;
  return { ...into, least };
}

/** The same step in some that grow: it starts at the limit of a bend. */
function stepFiner(f: Forces, z: number, h: number, from: number, to: number, into: Reached): void {
  const bend = (at: number): number => from + (to - from) * at;
  let here = z;
  let time = 0;
  for (let at = 0; at < 1; ) {
    const next = finer(at);
    step(f, here, h * (next - at), bend(at), bend(next), BRAKE, into);
    time += timeOver(h * (next - at), here, into.z, into.bulge);
    here = into.z;
    at = next;
  }
  into.bulge = bulgeFor(h, z, here, time);
}

/** The lateral limit at each node, by the tighter of both sides; where it is least. */
function limits(f: Forces, { count, closed, first, last }: Cells, into: Float64Array): number {
  let [known, limit] = [Number.NaN, f.cap];
  const at = (k: number): number => {
    if (k !== known) [known, limit] = [k, lateralLimit(f, k)];
    return limit;
  };
  let least = 0;
  for (let node = 0; node <= count; node++) {
    const behind = node < count ? node : closed ? 0 : count - 1;
    const before = node > 0 ? node - 1 : closed ? count - 1 : 0;
    const [after, until] = [first[behind] as number, last[before] as number];
    const tighter = node === 0 && !closed ? after : node === count && !closed ? until : Math.max(after, until);
    into[node] = at(tighter);
    if ((into[node] as number) < (into[least] as number)) least = node;
  }
  return least === count ? 0 : least;
}
