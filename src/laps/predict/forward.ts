/**
 * The lap driven forward under the envelope: as hard as grip and engine let it, along the envelope where that is less.
 * A shift begins where its speed is reached, inside a cell, and lasts its time; on the brakes a running one is dropped.
 */
import type { Cells } from './cells.ts';
import type { Envelope } from './envelope.ts';
import { COAST, type Forces, gearFor, resistance } from './forces.ts';
import { finer, type Reached, step, timeOver } from './step.ts';

export type Driven = {
  readonly z: Float64Array; // at the start of each cell, and at the end of the last
  readonly time: Float64Array; // s, through each cell
  readonly top: Float64Array; // the largest z of each cell
  readonly shifts: Uint8Array; // upshifts begun in each cell
  readonly riding: Uint8Array; // 1 where the cell is begun on the envelope
};

export function emptyDriven(count: number): Driven {
  const of = (more: number): Float64Array => new Float64Array(count + more);
  return { z: of(1), time: of(0), top: of(0), shifts: new Uint8Array(count), riding: new Uint8Array(count) };
}

/** It came to the end, or there is a cell in which the kart comes to a stop. */
export type Outcome = { readonly kind: 'driven' } | { readonly kind: 'stuck'; readonly cell: number };

/** A closed track is driven until a lap is as the one before; without a place to brake for, at most so often. */
const MOST_TURNS = 40;
/** As the lap before, of z at its end. */
const SAME = 1e-12;

/** @param begin z at the start of an open track; the envelope where that is less */
export function sweepForward(f: Forces, cells: Cells, envelope: Envelope, begin: number, into: Driven): Outcome {
  const { count, closed } = cells;
  const drive = new Drive(f, cells, envelope, into);
  const from = closed ? envelope.least : 0;
  drive.begin(closed ? Number.POSITIVE_INFINITY : begin, from);
  for (let turn = 0; turn < MOST_TURNS; turn++) {
    const before = drive.state();
    for (let n = 0, cell = from; n < count; n++) {
      // At the same place on the envelope a lap ago: all that follows is as it was.
      if (turn > 0 && into.riding[cell] === 1 && drive.rides(cell)) return DRIVEN;
      if (!drive.through(cell)) return { kind: 'stuck', cell };
      cell = cell + 1 === count ? 0 : cell + 1;
    }
    if (!closed || drive.is(before)) break;
  }
  into.z[count] = closed ? (into.z[0] as number) : drive.speed();
  return DRIVEN;
}

const DRIVEN: Outcome = { kind: 'driven' };
type State = { readonly z: number; readonly gear: number; readonly shifting: number };

class Drive {
  private z = Number.NaN;
  private gear = 0;
  private shifting = Number.NaN; // s left of a shift
  private time = Number.NaN; // s in this cell, so far
  private top = Number.NaN;
  private shifts = 0;
  private readonly reached: Reached = { z: Number.NaN, bulge: Number.NaN };
  private readonly f: Forces;
  private readonly cells: Cells;
  private readonly edge: Envelope;
  private readonly into: Driven;

  constructor(f: Forces, cells: Cells, edge: Envelope, into: Driven) {
    this.f = f;
    this.cells = cells;
    this.edge = edge;
    this.into = into;
  }

  begin(z: number, cell: number): void {
    this.brakedTo(Math.min(z, this.edge.z[cell] as number));
  }
  state = (): State => ({ z: this.z, gear: this.gear, shifting: this.shifting });
  is = ({ z, gear, shifting }: State): boolean =>
    Math.abs(this.z - z) <= SAME * z && this.gear === gear && Math.abs(this.shifting - shifting) <= SAME;
  speed = (): number => this.z;
  rides(cell: number): boolean {
    return this.z >= (this.edge.z[cell] as number);
  }

  /** False when the kart comes to a stop. */
  through(cell: number): boolean {
    const { edge, into } = this;
    const riding = this.rides(cell);
    if (riding) this.brakedTo(edge.z[cell] as number);
    into.z[cell] = this.z;
    into.riding[cell] = riding ? 1 : 0;
    this.time = 0;
    this.top = this.z;
    this.shifts = 0;
    const falls = riding && this.falls(cell);
    if (riding && !falls) {
      this.time = edge.time[cell] as number;
      this.z = edge.z[cell + 1] as number;
    } else if (!this.freely(cell, falls)) return false;
    into.time[cell] = this.time;
    into.top[cell] = Math.max(this.top, this.z);
    into.shifts[cell] = this.shifts;
    return true;
  }

  private brakedTo(z: number): void {
    this.z = z;
    this.gear = gearFor(this.f, z);
    this.shifting = 0;
  }

  /** From the limit of a bend, where no grip is left to drive with, the kart may fall below the envelope. */
  private falls(cell: number): boolean {
    if (this.edge.bent[cell] === 0) return false;
    this.step(cell, 0, 1, this.gear);
    return this.reached.z < (this.edge.z[cell + 1] as number);
  }

  /** @param fell whether it starts at the limit of a bend: the first steps are finer there */
  private freely(cell: number, fell: boolean): boolean {
    const { f, reached } = this;
    const long = this.cells.long[cell] as number;
    for (let at = 0; at < 1; ) {
      this.changeGear();
      const to = this.pull(cell, at, fell ? finer(at) : 1);
      if (!(reached.z > 0)) return false;
      if (reached.z > f.limit && this.z <= f.limit) [reached.z, reached.bulge] = [f.limit, 0];
      if (reached.z > this.edgeAt(cell, to)) {
        this.meet(cell, at, to);
        return true;
      }
      this.time += timeOver(long * (to - at), this.z, reached.z, reached.bulge);
      this.z = reached.z;
      at = to;
    }
    return true;
  }

  private changeGear(): void {
    const { up, down, shiftTime } = this.f;
    if (this.shifting > 0) return;
    while (this.gear > 0 && this.z < (down[this.gear] as number)) this.gear--;
    while (this.shifting === 0 && this.z >= (up[this.gear] as number)) {
      this.gear++;
      this.shifts++;
      this.shifting = shiftTime;
    }
  }

  /** A step of the cell from a share of it to another, or to where a shift begins or ends. Where that is, as a share. */
  private pull(cell: number, at: number, to: number): number {
    const { f, reached, gear } = this;
    const last = gear + 1 === f.up.length;
    const how = this.shifting > 0 ? COAST : last && this.z > f.limit ? gear + 1 : gear;
    this.step(cell, at, to, how);
    const long = (this.cells.long[cell] as number) * (to - at);
    if (how === COAST) {
      const time = timeOver(long, this.z, reached.z, reached.bulge);
      if (time <= this.shifting) {
        this.shifting -= time;
        return to;
      }
      const until = at + ((to - at) * this.coasted(this.bend(cell, at))) / long;
      this.step(cell, at, until, COAST);
      this.shifting = 0;
      return until;
    }
    const up = f.up[gear] as number;
    const down = f.down[gear] as number;
    if (reached.z <= up && reached.z >= down) return to;
    const change = reached.z > up ? up : down;
    const until = at + (to - at) * crossing(this.z, reached, change);
    this.step(cell, at, until, how);
    reached.z = change === up ? Math.max(reached.z, up) : Math.min(reached.z, down * (1 - 1e-14));
    return until;
  }

  /** m without drive until the shift is done. */
  private coasted(k: number): number {
    const { z, shifting } = this;
    return (Math.sqrt(z) - (resistance(this.f, z, k) * this.f.perRolls * shifting) / 2) * shifting;
  }

  /** Up to where both meet as driven, from there along the envelope. */
  private meet(cell: number, at: number, to: number): void {
    const { edge, reached } = this;
    const long = this.cells.long[cell] as number;
    const [room, over] = [Math.max(0, this.edgeAt(cell, at) - this.z), reached.z - this.edgeAt(cell, to)];
    const share = room / (room + over);
    const where = at + (to - at) * share;
    const z = this.edgeAt(cell, where);
    const next = edge.z[cell + 1] as number;
    if (share > 0) this.time += timeOver(long * (where - at), this.z, z, reached.bulge * share * share);
    if (where < 1) this.time += timeOver(long * (1 - where), z, next, (edge.bulge[cell] as number) * (1 - where) ** 2);
    this.top = Math.max(this.top, z);
    this.z = next;
  }

  private edgeAt(cell: number, at: number): number {
    const { z, bulge } = this.edge;
    const from = z[cell] as number;
    return from + ((z[cell + 1] as number) - from) * at + 4 * (bulge[cell] as number) * at * (1 - at);
  }

  private bend(cell: number, at: number): number {
    const first = this.cells.first[cell] as number;
    return first + ((this.cells.last[cell] as number) - first) * at;
  }

  private step(cell: number, at: number, to: number, how: number): void {
    const long = (this.cells.long[cell] as number) * (to - at);
    step(this.f, this.z, long, this.bend(cell, at), this.bend(cell, to), how, this.reached);
  }
}

/** Share of a step at which z comes to a value, by the parabola through its ends and middle. */
function crossing(from: number, { z: to, bulge }: Reached, value: number): number {
  let share = (value - from) / (to - from);
  for (let turn = 0; turn < 3; turn++) {
    const z = from + (to - from) * share + 4 * bulge * share * (1 - share);
    share -= (z - value) / (to - from + 4 * bulge * (1 - 2 * share));
  }
  return Math.min(1, Math.max(0, share));
}
