/** One log under work: read in pieces, kept as a trace, and asked for its laps as often as the gates move. */
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';
import {
  type CsvLayout,
  type Gate,
  gateBetween,
  type Lap,
  LogImport,
  lapsOf,
  type Motion,
  motionOf,
  proposeGate,
  type Trace,
} from '../../laps/index.ts';
import { lapsWords } from '../words/laps/sheet.tsx';
import type { Ask, ColumnsAsked, Found, Gates, KnownGates, Layouts, Tell } from './log.ts';
import { outlineOf } from './outline.ts';
import { pathBetween } from './way.ts';
import { wholeLog } from './whole-log.ts';

/** The columns are told from so much, bytes. */
const HEAD = 65_536;
/** Lines shown where columns are asked for. */
const SHOWN = 4;

export class LogReading {
  readonly #say: (tell: Tell) => void;
  #trace: Trace | undefined;
  #motion: Motion | undefined;

  constructor(say: (tell: Tell) => void) {
    this.#say = say;
  }

  async hear(ask: Ask): Promise<void> {
    if (ask.kind === 'read') await this.#read(ask);
    else if (this.#trace && this.#motion) {
      const motion = this.#motion;
      const turned = (gate: Gate, n: number): Gate =>
        n === ask.turn ? gateBetween(motion, gate.left, gate.right) : gate;
      const [start, ...splits] = ask.gates;
      const gates: Gates = [turned(start, 0), ...splits.map((gate, n) => turned(gate, n + 1))];
      this.#say({ kind: 'laps', found: this.#found(gates) });
    }
  }

  async #read({ file, layouts, known }: Ask & { readonly kind: 'read' }): Promise<void> {
    const layout = (proposed: CsvLayout): CsvLayout => ({ ...proposed, ...layouts[proposed.signature] });
    const asked = await columnsAsked(file, layouts);
    if (asked) return this.#say({ kind: 'columns', asked });
    const hash = sha256.create();
    const read = await wholeLog(file, layout, {
      each: piece => hash.update(piece),
      say: progress => this.#say({ kind: 'reading', ...progress }),
    });
    if (read.kind === 'not imported')
      return this.#say({ kind: 'refused', problem: read.problem, skipped: read.skipped });
    const { trace, kind: _, ...how } = read;
    const motion = motionOf(trace);
    [this.#trace, this.#motion] = [trace, motion];
    const proposed = proposeGate(motion);
    this.#say({
      kind: 'read',
      log: {
        ...how,
        chosen: read.layout !== undefined && layouts[read.layout.signature] !== undefined,
        hash: bytesToHex(hash.digest()),
        bytes: file.size,
        zero: trace.zero,
        from: trace.time[0] as number,
        to: trace.time.at(-1) as number,
        fixes: trace.time.length,
        step: motion.step,
        moving: movingOf(motion),
        plane: { lat: motion.plane.lat, lon: motion.plane.lon, height: motion.plane.height },
        outline: outlineOf(motion),
        ...(proposed.kind === 'gate' && { proposed: proposed.gate }),
      },
    });
    this.#say({ kind: 'laps', found: this.#first(known, proposed) });
  }

  /** By the gates of a track that this log crosses, else by the one proposed. */
  #first(known: readonly KnownGates[], proposed: ReturnType<typeof proposeGate>): Found {
    for (const { track, gates } of known) {
      const found = this.#found(gates);
      if (found.laps.length > 0) return { ...found, track };
    }
    return proposed.kind === 'gate'
      ? this.#found([proposed.gate])
      : { outings: [], laps: [], say: [proposed.say, lapsWords.setGateByTwoTaps] };
  }

  #found(gates: Gates): Found {
    const [trace, motion] = [this.#trace as Trace, this.#motion as Motion];
    const { laps, outings, receiver, say } = lapsOf(trace, gates, { motion });
    const middle = middleLap(laps);
    return {
      ...{ gates, outings, laps, receiver, say },
      ...(middle && { way: pathBetween(motion, middle.start.time, middle.end.time) }),
    };
  }
}

/** Slower is pushing it, m/s; over a longer hole nobody knows whether the engine ran, s. */
const WALKING = 1.5;
const PAUSE = 60;

function movingOf({ time, vx, vy }: Motion): number {
  let moving = 0;
  for (let n = 0; n + 1 < time.length; n++) {
    const step = (time[n + 1] as number) - (time[n] as number);
    if (step <= PAUSE && Math.hypot(vx[n] as number, vy[n] as number) >= WALKING) moving += step;
  }
  return moving;
}

/** Of laps that nothing stands against, if there are any. */
function middleLap(laps: readonly Lap[]): Lap | undefined {
  const sound = laps.filter(({ doubts }) => doubts.length === 0);
  const sorted = (sound.length > 0 ? sound : laps).toSorted((a, b) => a.time - b.time);
  return sorted[sorted.length >> 1];
}

/** Asked where the first lines leave a doubt or miss a column, unless a person chose for this header before. */
async function columnsAsked(file: Blob, layouts: Layouts): Promise<ColumnsAsked | undefined> {
  const head = new Uint8Array(await file.slice(0, HEAD).arrayBuffer());
  const into = new LogImport();
  into.push(head);
  const read = into.finish();
  const { layout } = read;
  if (layout === undefined || layouts[layout.signature]) return undefined;
  const missing = (['time', 'lat', 'lon'] as const).filter(role => layout.columns[role] === undefined);
  if (missing.length === 0 && layout.doubts.length === 0) return undefined;
  const lines = new TextDecoder()
    .decode(head.subarray(0, 4096))
    .split(/\r?\n/)
    .filter(line => line.trim() !== '')
    .slice(0, SHOWN);
  return { layout, lines, ...(read.kind === 'not imported' && { problem: read.problem }) };
}
