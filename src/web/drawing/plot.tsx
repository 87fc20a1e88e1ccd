/** Lines over one axis, with round steps on both and each line's name at its end. */
import { Label, SHEET_WIDTH } from './lines.tsx';

export type Line = {
  readonly name: string;
  readonly points: readonly (readonly [number, number])[]; // not-a-number breaks the line
  readonly look: 'plain' | 'dashed' | 'signal';
};
export type Axes = {
  readonly x: readonly [number, number];
  readonly y: readonly [number, number];
  readonly height: number;
  readonly top: number;
};

const LEFT = 34;
const RIGHT = SHEET_WIDTH - 16;

export const plotX = (value: number, { x: [low, high] }: Axes): number =>
  LEFT + ((RIGHT - LEFT) * (value - low)) / (high - low);
export const plotY = (value: number, { y: [low, high], top, height }: Axes): number =>
  top + (height * (high - value)) / (high - low);

/** Steps of 1, 2 or 5 times a power of ten, at most `most` of them, from low to high. */
export function roundSteps(low: number, high: number, most: number): readonly number[] {
  const least = (high - low) / most;
  const power = 10 ** Math.floor(Math.log10(least));
  const step = ([1, 2, 5, 10].find(times => times * power >= least) ?? 10) * power;
  const first = Math.ceil(low / step - 1e-9);
  const last = Math.floor(high / step + 1e-9);
  return Array.from({ length: last - first + 1 }, (_, n) => Number(((first + n) * step).toPrecision(12)));
}

/** `unit` stands after each number across: degrees when nothing is said. */
export function PlotFrame({ axes, unit = '°' }: { readonly axes: Axes; readonly unit?: string }) {
  return (
    <g>
      {roundSteps(...axes.y, 6).map(value => (
        <g key={value}>
          <line
            class={value === 0 ? 'thin' : 'hair'}
            x1={LEFT}
            x2={RIGHT}
            y1={plotY(value, axes)}
            y2={plotY(value, axes)}
          />
          <Label x={LEFT - 6} y={plotY(value, axes) + 4} anchor="end" text={String(value)} look="quiet" />
        </g>
      ))}
      {roundSteps(...axes.x, 6).map(value => (
        <g key={value}>
          <line
            class={value === 0 ? 'chain' : 'hair'}
            x1={plotX(value, axes)}
            x2={plotX(value, axes)}
            y1={axes.top}
            y2={axes.top + axes.height}
          />
          <Label
            x={plotX(value, axes)}
            y={axes.top + axes.height + 16}
            text={`${Math.abs(value)}${unit}`}
            look="quiet"
          />
        </g>
      ))}
    </g>
  );
}

export function PlotLine({ line, axes }: { readonly line: Line; readonly axes: Axes }) {
  let pen = 'M';
  const path = line.points.map(([x, y]) => {
    if (!Number.isFinite(y)) {
      pen = 'M';
      return '';
    }
    const here = `${pen}${plotX(x, axes).toFixed(1)} ${plotY(y, axes).toFixed(1)}`;
    pen = 'L';
    return here;
  });
  return <path class={`curve ${line.look}`} d={path.join('')} />;
}
