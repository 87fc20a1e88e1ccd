/** The pen of the plates: dimension lines with arrows, upright text, a scale with marks. Units are those of the view box. */
import type { ComponentChildren } from 'preact';

/** Wide enough for a phone: drawn at about its own size there, larger on a bench screen. */
export const SHEET_WIDTH = 344;

/** A whole drawing; what it shows in words is its title, its table stands beside it. */
export function Plate(props: {
  readonly height: number;
  readonly title: string;
  readonly children: ComponentChildren;
}) {
  return (
    <svg class="plate" viewBox={`0 0 ${SHEET_WIDTH} ${props.height}`} role="img" aria-label={props.title}>
      {props.children}
    </svg>
  );
}

type At = { readonly x: number; readonly y: number };

export function Label(
  props: At & { readonly text: string; readonly anchor?: 'start' | 'middle' | 'end'; readonly look?: string },
) {
  return (
    <text x={props.x} y={props.y} text-anchor={props.anchor ?? 'middle'} class={props.look}>
      {props.text}
    </text>
  );
}

/** The head of an arrow with its tip at a point, pointing along `turn` degrees (0 right, 90 down). */
export function Head({ x, y, turn }: At & { readonly turn: number }) {
  return <path class="head" d="M0 0L-8 -2.4L-8 2.4Z" transform={`translate(${x} ${y}) rotate(${turn})`} />;
}

/** A size along a line; the arrows stand outside where there is no room between them. */
export function Dimension(props: { readonly from: At; readonly to: At; readonly signal?: boolean }) {
  const { from, to } = props;
  const turn = (Math.atan2(to.y - from.y, to.x - from.x) * 180) / Math.PI;
  const size = Math.hypot(to.x - from.x, to.y - from.y);
  if (!(size > 0)) return null;
  const [dx, dy] = [(to.x - from.x) / size, (to.y - from.y) / size];
  const inside = size >= 20;
  const reach = inside ? 0 : 14;
  return (
    <g class={props.signal ? 'signal' : ''}>
      <line
        class="thin"
        x1={from.x - dx * reach}
        y1={from.y - dy * reach}
        x2={to.x + dx * reach}
        y2={to.y + dy * reach}
      />
      <Head {...from} turn={inside ? turn + 180 : turn} />
      <Head {...to} turn={inside ? turn : turn + 180} />
    </g>
  );
}

/** An arrow that says where something is to be moved. */
export function Arrow({ from, to }: { readonly from: At; readonly to: At }) {
  const turn = (Math.atan2(to.y - from.y, to.x - from.x) * 180) / Math.PI;
  return (
    <g>
      <line x1={from.x} y1={from.y} x2={to.x} y2={to.y} />
      <Head {...to} turn={turn} />
    </g>
  );
}

/** A line from a place on the work out to its dimension. */
export const Extension = ({ from, to }: { readonly from: At; readonly to: At }) => (
  <line class="thin" x1={from.x} y1={from.y} x2={to.x} y2={to.y} />
);

/** The middle of a mass: a ring in quarters. */
export function Centre({ x, y, open }: At & { readonly open?: boolean }) {
  const r = 8;
  return (
    <g transform={`translate(${x} ${y})`} class={open ? 'centre-mark' : 'centre-mark signal'}>
      <circle r={r} class="ring" />
      <path class="quarter" d={`M0 0V${-r}A${r} ${r} 0 0 1 ${r} 0ZM0 0V${r}A${r} ${r} 0 0 1 ${-r} 0Z`} />
    </g>
  );
}
