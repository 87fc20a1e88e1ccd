import type { Kart } from '../../kart/index.ts';
import { own } from '../choice/choice.ts';
import { drawingWords } from '../words/drawing.ts';
import { type Dimension, type DrawnPart, drawKart, type Point, placeOf, type Shape } from './geometry.ts';
import type { Called, Mark } from './marks.ts';

type AnyMark = Mark<Called>;
/** Lets a hand find a mark: the one nearest to the tap, for a number in the margin alone is too small for a glove. */
export type Picking = { readonly chosen: number | undefined; readonly pick: (n: number) => void };

/** The kart from above. `here` is the part the step is on; `off` are parts drawn as not there. */
export type DrawingProps = {
  readonly kart: Kart;
  readonly marks: readonly AnyMark[];
  readonly picking?: Picking;
  readonly off: ReadonlySet<string>;
  readonly here?: string | undefined;
  /** Drawn darker: the parts of one system. */
  readonly inked?: ReadonlySet<string>;
  readonly title: string;
};

export function KartDrawing(props: DrawingProps) {
  const drawing = drawKart(props.kart);
  const { picking } = props;
  const { view } = drawing;
  const here = props.here === undefined ? undefined : props.kart.parts[props.here];
  const spot = here && placeOf(here);
  const drawPart = (p: DrawnPart) => (
    <Draw
      key={p.part}
      shape={p.shape}
      name={`part${props.off.has(p.part) ? ' off' : ''}${props.inked?.has(p.part) ? ' inked' : ''}`}
    />
  );
  return (
    <svg
      class="drawing"
      viewBox={`${view.x} ${view.y} ${view.width} ${view.height}`}
      role={picking ? 'group' : 'img'}
      aria-label={props.title}
      {...(picking && {
        onClick: (tap: MouseEvent & { readonly currentTarget: SVGSVGElement }) => {
          const mark = nearest(props.marks, onSheet(tap));
          if (mark) picking.pick(mark.n);
        },
      })}
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
        <Balloon key={m.n} mark={m} picking={picking} />
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
        {own(d.text)}
      </text>
    </g>
  );
}

/** Where on the sheet a tap fell. */
function onSheet({ currentTarget, clientX, clientY }: MouseEvent & { readonly currentTarget: SVGSVGElement }): Point {
  const matrix = currentTarget.getScreenCTM()?.inverse();
  const { x, y } = new DOMPoint(clientX, clientY).matrixTransform(matrix);
  return { x, y };
}

function nearest(marks: readonly AnyMark[], tap: Point): AnyMark | undefined {
  const far = ({ at, label }: AnyMark): number =>
    Math.min(...[at, label].map(({ x, y }) => Math.hypot(x - tap.x, y - tap.y)));
  return marks.toSorted((a, b) => far(a) - far(b))[0];
}

const R = 50;
/**
 * A numbered balloon in the margin with its leader: square lies off, circle due, ring joint open, triangle defect; of what
 * alone is enough, diamond a retention, double diamond two by one hand, hexagon a part.
 */
const SHAPES: Readonly<Record<string, readonly string[]>> = {
  off: [`M${-R} ${-R}h${2 * R}v${2 * R}h${-2 * R}z`],
  due: [ring(R)],
  open: [ring(R), ring(R - 9)],
  defect: [`M0 ${-R - 12}l${R + 14} ${2 * R + 6}h${-2 * R - 28}z`],
  retention: [diamond(R + 9)],
  together: [diamond(R + 9), diamond(R - 5)],
  part: [`M${-R - 6} 0l${R / 2 + 3} ${-R}h${R + 6}l${R / 2 + 3} ${R}l${-R / 2 - 3} ${R}h${-R - 6}z`],
};

function ring(r: number): string {
  return `M${-r} 0a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0z`;
}
function diamond(r: number): string {
  return `M0 ${-r}L${r} 0L0 ${r}L${-r} 0z`;
}

function Balloon({ mark, picking }: { readonly mark: AnyMark; readonly picking: Picking | undefined }) {
  const { at, label, n, kind } = mark;
  return (
    <g
      class={`balloon ${kind}${picking?.chosen === n ? ' chosen' : ''}`}
      {...(picking && {
        role: 'button',
        tabindex: 0,
        'aria-label': drawingWords.placeListed(n, mark.lines.length),
        'aria-pressed': picking.chosen === n,
        onKeyDown: (press: KeyboardEvent) => {
          if (press.key !== 'Enter' && press.key !== ' ') return;
          press.preventDefault();
          picking.pick(n);
        },
      })}
    >
      <path class="leader" d={`M${label.x + (label.x < 0 ? R : -R)} ${label.y}L${at.x} ${at.y}`} />
      <circle class="dot" cx={at.x} cy={at.y} r="9" />
      {SHAPES[kind]?.map(shape => (
        <path key={shape} class="shape" d={shape} transform={`translate(${label.x} ${label.y})`} />
      ))}
      <text x={label.x} y={label.y + (kind === 'defect' ? 30 : 17)} text-anchor="middle">
        {n}
      </text>
    </g>
  );
}
