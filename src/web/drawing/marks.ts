/** What the drawing calls out: parts that lie off, joints open, defects, work due. Near ones share one numbered mark. */
import type { State } from '../../book/index.ts';
import type { Kart } from '../../kart/index.ts';
import type { Due } from '../../prep/index.ts';
import { drawingWords } from '../words/drawing.ts';
import { type Box, type Point, placeOf } from './geometry.ts';

/** In the order that wins where several fall on one mark. */
export const MARKS = ['defect', 'off', 'open', 'due'] as const;
export type MarkKind = (typeof MARKS)[number];
export const MARK_WORDS: Readonly<Record<MarkKind, string>> = {
  defect: drawingWords.defectOrFailed,
  off: drawingWords.liesOff,
  open: drawingWords.jointOpen,
  due: drawingWords.workDue,
};

export type Line = { readonly kind: MarkKind; readonly part: string; readonly text: string };
export type Mark<L extends Called = Line & Called> = {
  readonly n: number;
  readonly kind: L['kind'];
  readonly at: Point; // the place on the kart
  readonly label: Point; // where its number stands, in the margin
  readonly lines: readonly L[];
};
/** What is called out at a place on the sheet. */
export type Called = { readonly kind: string; readonly at: Point };

/** Parts closer than this share a mark; the numbers in the margin keep this far apart, mm. */
const NEAR = 170;
const APART = 114;

export function marksOf(kart: Kart, state: State, due: readonly Due[], view: Box): readonly Mark[] {
  const lines = linesOf(kart, state, due).flatMap(line => {
    const part = kart.parts[line.part];
    return part ? [{ ...line, at: placeOf(part) }] : [];
  });
  return marked(lines, MARKS, view);
}

/** @param order of kinds: the one that wins where several fall on one mark stands first */
export function marked<L extends Called>(
  lines: readonly L[],
  order: readonly L['kind'][],
  view: Box,
): readonly Mark<L>[] {
  const clusters: { at: Point; lines: L[] }[] = [];
  for (const line of lines) {
    const near = clusters.find(c => Math.hypot(c.at.x - line.at.x, c.at.y - line.at.y) < NEAR);
    if (near) near.lines.push(line);
    else clusters.push({ at: line.at, lines: [line] });
  }
  clusters.sort((a, b) => a.at.y - b.at.y || a.at.x - b.at.x);
  const margin = view.width / 2 - 70;
  const sides = [clusters.filter(c => c.at.x <= 0), clusters.filter(c => c.at.x > 0)] as const;
  const labels = new Map(
    sides.flatMap((side, i) => {
      const ys = spread(
        side.map(c => c.at.y),
        view,
      );
      return side.map((c, k) => [c, { x: i === 0 ? -margin : margin, y: ys[k] ?? c.at.y }] as const);
    }),
  );
  return clusters.map((c, i) => ({
    n: i + 1,
    kind: order.find(kind => c.lines.some(l => l.kind === kind)) ?? (order.at(-1) as L['kind']),
    at: c.at,
    label: labels.get(c) ?? c.at,
    lines: c.lines,
  }));
}

function linesOf(kart: Kart, state: State, due: readonly Due[]): readonly Line[] {
  const open = state.defects
    .filter(d => d.mended === undefined)
    .map((d): Line => ({ kind: 'defect', part: d.part, text: d.defect }));
  const off = Object.values(kart.parts)
    .filter(part => state.parts[part.id]?.on === false)
    .map((part): Line => ({ kind: 'off', part: part.id, text: drawingWords.offKart }));
  const isOff = new Set(off.map(line => line.part));
  const work = due
    // What no kart file names is the work on a defect, which is there already.
    .filter(d => kart.items[d.item] !== undefined && !(d.cause === 'joint open' && isOff.has(d.part)))
    .map(
      (d): Line => ({
        kind: d.cause === 'failed' ? 'defect' : d.cause === 'joint open' ? 'open' : 'due',
        part: d.part,
        text: d.title,
      }),
    );
  return [...open, ...off, ...work];
}

/** Pushes labels apart along the margin, keeping their order and staying inside the sheet. */
export function spread(wanted: readonly number[], view: Box): readonly number[] {
  const top = view.y + APART / 2;
  const bottom = view.y + view.height - APART / 2;
  const room = Math.min(APART, (bottom - top) / Math.max(1, wanted.length - 1));
  const ys: number[] = [];
  for (const y of wanted) ys.push(Math.max(y, (ys.at(-1) ?? top - room) + room));
  for (let i = ys.length - 1, limit = bottom; i >= 0; i--, limit -= room) ys[i] = Math.min(ys[i] ?? limit, limit);
  return ys;
}
