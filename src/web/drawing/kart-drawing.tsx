import type { Kart } from '../../kart/index.ts';
import { type Dimension, type DrawnPart, drawKart, placeOf, type Shape } from './geometry.ts';
import type { Mark } from './marks.ts';

/** The kart from above. `here` is the part the step is on; `off` are parts drawn as not there. */
export function KartDrawing(props: {
  readonly kart: Kart;
  readonly marks: readonly Mark[];
  readonly off: ReadonlySet<string>;
  readonly here?: string | undefined;
  readonly title: string;
}) {
  const drawing = drawKart(props.kart);
  const { view } = drawing;
  const here = props.here === undefined ? undefined : props.kart.parts[props.here];
  const spot = here && placeOf(here);
  const drawPart = (p: DrawnPart) => (
    <Draw key={p.part} shape={p.shape} name={props.off.has(p.part) ? 'part off' : 'part'} />
  );
  return (
    <svg
      class="drawing"
      viewBox={`${view.x} ${view.y} ${view.width} ${view.height}`}
      role="img"
      aria-label={props.title}
    >
      <path class="centre" d={`M0 ${view.y + 20}V${view.y + view.height - 20}M${view.x + 20} 0H${-view.x - 20}`} />
      <g>{drawing.under.map(drawPart)}</g>
      <g>
        {drawing.frame.map((s, i) => (
          <Draw key={`frame ${i}`} shape={s} name="outline" />
        ))}
      </g>
      <g>
        {drawing.wheels.map(w => (
          <Draw
            key={w.corner}
            shape={w.shape}
            name={w.part !== undefined && props.off.has(w.part) ? 'tyre off' : 'tyre'}
          />
        ))}
      </g>
      <g>
        {drawing.axle.map((s, i) => (
          <Draw key={`axle ${i}`} shape={s} name="outline" />
        ))}
      </g>
      <g>{drawing.parts.map(drawPart)}</g>
      {drawing.dimensions.map(d => (
        <DimensionLine key={d.text} dimension={d} />
      ))}
      {props.marks.map(m => (
        <Balloon key={m.n} mark={m} />
      ))}
      {spot && (
        <g>
          <circle class="here" cx={spot.x} cy={spot.y} r="70" />
          <path
            class="here"
            d={`M${spot.x - 120} ${spot.y}h70M${spot.x + 50} ${spot.y}h70M${spot.x} ${spot.y - 120}v70M${spot.x} ${spot.y + 50}v70`}
          />
        </g>
      )}
    </svg>
  );
}

function Draw({ shape, name }: { readonly shape: Shape; readonly name: string }) {
  switch (shape.as) {
    case 'box':
      return (
        <rect
          class={name}
          x={shape.box.x}
          y={shape.box.y}
          width={shape.box.width}
          height={shape.box.height}
          rx={shape.round}
        />
      );
    case 'circle':
      return shape.radius > 0 ? <circle class={name} cx={shape.at.x} cy={shape.at.y} r={shape.radius} /> : null;
    case 'line':
      return <polyline class={name} points={shape.points.map(p => `${p.x},${p.y}`).join(' ')} />;
  }
}

function DimensionLine({ dimension: d }: { readonly dimension: Dimension }) {
  const upright = d.from.x === d.to.x;
  const tick = (x: number, y: number) => `M${x - 14} ${y + 14}l28 -28`;
  return (
    <g>
      <path
        class="dim"
        d={`M${d.from.x} ${d.from.y}L${d.to.x} ${d.to.y}${tick(d.from.x, d.from.y)}${tick(d.to.x, d.to.y)}`}
      />
      <text
        class="dim-text"
        x={d.label.x}
        y={d.label.y}
        text-anchor="middle"
        {...(upright ? { transform: `rotate(-90 ${d.label.x} ${d.label.y})` } : {})}
      >
        {d.text}
      </text>
    </g>
  );
}

/** A numbered balloon in the margin with its leader: square lies off, circle due, ring joint open, cross defect. */
function Balloon({ mark }: { readonly mark: Mark }) {
  const { at, label, n, kind } = mark;
  const r = 50;
  return (
    <g class={`balloon ${kind}`}>
      <path class="leader" d={`M${label.x + (label.x < 0 ? r : -r)} ${label.y}L${at.x} ${at.y}`} />
      <circle class="dot" cx={at.x} cy={at.y} r="9" />
      {kind === 'off' && <rect x={label.x - r} y={label.y - r} width={2 * r} height={2 * r} />}
      {kind === 'due' && <circle cx={label.x} cy={label.y} r={r} />}
      {kind === 'open' && (
        <g>
          <circle cx={label.x} cy={label.y} r={r} />
          <circle cx={label.x} cy={label.y} r={r - 9} />
        </g>
      )}
      {kind === 'defect' && <path d={`M${label.x} ${label.y - r - 12}l${r + 14} ${2 * r + 6}h${-2 * r - 28}z`} />}
      <text x={label.x} y={label.y + (kind === 'defect' ? 30 : 17)} text-anchor="middle">
        {n}
      </text>
    </g>
  );
}
