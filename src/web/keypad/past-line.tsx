import { useState } from 'preact/hooks';
import type { Dimension } from '../../quantity/index.ts';
import { keypadWords } from '../words/keypad.ts';
import { dateOf } from '../words/reads.ts';
import { type Past, pastSaid, wholeOf } from './past.ts';

type Limits = { readonly min?: number | undefined; readonly max?: number | undefined }; // SI

const WIDE = 132;
const HIGH = 56;
const EDGE = 7;

/** The last reading in words, the last five drawn small, and the same as a table. */
export function PastReadings(props: {
  readonly past: readonly Past[];
  readonly unit: string;
  readonly dimension: Dimension | undefined;
  readonly limits: Limits;
}) {
  const { past, unit, dimension, limits } = props;
  const [open, setOpen] = useState(false);
  const said = pastSaid(past, unit, dimension);
  if (past.length < 2) return <p class="past soft">{said}</p>;
  return (
    <div class="past">
      {/* No fold of the browser's own: it takes long to make one, and this one is made with every step. */}
      <button type="button" aria-expanded={open} onClick={() => setOpen(!open)}>
        <span>{said}</span>
        <PastLine past={past} limits={limits} />
      </button>
      {open && <PastTable past={past} />}
    </div>
  );
}

function PastTable({ past }: { readonly past: readonly Past[] }) {
  return (
    <table>
      <thead>
        <tr>
          <th scope="col">{keypadWords.when}</th>
          <th scope="col">{keypadWords.by}</th>
          <th scope="col" class="number">
            {keypadWords.read}
          </th>
        </tr>
      </thead>
      <tbody>
        {past.toReversed().map(one => (
          <tr key={one.fact}>
            <td>{dateOf(one.at)}</td>
            <td>{one.by}</td>
            <td class="number">{wholeOf(one)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** Readings from left to right, the last filled; a limit is a dashed line, as far as it comes near. */
function PastLine({ past, limits }: { readonly past: readonly Past[]; readonly limits: Limits }) {
  const values = past.map(({ si }) => si);
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const reach = high - low || Math.abs(high) * 0.01 || 1;
  const near = [limits.min, limits.max].filter(
    (limit): limit is number => limit !== undefined && limit > low - 2 * reach && limit < high + 2 * reach,
  );
  const [bottom, top] = [Math.min(low, ...near), Math.max(high, ...near)];
  const x = (place: number): number => EDGE + ((WIDE - 2 * EDGE) * place) / (past.length - 1);
  const y = (si: number): number =>
    top === bottom ? HIGH / 2 : EDGE + ((HIGH - 2 * EDGE) * (top - si)) / (top - bottom);
  const points = values.map((si, i) => `${x(i).toFixed(1)} ${y(si).toFixed(1)}`);
  return (
    <svg class="past-line" viewBox={`0 0 ${WIDE} ${HIGH}`} aria-hidden="true">
      {near.map(limit => (
        <line key={limit} class="limit" x1={0} x2={WIDE} y1={y(limit)} y2={y(limit)} />
      ))}
      <path d={`M${points.join('L')}`} />
      {values.map((si, i) => (
        <circle
          key={i}
          cx={x(i)}
          cy={y(si)}
          r={i === values.length - 1 ? 5 : 3}
          class={i === values.length - 1 ? 'last' : undefined}
        />
      ))}
    </svg>
  );
}
