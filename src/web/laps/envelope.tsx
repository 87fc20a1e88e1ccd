/** What the kart held in every direction: accelerating up, braking down, aside to the right, and the curve laid through it. */
import type { GripUsed } from '../../laps/index.ts';
import { Label, Plate, SHEET_WIDTH } from '../drawing/lines.tsx';

const G = 9.80665; // m/s², by definition
const LEFT = 60;

export function Envelope({ title, grip }: { readonly title: string; readonly grip: GripUsed }) {
  const points = grip.directions.flatMap(({ angle, reach }) =>
    reach === undefined ? [] : [{ angle, ahead: (reach * Math.sin(angle)) / G, aside: (reach * Math.cos(angle)) / G }],
  );
  if (points.length === 0) return null;
  const most = Math.max(...points.flatMap(({ ahead, aside }) => [Math.abs(ahead), aside]));
  const rings = Array.from({ length: Math.ceil(most * 2) }, (_, n) => (n + 1) / 2);
  const half = 130;
  const scale = half / (rings.at(-1) ?? 1);
  const cy = half + 18;
  const { aside, drive, braking } = grip;
  const arc = (ry: number, sweep: 0 | 1, rx: number): string =>
    `M${LEFT} ${cy + (sweep === 1 ? -ry : ry)}A${rx} ${ry} 0 0 ${sweep} ${LEFT + rx} ${cy}`;
  return (
    <Plate height={2 * half + 40} title={title}>
      {rings.map(ring => (
        <g key={ring}>
          <path
            class="hair-ring"
            d={`M${LEFT} ${cy - ring * scale}A${ring * scale} ${ring * scale} 0 0 1 ${LEFT} ${cy + ring * scale}`}
          />
          {Number.isInteger(ring) && <Label x={LEFT + ring * scale} y={cy + 16} text={`${ring} g`} look="quiet" />}
        </g>
      ))}
      <line class="thin" x1={LEFT} x2={Math.min(SHEET_WIDTH - 8, LEFT + half + 20)} y1={cy} y2={cy} />
      <line class="thin" x1={LEFT} x2={LEFT} y1={cy - half} y2={cy + half} />
      {aside !== undefined && drive !== undefined && braking !== undefined && (
        <>
          <path class="fitted" d={arc((drive / G) * scale, 1, (aside / G) * scale)} />
          <path class="fitted" d={arc((braking / G) * scale, 0, (aside / G) * scale)} />
        </>
      )}
      {points.map(point => (
        <circle key={point.angle} class="lap-dot" cx={LEFT + point.aside * scale} cy={cy - point.ahead * scale} r={4} />
      ))}
      <Label x={LEFT} y={12} text="drive" look="quiet" />
      <Label x={LEFT} y={2 * half + 36} text="brake" look="quiet" />
      <Label x={LEFT + half + 26} y={cy + 4} anchor="start" text="aside" look="quiet" />
    </Plate>
  );
}
