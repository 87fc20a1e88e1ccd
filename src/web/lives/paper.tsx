/**
 * A life on Weibull paper, where every Weibull life is a straight line: own failures as points by their ranks, the share gone by
 * the record alone as steps, what record and guess together say as a line with its band, the guess alone dashed.
 */
import {
  chanceOver,
  heightOf,
  type KindRecord,
  kaplanMeier,
  lastingOf,
  type Posterior,
  posteriorOf,
  type Tick,
  type WeibullPaper,
  weibullPaper,
} from '../../life/index.ts';
import { Label, Plate, SHEET_WIDTH } from '../drawing/lines.tsx';
import type { Drawn } from '../numbers/plates/asked.ts';
import { livesWords } from '../words/lives.ts';

type Known = Pick<KindRecord, 'lives' | 'prior'>;

const LEFT = 46;
const RIGHT = SHEET_WIDTH - 12;
const TOP = 28;
const TALL = 220;
const [LOWEST, HIGHEST] = [heightOf(0.001), heightOf(0.99)];

export function drawPaper(record: Known, posterior: Posterior, age: number): Drawn {
  const ages = agesOf(record, posterior, age);
  const paper = weibullPaper(record.lives, posterior, ages);
  const guess = record.prior?.scale === undefined ? undefined : posteriorOf(record.prior, []);
  const alone = guess?.kind === 'posterior' ? guess : undefined;
  const guessed = alone && lastingOf(alone);
  const steps = kaplanMeier(record.lives);
  const x = (lnAge: number): number =>
    LEFT + ((RIGHT - LEFT) * (lnAge - Math.log(ages.from))) / Math.log(ages.to / ages.from);
  const y = (height: number): number =>
    TOP + (TALL * (HIGHEST - Math.min(Math.max(height, LOWEST), HIGHEST))) / (HIGHEST - LOWEST);
  const failedBy = (at: number): number => 1 - (steps.findLast(step => step.age <= at)?.share ?? 1);
  const lineOf = (height: (at: WeibullPaper['line'][number]) => number): string =>
    pathOf(
      paper.line
        .map(at => [at.x, height(at)] as const)
        .filter(([, h]) => onPaper(h))
        .map(([ln, h]) => [x(ln), y(h)]),
    );
  return {
    title: livesWords.weibullPaper,
    drawing: (
      <Plate height={TOP + TALL + 82} title={titleOf(record, paper)}>
        <Label x={2} y={14} anchor="start" text={livesWords.shareGone} look="quiet" />
        <path class="wide" d={bandOf(paper, x, y)} />
        <Grid paper={paper} x={x} y={y} />
        {guessed && <path class="curve dashed" d={lineOf(at => heightOf(1 - guessed(at.age)))} />}
        <path class="curve" d={lineOf(at => at.y)} />
        <path class="thin" d={stepsOf(steps, x, y)} />
        {paper.points.map((point, n) => (
          <circle key={`${n} ${point.age}`} class="own" cx={x(point.x)} cy={y(point.y)} r="5" />
        ))}
        {age > ages.from && (
          <g>
            <path class="chain" d={`M${x(Math.log(age))} ${TOP}v${TALL}`} />
            <Label x={x(Math.log(age)) + 5} y={TOP + 13} anchor="start" text={livesWords.nowAt(round(age))} />
          </g>
        )}
        <Label x={(LEFT + RIGHT) / 2} y={TOP + TALL + 34} text={livesWords.hoursItHasRun} look="quiet" />
        {[
          alone ? livesWords.lineWithBandRecord : livesWords.lineWithBandRecordAnd,
          livesWords.failedAtItsRankSteps,
        ].map((text, n) => (
          <Label key={text} x={2} y={TOP + TALL + 56 + 17 * n} anchor="start" text={text} look="quiet" />
        ))}
      </Plate>
    ),
    head: [livesWords.hours, livesWords.of, livesWords.low, livesWords.high, livesWords.guess, livesWords.record],
    rows: paper.across.map(({ text }) => {
      const at = Number(text);
      const { mean, low, high } = chanceOver(posterior, { age: 0, hours: at });
      return [
        text,
        hundred(mean),
        hundred(low),
        hundred(high),
        guessed ? hundred(1 - guessed(at)) : livesWords.none,
        steps.length === 0 ? livesWords.none : hundred(failedBy(at)),
      ];
    }),
  };
}

type Across = (at: number) => number;

/** From a third of the youngest to twice the oldest there is, half of the life that is expected among them. */
function agesOf({ lives }: Known, posterior: Posterior, age: number): { from: number; to: number } {
  const half = goneBy(posterior);
  const all = [...lives.map(life => life.age), age, half].filter(one => one > 0);
  return { from: Math.max(0.1, Math.min(...all) / 3), to: Math.max(...all) * 2 };
}

/** Running hours by which a share is gone, half when none is said, from record and guess. */
export function goneBy(posterior: Posterior, share = 0.5): number {
  const lasting = lastingOf(posterior);
  let [low, high] = [1e-3, 1e5];
  for (let turn = 0; turn < 60; turn++) {
    const middle = Math.sqrt(low * high);
    if (1 - lasting(middle) < share) low = middle;
    else high = middle;
  }
  return Math.sqrt(low * high);
}

function Grid({ paper, x, y }: { readonly paper: WeibullPaper; readonly x: Across; readonly y: Across }) {
  // The classic line at 63.2 % would stand on the words of 50 %.
  const inside = ({ at }: Tick): boolean => at >= LOWEST && at <= HIGHEST && Math.abs(at) > 0.01;
  return (
    <g>
      {paper.up.filter(inside).map(({ at, text }) => (
        <g key={text}>
          <line class="hair" x1={LEFT} x2={RIGHT} y1={y(at)} y2={y(at)} />
          <Label x={LEFT - 5} y={y(at) + 4} anchor="end" text={text} look="quiet" />
        </g>
      ))}
      {paper.across.map(({ at, text }) => (
        <g key={text}>
          <line class="hair" x1={x(at)} x2={x(at)} y1={TOP} y2={TOP + TALL} />
          <Label x={x(at)} y={TOP + TALL + 16} text={text} look="quiet" />
        </g>
      ))}
    </g>
  );
}

/** A line that leaves the sheet ends there. */
const onPaper = (height: number): boolean => height >= LOWEST && height <= HIGHEST;

const pathOf = (points: readonly (readonly [number, number])[]): string =>
  points.map(([px, py], n) => `${n === 0 ? 'M' : 'L'}${px.toFixed(1)} ${py.toFixed(1)}`).join('');

function bandOf({ line }: WeibullPaper, x: Across, y: Across): string {
  const up = line.map(at => [x(at.x), y(at.high)] as const);
  const down = line.map(at => [x(at.x), y(at.low)] as const).toReversed();
  return `${pathOf([...up, ...down])}z`;
}

function stepsOf(steps: ReturnType<typeof kaplanMeier>, x: Across, y: Across): string {
  return steps
    .map(({ age, share }, n) => {
      const [px, py] = [x(Math.log(age)), y(heightOf(1 - share))];
      return n === 0 ? `M${px} ${y(LOWEST)}V${py}` : `H${px}V${py}`;
    })
    .join('');
}

const titleOf = ({ lives }: Known, { points }: WeibullPaper): string =>
  livesWords.shareGoneByRunning(lives.length, points.length);

/** Of 100, in two figures; never said to be none or all. */
function hundred(share: number): string {
  const of = share * 100;
  if (of < 0.1) return of > 0 ? '<0.1' : '0';
  return of > 99 && of < 100 ? '>99' : String(Number(of.toPrecision(2)));
}
export const round = (hours: number): number => Number(hours.toPrecision(2));
