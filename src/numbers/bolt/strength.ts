/** What a class marking on a bolt head promises. */
import type { Thread } from './thread.ts';

export type Strength = {
  readonly mark: string; // '8.8', 'grade 5', 'A2-70'
  readonly proof: number; // stress it bears without lasting stretch [Pa]
  readonly yield: number; // 0.2 % proof strength, or lower yield point [Pa]
  readonly ultimate: number; // least tensile strength [Pa]
  readonly seen: 'read' | 'memory';
};
export type NoStrength = { readonly expected: string; readonly remedy: string };

type Line = readonly [proof: number, yielding: number, ultimate: number, seen: 'read' | 'memory'];

/** Property classes of steel bolts [MPa]: iso-898-1; 8.8, 10.9 and 12.9 read in reprints, the others memory. */
const METRIC: Readonly<Record<string, Line>> = {
  '4.6': [225, 240, 400, 'memory'],
  '4.8': [310, 340, 420, 'memory'],
  '5.6': [280, 300, 500, 'memory'],
  '5.8': [380, 420, 520, 'memory'],
  '6.8': [440, 480, 600, 'memory'],
  '8.8': [580, 640, 800, 'read'],
  '9.8': [650, 720, 900, 'memory'],
  '10.9': [830, 940, 1040, 'read'],
  '12.9': [970, 1100, 1220, 'read'],
  // Stainless, ISO 3506-1: no proof stress is given there; the 0.2 % strength stands for it.
  'A2-50': [210, 210, 500, 'memory'],
  'A2-70': [450, 450, 700, 'memory'],
  'A2-80': [600, 600, 800, 'memory'],
  'A4-50': [210, 210, 500, 'memory'],
  'A4-70': [450, 450, 700, 'memory'],
  'A4-80': [600, 600, 800, 'memory'],
};
/** 8.8 over 16 mm [MPa]. */
const THICK_8_8: Line = [600, 660, 830, 'read'];

/** Grades of inch bolts [ksi]: sae-j429, memory; proof of grade 5 also read in a torque chart. */
const UNIFIED: Readonly<Record<string, Line>> = {
  'grade 2': [55, 57, 74, 'memory'],
  'grade 5': [85, 92, 120, 'memory'],
  'grade 8': [120, 130, 150, 'memory'],
};
const KSI = 6894757.293168361; // Pa: 1000 × 4.4482216152605 N / 0.00064516 m²

/** Marks of nuts and set screws: they exist, but say nothing of the bolt that is stretched. */
const OTHER = /^(?:nut\s+)?(?:5|6|8|9|10|12)$|^(?:14|22|33|45)H$/i;
export const isOtherMark = (mark: string): boolean => OTHER.test(mark.trim());

export const isStrength = (read: Strength | NoStrength): read is Strength => 'proof' in read;

/** The strength a class mark promises on this thread; a mark that is no bolt's is refused with the one most likely meant. */
export function strengthOf(mark: string, thread: Pick<Thread, 'series' | 'diameter'>): Strength | NoStrength {
  const metric = thread.series === 'metric';
  const table = metric ? METRIC : UNIFIED;
  const clean = mark.trim();
  const name = metric
    ? clean.toUpperCase()
    : clean
        .toLowerCase()
        .replace(/^sae\s+/, '')
        .replace(/^(?:grade|gr\.?)\s*/, 'grade ');
  const line =
    name === '8.8' && metric && thread.diameter > 0.016
      ? THICK_8_8
      : Object.hasOwn(table, name)
        ? table[name]
        : undefined;
  const scale = metric ? 1e6 : KSI;
  if (line) {
    const [proof, yielding, ultimate, seen] = line;
    return { mark: name, proof: proof * scale, yield: yielding * scale, ultimate: ultimate * scale, seen };
  }
  return {
    expected: `a class of ${metric ? 'a metric' : 'an inch'} bolt: ${Object.keys(table).join(', ')}`,
    remedy: remedy(clean, metric),
  };
}

function remedy(mark: string, metric: boolean): string {
  const look = `look at the mark on the ${metric ? 'head' : 'head: three lines are grade 5, six are grade 8'}`;
  if (metric && isOtherMark(mark)) return `"${mark}" marks a nut or a set screw; give the class of the bolt: ${look}`;
  if (metric && /grade|^gr\b/i.test(mark))
    return `grades are for inch threads, a metric bolt has a class such as "8.8": ${look}`;
  if (!metric && Object.hasOwn(METRIC, mark.toUpperCase()))
    return `classes such as 8.8 are for metric threads, an inch bolt has a grade: ${look}`;
  const near = likely(mark, Object.keys(metric ? METRIC : UNIFIED));
  return `did you mean "${near}"? Else ${look}`;
}

/** The same digits first, else the nearest number. */
function likely(mark: string, among: readonly string[]): string {
  const digits = (text: string): string => text.replace(/[^0-9A]/gi, '').toUpperCase();
  const same = among.find(one => digits(one) === digits(mark) || digits(one).startsWith(digits(mark) || '-'));
  const value = (text: string): number => Number(/\d+(?:[.,]\d+)?/.exec(text)?.[0].replace(',', '.') ?? Number.NaN);
  const apart = (one: string): number => Math.abs(value(one) - value(mark));
  const pool = /^A/i.test(mark) ? among : among.filter(one => !one.startsWith('A'));
  return (
    same ??
    pool.reduce((best, one) => (apart(one) < apart(best) ? one : best), among.includes('8.8') ? '8.8' : 'grade 5')
  );
}

/** Largest load without lasting stretch, and least load that breaks [N]: Fp = Sp As, Fm = Rm As. Source: iso-898-1. */
export const proofLoad = (strength: Strength, area: number): number => strength.proof * area;
export const ultimateLoad = (strength: Strength, area: number): number => strength.ultimate * area;
