/** A lap from above whose line is as thick as the kart is fast: read without colour, on paper too. */
import type { Point } from '../../laps/index.ts';
import { Label, Plate } from '../drawing/lines.tsx';
import { North, onSheet, ScaleBar, wholeView } from './map.tsx';
import type { Path } from './outline.ts';

const THIN = 1.2;
const THICK = 9;
/** Pieces of one thickness: more are not seen. */
const PIECES = 160;

export type MapSign = { readonly at: Point; readonly text: string };

export function SpeedMap(props: {
  readonly title: string;
  readonly path: Path;
  readonly speed: ArrayLike<number>; // m/s, at each point
  readonly signs: readonly MapSign[];
}) {
  const { title, path, speed, signs } = props;
  const view = wholeView(path);
  const [low, high] = extremes(speed);
  const count = path.x.length;
  const size = Math.max(1, Math.ceil(count / PIECES));
  const at = (n: number): string => {
    const { x, y } = onSheet(view, { x: path.x[n] as number, y: path.y[n] as number });
    return `${x.toFixed(1)} ${y.toFixed(1)}`;
  };
  const pieces = Array.from({ length: Math.ceil((count - 1) / size) }, (_, k) => {
    const [from, to] = [k * size, Math.min(count - 1, (k + 1) * size)];
    const line = Array.from({ length: to - from + 1 }, (__, n) => at(from + n)).join('L');
    const share = high > low ? ((speed[from] as number) - low) / (high - low) : 0;
    return { from, line, width: THIN + share * (THICK - THIN) };
  });
  return (
    <Plate height={view.height} title={title}>
      {pieces.map(({ from, line, width }) => (
        <path key={from} class="speed" style={{ strokeWidth: width }} d={`M${line}`} />
      ))}
      {signs.map(({ at: place, text }) => {
        const { x, y } = onSheet(view, place);
        return <Label key={text} x={x + 10} y={y + 4} anchor="start" text={text} look="strong" />;
      })}
      <North />
      <ScaleBar view={view} />
    </Plate>
  );
}

function extremes(values: ArrayLike<number>): readonly [number, number] {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let n = 0; n < values.length; n++) {
    low = Math.min(low, values[n] as number);
    high = Math.max(high, values[n] as number);
  }
  return [low, high];
}
