/** Threads that exist: read from their marking, or refused with the one most likely meant. */

export type Thread = {
  readonly series: 'metric' | 'unified';
  readonly name: string; // 'M8x1.25', '1/4-28'
  readonly diameter: number; // major diameter [m]
  readonly pitch: number; // [m]
  readonly leftHand: boolean;
};
export type NoThread = { readonly expected: string; readonly remedy: string };

/** Nominal diameter [mm]: coarse pitch (0: none), fine pitches [mm]. ISO 261 and ISO 262, memory. */
const METRIC: Readonly<Record<number, readonly [number, ...number[]]>> = {
  2: [0.4, 0.25],
  2.5: [0.45, 0.35],
  3: [0.5, 0.35],
  3.5: [0.6, 0.35],
  4: [0.7, 0.5],
  5: [0.8, 0.5],
  6: [1, 0.75],
  7: [1, 0.75],
  8: [1.25, 1, 0.75],
  9: [1.25, 1, 0.75],
  10: [1.5, 1.25, 1, 0.75],
  11: [1.5, 1, 0.75],
  12: [1.75, 1.5, 1.25, 1],
  14: [2, 1.5, 1.25, 1],
  15: [0, 1.5, 1],
  16: [2, 1.5, 1],
  17: [0, 1.5, 1],
  18: [2.5, 2, 1.5, 1],
  20: [2.5, 2, 1.5, 1],
  22: [2.5, 2, 1.5, 1],
  24: [3, 2, 1.5, 1],
  25: [0, 2, 1.5, 1],
  27: [3, 2, 1.5, 1],
  30: [3.5, 3, 2, 1.5, 1],
};

/** Size: major diameter [in], threads an inch coarse (UNC), fine (UNF) and extra fine (UNEF). ASME B1.1, memory. */
const UNIFIED: Readonly<Record<string, readonly [number, number, number, number?]>> = {
  '2': [0.086, 56, 64],
  '4': [0.112, 40, 48],
  '5': [0.125, 40, 44],
  '6': [0.138, 32, 40],
  '8': [0.164, 32, 36],
  '10': [0.19, 24, 32],
  '12': [0.216, 24, 28, 32],
  '1/4': [0.25, 20, 28, 32],
  '5/16': [0.3125, 18, 24, 32],
  '3/8': [0.375, 16, 24, 32],
  '7/16': [0.4375, 14, 20, 28],
  '1/2': [0.5, 13, 20, 28],
  '9/16': [0.5625, 12, 18, 24],
  '5/8': [0.625, 11, 18, 24],
  '3/4': [0.75, 10, 16, 20],
  '7/8': [0.875, 9, 14, 20],
  '1': [1, 8, 12, 20],
};
const SERIES = ['UNC', 'UNF', 'UNEF'];

const HAND = String.raw`(?:\s*[- ]?\s*(?:\d[gh]){0,2}\s*(LH|left[- ]?hand|left)?)`;
const METRIC_MARK = new RegExp(
  String.raw`^M\s*(\d+(?:[.,]\d+)?)(?:\s*[x×*]\s*(\d+(?:[.,]\d+)?))?(?:\s*-\s*)?${HAND}$`,
  'i',
);
const UNIFIED_MARK =
  /^(?:#|no\.?\s*)?(\d+(?:\/\d+)?)\s*(?:in|")?\s*[-x×]\s*(\d+)(?:\s*-?\s*(UNC|UNF|UNEF))?(?:\s*-?\s*[123][AB])?\s*(LH|left[- ]?hand|left)?$/i;
/** Threads of fittings, which hold by sealing and have no bolt torque: G 1/8, R 1/4, 1/8-27 NPT. */
const PIPE_MARK =
  /^(?:(?:G|R|Rc|Rp|BSPP?|BSPT)\s*\d+(?:[ /]\d+)*|\d+(?:\/\d+)?(?:-\d+(?:\.\d+)?)?\s*(?:NPTF?|BSPP?|BSPT))$/i;

const KNOWN = 'a thread that exists, such as "M8x1.25" or "1/4-28 UNF"';

export const isThread = (read: Thread | NoThread): read is Thread => 'pitch' in read;
/** A thread of a fitting: known as such, but without stress area here. */
export const isPipeThread = (marking: string): boolean => PIPE_MARK.test(marking.trim());

/**
 * Reads `M8`, `M8x1`, `M8x1.25-6g`, `M8x1.25 LH`, `1/4-28`, `5/16-24 UNF`, `#10-32`. Without a pitch, a metric thread is
 * the coarse one. A marking that no standard thread has is refused with the nearest that exists.
 */
export function readThread(marking: string): Thread | NoThread {
  const clean = marking.trim();
  const metric = METRIC_MARK.exec(clean);
  if (metric)
    return readMetric(number(metric[1]), metric[2] === undefined ? undefined : number(metric[2]), Boolean(metric[3]));
  const unified = UNIFIED_MARK.exec(clean);
  if (unified) return readUnified(unified[1] ?? '', Number(unified[2]), unified[3]?.toUpperCase(), Boolean(unified[4]));
  return { expected: KNOWN, remedy: 'write M, the diameter, x and the pitch in mm, or inches and threads an inch' };
}

function readMetric(diameter: number, written: number | undefined, leftHand: boolean): Thread | NoThread {
  const pitches = METRIC[diameter]?.filter(p => p > 0);
  if (pitches === undefined) {
    const near = nearest(diameter, Object.keys(METRIC).map(Number));
    return {
      expected: KNOWN,
      remedy: `there is no M${diameter}: did you mean "${metricName(near, METRIC[near]?.[0] || 1.5)}"?`,
    };
  }
  const coarse = METRIC[diameter]?.[0];
  const pitch = written ?? (coarse || undefined);
  if (pitch === undefined || !pitches.includes(pitch)) {
    const near = metricName(diameter, nearest(pitch ?? 1.5, pitches));
    const all = pitches.map(p => metricName(diameter, p)).join(', ');
    return { expected: `one of ${all}`, remedy: `did you mean "${near}"? Count the threads over 10 mm with a gauge` };
  }
  return {
    series: 'metric',
    name: metricName(diameter, pitch),
    diameter: diameter / 1000,
    pitch: pitch / 1000,
    leftHand,
  };
}

function readUnified(size: string, perInch: number, series: string | undefined, leftHand: boolean): Thread | NoThread {
  const row = UNIFIED[size];
  if (row === undefined) {
    const near = nearestSize(size);
    return { expected: KNOWN, remedy: `there is no ${size}: did you mean "${near}-${UNIFIED[near]?.[2]}"?` };
  }
  const [diameter, ...counts] = row;
  const known = counts.filter(count => count !== undefined);
  const at = known.indexOf(perInch);
  if (at < 0 || (series !== undefined && SERIES[at] !== series)) {
    const near = at < 0 ? nearest(perInch, known) : perInch;
    const all = known.map((count, n) => `${size}-${count} ${SERIES[n]}`).join(', ');
    return {
      expected: `one of ${all}`,
      remedy: `did you mean "${size}-${near} ${SERIES[known.indexOf(near)]}"? Count the threads over one inch with a gauge`,
    };
  }
  return {
    series: 'unified',
    name: `${size}-${perInch}`,
    diameter: inches(diameter),
    pitch: inches(1 / perInch),
    leftHand,
  };
}

const number = (text: string | undefined): number => Number((text ?? '').replace(',', '.'));
const inches = (value: number): number => (value * 254) / 10000;
const metricName = (diameter: number, pitch: number): string => `M${diameter}x${pitch}`;
const nearest = (wanted: number, among: readonly number[]): number =>
  among.reduce((best, one) => (Math.abs(one - wanted) < Math.abs(best - wanted) ? one : best), among[0] ?? Number.NaN);

function nearestSize(size: string): string {
  const [over = 0, under] = size.split('/').map(Number);
  const wanted = under === undefined ? (over > 1 ? 0.06 + 0.013 * over : over) : over / under; // a number size is 0.060 in + 0.013 in each
  return Object.entries(UNIFIED).reduce(
    (best, [name, [diameter]]) =>
      Math.abs(diameter - wanted) < Math.abs((UNIFIED[best]?.[0] ?? 9) - wanted) ? name : best,
    '1/4',
  );
}
