/** Laps by run, one run beside the other, each with the level that was fitted: what the eye judges and what the reckoning did. */
import { Label, Plate, SHEET_WIDTH } from '../drawing/lines.tsx';
import { roundSteps } from '../drawing/plot.tsx';
import { helpedWords } from '../words/laps/helped.ts';

export type RunDrawn = {
  readonly name: string; // 'A', '23 teeth'
  readonly laps: readonly { readonly time: number; readonly counts: boolean }[]; // s
  readonly level?: number; // s, fitted
};

const LEFT = 40;
const TOP = 30;
const HEIGHT = 170;
/** Laps slower than the middle by more are drawn at the edge, s. */
const FAR = 1.5;

export function RunsPicture({ title, runs }: { readonly title: string; readonly runs: readonly RunDrawn[] }) {
  const counting = runs.flatMap(({ laps }) => laps.flatMap(({ time, counts }) => (counts ? [time] : [])));
  if (counting.length === 0) return null;
  const middle = counting.toSorted((a, b) => a - b)[counting.length >> 1] as number;
  const near = counting.filter(time => time < middle + FAR);
  const [low, high] = [Math.min(...near), Math.max(...near)];
  const steps = roundSteps(low - 0.05, high + 0.05, 5);
  const [bottom, top] = [Math.min(low - 0.05, steps[0] ?? low), Math.max(high + 0.05, steps.at(-1) ?? high)];
  const y = (time: number): number => TOP + (HEIGHT * (top - Math.min(time, top))) / (top - bottom);
  const all = runs.reduce((sum, { laps }) => sum + laps.length + 1, 0);
  const wide = (SHEET_WIDTH - LEFT - 6) / all;
  let at = 0;
  const placed = runs.map(run => {
    const from = at;
    at += run.laps.length + 1;
    return { run, from };
  });
  const x = (place: number): number => LEFT + wide * (place + 0.75);
  return (
    <Plate height={TOP + HEIGHT + 22} title={title}>
      {steps.map(step => (
        <g key={step}>
          <line class="hair" x1={LEFT} x2={SHEET_WIDTH - 6} y1={y(step)} y2={y(step)} />
          <Label x={LEFT - 5} y={y(step) + 4} anchor="end" text={String(step)} look="quiet" />
        </g>
      ))}
      {placed.map(({ run, from }) => (
        <g key={from}>
          {run.laps.map(({ time, counts }, n) => (
            <LapMark key={n} x={x(from + n)} y={y(time)} counts={counts} off={time > top} />
          ))}
          {run.level !== undefined && (
            <line
              class="level"
              x1={x(from - 0.5)}
              x2={x(from + run.laps.length - 0.5)}
              y1={y(run.level)}
              y2={y(run.level)}
            />
          )}
          <Label x={x(from + run.laps.length / 2 - 0.5)} y={14} text={run.name} look="strong" />
        </g>
      ))}
      <Label x={4} y={TOP + HEIGHT + 16} anchor="start" text={helpedWords.sOpenDoesNotCount} look="quiet" />
    </Plate>
  );
}

function LapMark({
  x,
  y,
  counts,
  off,
}: {
  readonly x: number;
  readonly y: number;
  readonly counts: boolean;
  readonly off: boolean;
}) {
  if (off) return <path class="head" d="M0 -7L5 3L-5 3Z" transform={`translate(${x} ${y})`} />;
  return <circle class={counts ? 'lap-dot' : 'lap-dot open'} cx={x} cy={y} r={3.5} />;
}
