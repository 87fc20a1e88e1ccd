/** What of a file was not used: counted, named, and where it was first seen. */

const REASONS = {
  'before the header': 'lines above the header',
  blank: 'blank lines',
  units: 'a line of units under the header',
  fields: 'lines with more or fewer fields than the header',
  unfinished: 'a last line without an end, which may be cut',
  'too long': 'lines longer than any log writes',
  'no number': 'fixes whose time or place is missing or no number',
  'off the earth': 'fixes with a latitude beyond 90° or a longitude beyond 180°',
  'no place': 'fixes at 0°, 0°, which a receiver writes while it knows no place',
  'not valid': 'fixes that the receiver itself marked as not valid or only estimated',
  checksum: 'sentences whose checksum is wrong',
  'no checksum': 'sentences without a checksum, cut or not whole',
  'other sentences': 'sentences that say nothing of place or speed',
  'no sentence': 'lines that hold no sentence',
  'not on the track': 'way points and route points, which are no track',
  repeated: 'fixes said twice',
  'two places': 'fixes that put another place at the same time',
  backwards: 'fixes whose time runs backwards',
  ahead: 'fixes whose time leapt ahead and came back',
  overlap: 'fixes of a second recording of the same time: another receiver, a copy, or a clock that began anew',
  'second receiver': 'fixes of a second receiver, written between those of the first',
  jumped: 'fixes that jump away and come back, where no kart could be',
  'too many': 'fixes beyond what one import holds',
} as const;

export type Reason = keyof typeof REASONS;

export type Skipped = {
  readonly reason: Reason;
  readonly say: string;
  readonly count: number;
  readonly lines: readonly number[]; // of the first ones, from 1
};

const LINES_NAMED = 5;

export class Tally {
  readonly #of = new Map<Reason, { count: number; lines: number[] }>();

  add(reason: Reason, line: number, count = 1): void {
    const entry = this.#of.get(reason) ?? { count: 0, lines: [] };
    this.#of.set(reason, entry);
    entry.count += count;
    if (entry.lines.length < LINES_NAMED) entry.lines.push(line);
  }
  count(reason: Reason): number {
    return this.#of.get(reason)?.count ?? 0;
  }
  list(): readonly Skipped[] {
    return [...this.#of].map(([reason, { count, lines }]) => ({ reason, say: REASONS[reason], count, lines }));
  }
}

/** How many fixes of a log that jumped were left out. */
export const jumpsOf = ({ skipped }: { readonly skipped: readonly Skipped[] }): number =>
  skipped.find(({ reason }) => reason === 'jumped')?.count ?? 0;
