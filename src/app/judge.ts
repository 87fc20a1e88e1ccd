/** What a reading says once it is held against the kart: its limits, its target, and what to move which way. */
import type { Reading } from '../book/index.ts';
import type { Instrument, Item, Kart } from '../kart/index.ts';
import {
  differenceText,
  type Gauge,
  type Judgement,
  judge,
  parseReadings,
  rearTrackTarget,
  typedAs,
} from '../numbers/index.ts';
import { aimOf } from '../prep/index.ts';
import { inchFraction, type Measure } from '../quantity/index.ts';
import { canRead, dimensionOf, instrumentOf, limitsOf, type ReadingInput, readReading } from './reading.ts';

export type ReadingJudged = Judgement & {
  readonly item: string;
  readonly instrument: string | null;
  /** 'Move the left hub out 1/8 in.'; null when nothing is to be moved, or the way is for the person to judge. */
  readonly move: string | null;
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
  const gauge = gaugeOf(fits ? named : undefined, reading);
  const { min, max } = limitsOf(kart, item);
  const exact = min !== undefined && min.si === max?.si; // one figure without a width is a target, not limits
  // A torque is made right anywhere in its range; only a single figure is aimed at.
  const target = item.joint !== undefined && !exact ? null : aimOf(kart, item).target;
  const judged = judge({
    readings: read.value,
    ...(gauge && { gauge }),
    ...(!exact && min && { min }),
    ...(!exact && max && { max }),
    ...(target && { target }),
  });
  return {
    ...judged,
    item: item.id,
    instrument: fits ? named.name : null,
    move: moveOf(kart, item, judged, read.value),
    notes: [...judged.notes, ...doubts(reading, named, fits)],
  };
}

/** The names that can read this item, those its tools name first. */
export function instrumentsFor(kart: Kart, item: Item): readonly string[] {
  const dimension = dimensionOf(item, kart);
  if (dimension === undefined) return [];
  return Object.values(kart.instruments ?? {})
    .filter(one => canRead(one, dimension))
    .map(one => one.name)
    .toSorted((a, b) => Number(item.tools.includes(b)) - Number(item.tools.includes(a)));
}

/** The step stands in the reading: given, or taken from the list when it was written down. */
function gaugeOf(instrument: Instrument | undefined, { resolution, si }: Reading): Gauge | undefined {
  if (resolution === undefined) return undefined;
  if (instrument === undefined) return { resolution };
  const { scaleError, ends } = instrument;
  return {
    resolution,
    scaleError: scaleError.dimension === 'ratio' ? scaleError.si * Math.abs(si) : scaleError.si,
    ends,
  };
}

function doubts({ instrument, resolution }: Reading, named: Instrument | undefined, fits: boolean): readonly string[] {
  if (instrument === undefined)
    return resolution === undefined ? [] : ['Scale of the instrument not known: taken as exact.'];
  if (named === undefined) return [`"${instrument}" is not in the list of instruments: its scale is taken as exact.`];
  return fits ? [] : [`${named.name} reads in ${named.resolution.unit}, not this: what it is off by is not known.`];
}

type Size = (si: number) => string;

function moveOf(kart: Kart, item: Item, judged: Judgement, readings: readonly Measure[]): string | null {
  const [first] = readings;
  if (first === undefined) return null;
  const typed = typedAs(readings);
  const size: Size = si => differenceText(si, { ...first, typed });
  if (item.measure?.number === 'rear-track' && judged.target !== null)
    return hubMove(kart, item, judged.target, { size, marks: typed.marks });
  const limit = limitsOf(kart, item).max;
  const over = limit === undefined ? 0 : judged.mean.si - limit.si;
  if (item.measure?.dimension !== 'overall rear width' || judged.state !== 'outside' || !(over > 0)) return null;
  // Half each side; up to the next mark, so that both together are enough.
  const each =
    typed.marks === undefined ? over / 2 : (Math.ceil((over / 2 / INCH) * typed.marks - 1e-6) * INCH) / typed.marks;
  return `Move both hubs in, each ${size(each)} or more.`;
}

const INCH = 0.0254;

/**
 * The gap from bearing face to hub grows as the hub goes out. A move out takes the mark below where the nearest one, set
 * on both sides, would pass the limit of the rule set.
 */
function hubMove(
  kart: Kart,
  item: Item,
  { by, way, size: said }: NonNullable<Judgement['target']>,
  { size, marks }: { readonly size: Size; readonly marks: number | undefined },
): string | null {
  if (way === 'on') return null;
  const corner = kart.parts[item.part]?.corner ?? 'whole';
  const hub = corner === 'whole' ? 'hub' : `${corner.replace('rear ', '')} hub`;
  if (way === 'over') return `Move the ${hub} in ${said}.`;
  const limit = kart.rules?.limits['overall rear width']?.max;
  const aim = rearTrackTarget(kart.dimensions, limit);
  if (marks === undefined || limit === undefined || 'missing' in aim) return `Move the ${hub} out ${said}.`;
  const far = -by + inchFraction(-by, marks).errorMetres;
  const passes = aim.width + 2 * (far + by) > limit.si;
  const mark = INCH / marks;
  return passes && far <= mark ? null : `Move the ${hub} out ${size(passes ? far - mark : far)}.`;
}
