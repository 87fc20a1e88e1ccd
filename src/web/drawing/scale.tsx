/** One scale from left to right with bands and marks, each mark's words on a line of their own. */
import { Label, SHEET_WIDTH } from './lines.tsx';

export type ScaleMark = { readonly at: number; readonly text: string; readonly signal?: boolean };
export type Band = { readonly from: number; readonly to: number; readonly text: string; readonly signal?: boolean };
export type Scale = {
  readonly low: number;
  readonly high: number;
  readonly above: readonly ScaleMark[];
  readonly bands: readonly Band[];
};

const EDGE = 10;
const LINE = 19;

/** Where a value lies across the sheet; what is off the scale stays at its edge. */
export const across = (value: number, { low, high }: Pick<Scale, 'low' | 'high'>): number =>
  EDGE + ((SHEET_WIDTH - 2 * EDGE) * (Math.min(Math.max(value, low), high) - low)) / (high - low);

export const scaleHeight = ({ above, bands }: Scale): number => above.length * LINE + 12 + bands.length * 40 + 4;

/** About the width of words on the sheet: a little too much rather than too little. */
const widthOf = (text: string): number => 7.4 * text.length;

/** The leftmost mark on the lowest line and words to the left of their leader, so that no leader crosses another's words. */
export function ScaleDrawing({ scale, top }: { readonly scale: Scale; readonly top: number }) {
  const marks = scale.above.toSorted((a, b) => b.at - a.at);
  const ground = top + marks.length * LINE + 8;
  // Past each band, not through its words.
  const past = (x: number): string => scale.bands.map((_, n) => `M${x} ${ground + n * 40}v18`).join('');
  return (
    <g>
      {marks.map((mark, n) => {
        const x = across(mark.at, scale);
        const y = top + n * LINE + 13;
        const left = x - 9 - widthOf(mark.text) > 2;
        return (
          <g key={mark.text} class={mark.signal ? 'signal' : ''}>
            <path class="thin" d={`M${x} ${ground}V${y - 4}H${left ? x - 6 : x + 6}${past(x)}`} />
            <Label x={left ? x - 9 : x + 9} y={y} anchor={left ? 'end' : 'start'} text={mark.text} />
          </g>
        );
      })}
      <line x1={EDGE} x2={SHEET_WIDTH - EDGE} y1={ground} y2={ground} />
      {scale.bands.map((band, n) => {
        const [from, to] = [across(band.from, scale), across(band.to, scale)];
        const y = ground + n * 40;
        const words = Math.min(from, SHEET_WIDTH - 6 - widthOf(band.text));
        return (
          <g key={band.text} class={band.signal ? 'signal' : ''}>
            <rect class="band" x={from} y={y + 3} width={Math.max(to - from, 2)} height={12} />
            <Label x={Math.max(words, 2)} y={y + 31} anchor="start" text={band.text} />
          </g>
        );
      })}
    </g>
  );
}
