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
  /** From where to where they are drawn across, when not over a whole sheet. */
  readonly across?: readonly [number, number];
};

export const PLOT_LEFT = 34;
export const PLOT_RIGHT = SHEET_WIDTH - 16;
const leftOf = ({ across }: Axes): number => across?.[0] ?? PLOT_LEFT;
const rightOf = ({ across }: Axes): number => across?.[1] ?? PLOT_RIGHT;

export const plotX = (value: number, axes: Axes): number => {
  const [low, high] = axes.x;
  return leftOf(axes) + ((rightOf(axes) - leftOf(axes)) * (value - low)) / (high - low);
};
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
      <PlotLevels axes={axes} />
      <PlotNumbers axes={axes} />
      <PlotAcross axes={axes} unit={unit} most={6} />
    </g>
  );
}

/** Lines across at round values. */
export function PlotLevels({ axes }: { readonly axes: Axes }) {
  return (
    <g>
      {roundSteps(...axes.y, 6).map(value => {
        const y = plotY(value, axes);
        return (
          <line key={value} class={value === 0 ? 'thin' : 'hair'} x1={leftOf(axes)} x2={rightOf(axes)} y1={y} y2={y} />
        );
      })}
    </g>
  );
}

/** Their values, to the left of them. */
export function PlotNumbers({ axes }: { readonly axes: Axes }) {
  return (
    <g>
      {roundSteps(...axes.y, 6).map(value => (
        <Label
          key={value}
          x={leftOf(axes) - 6}
          y={plotY(value, axes) + 4}
          anchor="end"
          text={String(value)}
          look="quiet"
        />
      ))}
    </g>
  );
}

/** Lines up at most so many round values, each with its value beneath; one at the very left of the drawing begins there. */
export function PlotAcross({
  axes,
  unit,
  most,
}: {
  readonly axes: Axes;
  readonly unit: string;
  readonly most: number;
}) {
  const ground = axes.top + axes.height;
  return (
    <g>
      {roundSteps(...axes.x, most).map(value => {
        const x = plotX(value, axes);
        return (
          <g key={value}>
            <line class={value === 0 ? 'chain' : 'hair'} x1={x} x2={x} y1={axes.top} y2={ground} />
            <Label
              x={x}
              y={ground + 16}
              anchor={x < 10 ? 'start' : 'middle'}
              text={`${Math.abs(value)}${unit}`}
              look="quiet"
            />
          </g>
        );
      })}
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
