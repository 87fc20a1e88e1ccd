/** From cold to hot for each tyre, and what this kart's own runs say to set over the temperature of the track. */
import {
  type ColdAsked,
  coldGauge,
  gasFrom,
  type PressureRun,
  riseFrom,
  type Surface,
  type TyrePlace,
  tyreGasTemperature,
} from '../../../numbers/index.ts';
import { type Dimension, inUnit, parseQuantity } from '../../../quantity/index.ts';
import { Label, Plate, SHEET_WIDTH } from '../../drawing/lines.tsx';
import { type Axes, type Line, PlotFrame, PlotLine, plotX, plotY } from '../../drawing/plot.tsx';
import { type Scale, ScaleDrawing, scaleHeight } from '../../drawing/scale.tsx';
import { platesWords } from '../../words/plates.ts';
import { type Asked, askedSize, type DrawPlate, figureOf, wordsOf } from './asked.ts';

const STEPS = 24;
type Rows = readonly Readonly<Record<string, unknown>>[];
type Tyre = { readonly name: TyrePlace; readonly hot: number; readonly written: string; readonly unit: string };

const rowsOf = ({ question }: Asked, key: string): Rows =>
  Array.isArray(question[key]) ? (question[key] as Rows) : [];
function sizeIn(row: Rows[number], key: string, dimension: Dimension): number {
  const parsed = parseQuantity(row[key], dimension);
  return parsed.ok ? parsed.value.si : Number.NaN;
}

const tyresOf = (asked: Asked): readonly Tyre[] =>
  rowsOf(asked, 'wanted').flatMap(row => {
    const name = row.tyre as TyrePlace;
    const unit = asked.answer.figures[`cold ${name}`]?.unit;
    return unit === undefined
      ? []
      : [{ name, unit, hot: sizeIn(row, 'hot', 'pressure-gauge'), written: String(row.hot) }];
  });

const cold = (asked: Asked, { name }: Tyre): number => figureOf(asked, `cold ${name}`);

function scaleOf(asked: Asked, tyres: readonly Tyre[]): Scale {
  const least = askedSize(asked, 'least pressure', 'pressure-gauge');
  return {
    low: 0,
    high: 1.15 * Math.max(...tyres.map(({ hot }) => hot)),
    above: Number.isFinite(least) ? [{ at: least, text: platesWords.leastAllowed, signal: true }] : [],
    bands: tyres.map(tyre => ({
      from: cold(asked, tyre),
      to: tyre.hot,
      text: `${tyre.name}: ${wordsOf(asked, `cold ${tyre.name}`)} cold, ${tyre.written} hot`,
      signal: cold(asked, tyre) < least,
    })),
  };
}

/** The record of the question in SI, for this tyre. */
const runsOf = (asked: Asked): readonly PressureRun[] =>
  rowsOf(asked, 'record').map(row => {
    const there = sizeIn(row, 'ambient pressure', 'pressure-absolute');
    return {
      tyre: row.tyre as TyrePlace,
      surface: row.surface as Surface,
      cold: sizeIn(row, 'cold', 'pressure-gauge'),
      coldTemperature: sizeIn(row, 'cold temperature', 'temperature'),
      hot: sizeIn(row, 'hot', 'pressure-gauge'),
      ambient: Number.isFinite(there) ? there : askedSize(asked, 'ambient pressure', 'pressure-absolute'),
      track: sizeIn(row, 'track temperature', 'temperature'),
      laps: sizeIn(row, 'laps', 'count'),
    };
  });

const today = (asked: Asked, { name, hot }: Tyre): ColdAsked => ({
  tyre: name,
  surface: asked.question.surface as Surface,
  track: askedSize(asked, 'track temperature', 'temperature'),
  laps: askedSize(asked, 'laps', 'count'),
  wanted: hot,
  ambient: askedSize(asked, 'ambient pressure', 'pressure-absolute'),
  coldTemperature: askedSize(asked, 'cold temperature', 'temperature'),
});

const onTrack = (kelvin: number): number => inUnit(kelvin, '°C', 'temperature');

export const tyresPlate: DrawPlate = asked => {
  const tyres = tyresOf(asked);
  if (tyres.length === 0) return undefined;
  const scale = scaleOf(asked, tyres);
  const own = tyres.find(({ name }) => Number.isFinite(figureOf(asked, `similar runs ${name}`)));
  const top = 30 + scaleHeight(scale);
  const record = own && recordOf(asked, own, top + 46);
  const title = `${tyres.map(({ name }) => `${name} ${wordsOf(asked, `cold ${name}`)} cold`).join(', ')}.${own ? platesWords.lineIsFromThisKarts(own.name) : ''}`;
  return {
    title,
    head: ['', 'value'],
    rows: tyres.flatMap(({ name, written }) => [
      [platesWords.wantedHot(name), written],
      ...['cold NAME', 'cold NAME, lowest likely', 'cold NAME, highest likely', 'air in tyre NAME', 'similar runs NAME']
        .map(key => key.replace('NAME', name))
        .filter(key => asked.answer.figures[key] !== undefined)
        .map(key => [key, wordsOf(asked, key)]),
    ]),
    drawing: (
      <Plate height={record ? record.axes.top + record.axes.height + 44 : top} title={title}>
        <Label x={6} y={15} anchor="start" text={platesWords.overAirAroundFromCold} look="strong" />
        <ScaleDrawing scale={scale} top={18} />
        {record && <RecordPlot {...record} />}
      </Plate>
    ),
  };
};

type Drawable = {
  readonly axes: Axes;
  readonly tyre: Tyre;
  readonly lines: readonly Line[];
  readonly past: Line['points'];
  readonly now: number;
};

/** Today's question on other track temperatures, from the runs that are like today; undefined where there are too few. */
function recordOf(asked: Asked, tyre: Tyre, top: number): Drawable | undefined {
  const question = today(asked, tyre);
  const rise = riseFrom(runsOf(asked), question);
  if (rise.kind !== 'known') return undefined;
  const set = (gas: number): number =>
    coldGauge({ hot: tyre.hot, ambient: question.ambient, cold: question.coldTemperature, gas });
  // Each run: what would have been right to set, had the tyre got as warm as it did there.
  const past = rise.used.map((run): readonly [number, number] => {
    const gas = tyreGasTemperature({ ...run, from: run.coldTemperature });
    return [onTrack(run.track), inUnit(set(gas), tyre.unit)];
  });
  const seen = [question.track, ...rise.used.map(run => run.track)];
  const [low, high] = [Math.min(...seen) - 2, Math.max(...seen) + 2];
  const found = Array.from({ length: STEPS + 1 }, (_, n) => {
    const track = low + ((high - low) * n) / STEPS;
    const gas = gasFrom(rise.used, track)?.gas;
    return { track, cold: gas && { value: set(gas.value), low: set(gas.high), high: set(gas.low) } };
  });
  const line = (name: string, look: Line['look'], of: 'value' | 'low' | 'high'): Line => ({
    name,
    look,
    points: found.map(({ track, cold }) => [onTrack(track), cold ? inUnit(cold[of], tyre.unit) : Number.NaN] as const),
  });
  const lines = [
    line('set cold', 'plain', 'value'),
    line('lowest', 'dashed', 'low'),
    line('highest', 'dashed', 'high'),
  ];
  const sizes = [...lines.flatMap(each => each.points), ...past].map(([, y]) => y).filter(Number.isFinite);
  const edge = 0.1 * (Math.max(...sizes) - Math.min(...sizes));
  if (!(edge > 0)) return undefined;
  const y = [Math.min(...sizes) - edge, Math.max(...sizes) + edge] as const;
  const axes: Axes = { x: [onTrack(low), onTrack(high)], y, top, height: 190 };
  return { axes, tyre, lines, past, now: onTrack(question.track) };
}

function RecordPlot({ axes, tyre, lines, past, now }: Drawable) {
  const x = plotX(now, axes);
  const left = x > SHEET_WIDTH * 0.7;
  return (
    <g>
      <Label x={6} y={axes.top - 28} anchor="start" text={platesWords.toSetCold(tyre.name)} look="strong" />
      <Label x={6} y={axes.top - 12} anchor="start" text={tyre.unit} look="quiet" />
      <PlotFrame axes={axes} unit="°" />
      {lines.map(line => (
        <PlotLine key={line.name} line={line} axes={axes} />
      ))}
      {past.map(([at, size]) => (
        <circle key={`${at} ${size}`} class="ring" cx={plotX(at, axes)} cy={plotY(size, axes)} r={4} />
      ))}
      <g class="signal">
        <line class="thin" x1={x} x2={x} y1={axes.top} y2={axes.top + axes.height} />
        <Label x={left ? x - 5 : x + 5} y={axes.top + 14} anchor={left ? 'end' : 'start'} text="today" />
      </g>
      <Label x={34} y={axes.top + axes.height + 36} anchor="start" text={platesWords.runTrackC} look="quiet" />
      <Label
        x={SHEET_WIDTH - 10}
        y={axes.top + axes.height + 36}
        anchor="end"
        text="- - 19 of 20 between"
        look="quiet"
      />
    </g>
  );
}
