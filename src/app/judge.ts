/** What a reading says once it is held against the kart: its limits, its target, and what to move which way. */
import type { Reading } from '../book/index.ts';
import type { Instrument, Item, Kart } from '../kart/index.ts';
import { type Gauge, type Judgement, judge, parseReadings } from '../numbers/index.ts';
import { aimOf, gaugeOf, limitsOf } from '../prep/index.ts';
import { type Move, moveFor } from './move.ts';
import { canRead, dimensionOf, instrumentOf, type ReadingInput, readReading } from './reading.ts';

export type ReadingJudged = Judgement &
  Pick<Move, 'move'> & {
    readonly item: string;
    readonly instrument: string | null;
  };

/** Judges what was typed and not yet recorded; undefined while it is no reading. */
export function judgeTyped(kart: Kart, item: Item, input: ReadingInput): ReadingJudged | undefined {
  const read = readReading(input, item, kart, 'reading');
  return 'problem' in read ? undefined : judgeReading(kart, item, read.reading);
}

/** Judges a reading of an item; undefined for a text that an older book kept and no rule reads. */
export function judgeReading(kart: Kart, item: Item, reading: Reading): ReadingJudged | undefined {
  const read = parseReadings(reading.text, dimensionOf(item, kart));
  const first = read.ok ? read.value[0] : undefined;
  if (!read.ok || first === undefined) return undefined;
  const named = instrumentOf(kart, reading.instrument);
  const fits = named !== undefined && canRead(named, first.dimension);
  const gauge = gaugeFor(fits ? named : undefined, reading);
  const { min, max } = limitsOf(kart, item);
  const exact = min !== undefined && min.si === max?.si; // one figure without a width is a target, not limits
  // A torque is made right anywhere in its range, a mass above its least; only a single figure is aimed at.
  const aim = aimOf(kart, item);
  const target = aim.orMore || (item.joint !== undefined && !exact) ? null : aim.target;
  const judged = judge({
    readings: read.value,
    ...(gauge && { gauge }),
    ...(!exact && min && { min }),
    ...(!exact && max && { max }),
    ...(target && { target }),
  });
  const { move, say } = moveFor({ kart, item, judged, readings: read.value });
  return {
    ...judged,
    item: item.id,
    instrument: fits ? named.name : null,
    move,
    say: [...judged.say, ...say],
    notes: [...judged.notes, ...doubts(reading, named, fits)],
  };
}

/** The step stands in the reading: given, or taken from the list when it was written down. */
function gaugeFor(instrument: Instrument | undefined, { resolution, si }: Reading): Gauge | undefined {
  if (resolution === undefined) return undefined;
  return instrument === undefined ? { resolution } : gaugeOf(instrument, si, resolution);
}

function doubts({ instrument, resolution }: Reading, named: Instrument | undefined, fits: boolean): readonly string[] {
  if (instrument === undefined)
    return resolution === undefined ? [] : ['Scale of the instrument not known: taken as exact.'];
  if (named === undefined) return [`"${instrument}" is not in the list of instruments: its scale is taken as exact.`];
  return fits ? [] : [`${named.name} reads in ${named.resolution.unit}, not this: what it is off by is not known.`];
}
