/** The track from above as the log drew it: to scale, north up, with its gates. No map of anybody is fetched. */
import type { GateLine, Point } from '../../laps/index.ts';
import { Label, SHEET_WIDTH } from '../drawing/lines.tsx';
import { roundSteps } from '../drawing/plot.tsx';
import { frameOf, type Path } from './outline.ts';

export type MapView = {
  /** m at the middle of the sheet. */
  readonly middle: Point;
  readonly perMetre: number; // units of the sheet
  readonly height: number; // of the sheet
};
export type GateMark = { readonly line: GateLine; readonly name: string; readonly chosen: boolean };

const EDGE = 26;
const LOWEST = 200;
const HIGHEST = 400;

/** The whole of a path on the sheet. */
export function wholeView(path: Path): MapView {
  const { low, high } = frameOf(path);
  const [wide, tall] = [Math.max(high.x - low.x, 20), Math.max(high.y - low.y, 20)];
  const perMetre = Math.min((SHEET_WIDTH - 2 * EDGE) / wide, (HIGHEST - 2 * EDGE) / tall);
  const height = Math.min(HIGHEST, Math.max(LOWEST, tall * perMetre + 2 * EDGE));
  return { middle: { x: (low.x + high.x) / 2, y: (low.y + high.y) / 2 }, perMetre, height };
}

/** So many metres across the sheet round a place: a track is 40 units wide there, a glove hits it. */
const CLOSE = 70;
export const closeView = (middle: Point): MapView => ({ middle, perMetre: SHEET_WIDTH / CLOSE, height: 280 });

export const onSheet = ({ middle, perMetre, height }: MapView, { x, y }: Point): Point => ({
  x: SHEET_WIDTH / 2 + (x - middle.x) * perMetre,
  y: height / 2 - (y - middle.y) * perMetre,
});
const onGround = ({ middle, perMetre, height }: MapView, { x, y }: Point): Point => ({
  x: middle.x + (x - SHEET_WIDTH / 2) / perMetre,
  y: middle.y - (y - height / 2) / perMetre,
});

export function TrackMap(props: {
  readonly title: string;
  readonly view: MapView;
  readonly outline: Path;
  readonly way?: Path | undefined;
  readonly gates: readonly GateMark[];
  /** Places tapped so far. */
  readonly taps?: readonly Point[];
  readonly onTap?: ((place: Point) => void) | undefined;
}) {
  const { title, view, outline, way, gates, taps = [], onTap } = props;
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: the buttons beside it do the same by keys
    <svg
      class={`plate track-map${onTap ? ' tapped' : ''}`}
      viewBox={`0 0 ${SHEET_WIDTH} ${view.height}`}
      role="img"
      aria-label={title}
      onClick={event => {
        if (onTap === undefined) return;
        // The padding of the sheet is outside its view box: the browser's own matrix knows where.
        const matrix = event.currentTarget.getScreenCTM();
        if (matrix) onTap(onGround(view, new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix.inverse())));
      }}
    >
      <path class="been" d={lineOn(view, outline)} />
      {way && <path class="curve way" d={`${lineOn(view, way)}Z`} />}
      {gates.map(gate => (
        <Gate key={gate.name} view={view} {...gate} />
      ))}
      {taps.map(place => {
        const at = onSheet(view, place);
        return <circle key={`${at.x} ${at.y}`} class="tap" cx={at.x} cy={at.y} r={6} />;
      })}
      <North />
      <ScaleBar view={view} />
    </svg>
  );
}

function lineOn(view: MapView, { x, y }: Path): string {
  let pen = 'M';
  let line = '';
  for (let n = 0; n < x.length; n++) {
    const [px, py] = [x[n] as number, y[n] as number];
    if (Number.isNaN(px)) {
      pen = 'M';
      continue;
    }
    const at = onSheet(view, { x: px, y: py });
    line += `${pen}${at.x.toFixed(1)} ${at.y.toFixed(1)}`;
    pen = 'L';
  }
  return line;
}

/** Across the track, longer than it is wide where the map is small, with an arrow the way it is driven. */
function Gate({ view, line, name, chosen }: GateMark & { readonly view: MapView }) {
  const { middle, ahead, half } = line;
  const reach = Math.max(half, 9 / view.perMetre);
  const side = (by: number): Point => onSheet(view, { x: middle.x - by * ahead.y, y: middle.y + by * ahead.x });
  const [left, right, at] = [side(reach), side(-reach), onSheet(view, middle)];
  const turn = (Math.atan2(-ahead.y, ahead.x) * 180) / Math.PI;
  const label = side(reach + 12 / view.perMetre);
  return (
    <g class={chosen ? 'signal' : ''}>
      <line class="gate" x1={left.x} y1={left.y} x2={right.x} y2={right.y} />
      <path class="head" d="M16 0L6 -4L6 4Z" transform={`translate(${at.x} ${at.y}) rotate(${turn})`} />
      <Label x={Math.min(SHEET_WIDTH - 14, Math.max(14, label.x))} y={label.y + 4} text={name} look="strong" />
    </g>
  );
}

export const North = () => (
  <g transform={`translate(${SHEET_WIDTH - 16} 12)`}>
    <path class="head" d="M0 0L5 16L0 12L-5 16Z" />
    <Label x={0} y={29} text="N" look="quiet" />
  </g>
);

export function ScaleBar({ view }: { readonly view: MapView }) {
  const metres = roundSteps(0, 110 / view.perMetre, 2).at(-1) ?? 1;
  const [x, y, long] = [10, view.height - 8, metres * view.perMetre];
  return (
    <g>
      <path class="thin" d={`M${x} ${y - 6}V${y}H${x + long}V${y - 6}`} />
      <Label x={x + long + 6} y={y} anchor="start" text={`${metres} m`} look="quiet" />
    </g>
  );
}
