/** The speeds of each run over time with the curve that fits them, and what slows the kart at each speed. */
import { coastSpeed, fitCoast, type TracePoint } from '../../../numbers/index.ts';
import { inUnit, parseQuantity } from '../../../quantity/index.ts';
import { Label, Plate } from '../../drawing/lines.tsx';
import { type Axes, type Line, PlotFrame, PlotLine, plotX, plotY } from '../../drawing/plot.tsx';
import { platesWords } from '../../words/plates.ts';
import { type Asked, type DrawPlate, wordsOf } from './asked.ts';

const STEPS = 40;
const RUNS = ['first run points', 'return run points'] as const;
const SHOWN = [
  'drag area',
  'drag area within ±',
  'rolling coefficient',
  'rolling coefficient within ±',
  'air force at 90 km/h',
  'rolling force',
  'scatter of the speeds',
  'time between the speeds',
  'speed that uses up the power',
] as const;

type Run = { readonly name: string; readonly points: readonly TracePoint[]; readonly curve: Line };

function sizeOf(text: unknown, dimension: 'time' | 'speed'): number {
  const parsed = parseQuantity(text, dimension);
  return parsed.ok ? parsed.value.si : Number.NaN;
}

function runsOf({ question }: Asked, unit: string): readonly Run[] {
  return RUNS.flatMap((name, n) => {
    const rows = question[name];
    if (!Array.isArray(rows)) return [];
    const whole = (rows as readonly Record<string, unknown>[]).map(row => ({
      time: sizeOf(row.time, 'time'),
      speed: sizeOf(row.speed, 'speed'),
    }));
    const begin = whole[0]?.time ?? 0;
    const points = whole.map(({ time, speed }) => ({ time: time - begin, speed }));
    const fit = fitCoast(points);
    const last = points.at(-1)?.time ?? 0;
    if (fit === undefined || !(last > 0)) return [];
    const curve: Line = {
      name,
      look: n === 0 ? 'plain' : 'dashed',
      points: Array.from({ length: STEPS + 1 }, (_, step) => {
        const time = (last * step) / STEPS;
        return [time, inUnit(coastSpeed(time, fit.start, fit), unit)] as const;
      }),
    };
    return [{ name, points, curve }];
  });
}

export const dragPlate: DrawPlate = asked => {
  const first = asked.question['first run points'];
  const written = Array.isArray(first)
    ? parseQuantity((first[0] as Record<string, unknown>)?.speed, 'speed')
    : undefined;
  const unit = written?.ok ? written.value.unit : 'km/h';
  const runs = runsOf(asked, unit);
  const all = runs.flatMap(run => run.points);
  if (all.length === 0) return undefined;
  const speeds = all.map(({ speed }) => inUnit(speed, unit));
  const axes: Axes = {
    x: [0, 1.04 * Math.max(...all.map(({ time }) => time))],
    y: [0, 1.08 * Math.max(...speeds)],
    top: 74,
    height: 230,
  };
  const title = platesWords.speedOverTimeOfKart(wordsOf(asked, 'drag area'), wordsOf(asked, 'rolling coefficient'));
  return {
    title,
    head: ['', 'value'],
    rows: SHOWN.flatMap(name => (asked.answer.figures[name] ? [[name, wordsOf(asked, name)]] : [])),
    drawing: (
      <Plate height={axes.top + axes.height + 30} title={title}>
        {runs.map(({ name, curve }, n) => (
          <g key={name}>
            <path class={`curve ${curve.look}`} d={`M6 ${14 + n * 20}H36`} />
            <Mark x={21} y={14 + n * 20} square={n === 1} />
            <Label x={44} y={18 + n * 20} anchor="start" text={name.replace(' points', '')} />
          </g>
        ))}
        <Label x={6} y={64} anchor="start" text={unit} look="quiet" />
        <PlotFrame axes={axes} unit=" s" />
        {runs.map(({ name, points, curve }, n) => (
          <g key={name}>
            <PlotLine line={curve} axes={axes} />
            {points.map(({ time, speed }) => (
              <Mark key={time} x={plotX(time, axes)} y={plotY(inUnit(speed, unit), axes)} square={n === 1} />
            ))}
          </g>
        ))}
      </Plate>
    ),
  };
};

/** A ring for the first run, a square for the way back: told apart without colour. */
const Mark = ({ x, y, square }: { readonly x: number; readonly y: number; readonly square: boolean }) =>
  square ? (
    <rect class="ring" x={x - 3.5} y={y - 3.5} width={7} height={7} />
  ) : (
    <circle class="ring" cx={x} cy={y} r={4} />
  );
