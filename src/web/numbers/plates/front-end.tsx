/** Steering over its whole range: how it lifts the front corners, and what is left on the inner rear wheel. */
import { askedSweep, type Sweep, steeringAngles } from '../../../numbers/index.ts';
import { Label, Plate, SHEET_WIDTH } from '../../drawing/lines.tsx';
import { type Axes, type Line, PlotFrame, PlotLine, plotX, plotY } from '../../drawing/plot.tsx';
import { platesWords } from '../../words/plates.ts';
import { type Asked, askedSize, type DrawPlate, figureOf, wordsOf } from './asked.ts';

const COUNT = 49;
const DEGREE = Math.PI / 180;
const FRONT = { top: 92, height: 190 } as const;
const REAR = { top: 350, height: 110 } as const;

type Place = {
  readonly steer: number; // degrees, left +
  readonly left: number; // how far that front corner is lifted, mm
  readonly right: number;
  readonly warp: number;
  readonly load: number; // on the inner rear wheel, N; not a number where it is not known
};

/** A contact that goes down pushes its corner of the kart up. */
const placesOf = (sweep: Sweep): readonly Place[] =>
  sweep.steer.map((steer, n) => ({
    steer: steer / DEGREE,
    left: -1000 * (sweep.riseLeft[n] ?? Number.NaN),
    right: -1000 * (sweep.riseRight[n] ?? Number.NaN),
    warp: 1000 * (sweep.warp[n] ?? Number.NaN),
    load: sweep.innerRear[n] ?? Number.NaN,
  }));

const upText = (value: number): string => (Number.isFinite(value) ? value.toFixed(1) : 'not reached');
const loadText = (value: number): string =>
  Number.isFinite(value) ? (value > 0 ? value.toFixed(0) : platesWords.offRoad) : 'not reached';
const lookWords = { plain: 'full', dashed: 'dashed', signal: 'thick' } as const;

/** Room above and below what is drawn. */
function axesOf(most: number, sizes: readonly number[], at: { readonly top: number; readonly height: number }): Axes {
  const [low, high] = [Math.min(0, ...sizes), Math.max(0, ...sizes)];
  const edge = 0.08 * (high - low);
  return { x: [-most, most], y: [low - edge, high + edge], ...at };
}

export const frontEndPlate: DrawPlate = asked => {
  const key = asked.question['column axis ahead'] === undefined ? 'steering angle' : 'column angle';
  const here = askedSize(asked, key, 'angle') / DEGREE;
  const most = Math.max(20, Number.isFinite(here) ? Math.ceil(Math.abs(here) / 5) * 5 + 5 : 0);
  const sweep = askedSweep(asked.question, steeringAngles(most * DEGREE, COUNT));
  if (sweep === undefined) return undefined;
  const places = placesOf(sweep);
  const sizes = places.flatMap(p => [p.left, p.right, p.warp]).filter(Number.isFinite);
  const loads = places.map(p => p.load).filter(Number.isFinite);
  if (!(Math.max(...sizes, 0) > Math.min(...sizes, 0))) return undefined;
  const front = axesOf(most, sizes, FRONT);
  const rear = loads.length > 0 ? axesOf(most, loads, REAR) : undefined;
  const line = (name: keyof Place, words: string, look: Line['look']): Line => ({
    name: words,
    look,
    points: places.map(p => [p.steer, p[name]]),
  });
  const lines = [
    line('left', platesWords.leftFrontPushedUp, 'plain'),
    line('right', platesWords.rightFrontPushedUp, 'dashed'),
    line('warp', platesWords.warpLeftLessRight, 'signal'),
  ];
  const lift = figureOf(asked, 'inner rear lifts from steering') / DEGREE;
  const turned = key === 'column angle' ? 'column' : 'kingpins';
  const foot = (rear ?? front).top + (rear ?? front).height;
  const title = platesWords.howFarSteeringPushes(
    rear ? platesWords.andLoadLeftOnInner : '',
    turned,
    wordsOf(asked, 'warp'),
    liftWords(asked, lift),
  );
  return {
    title,
    head: [
      platesWords.turn(turned),
      platesWords.leftUpMm,
      platesWords.rightUpMm,
      platesWords.warpMm,
      ...(rear ? [platesWords.innerRearN] : []),
    ],
    rows: places
      .filter((_, n) => n % 6 === 0)
      .map(p => [
        Math.abs(p.steer) < 1e-6 ? 'straight' : `${Math.abs(p.steer).toFixed(0)}° ${p.steer < 0 ? 'right' : 'left'}`,
        upText(p.left),
        upText(p.right),
        upText(p.warp),
        ...(rear ? [loadText(p.load)] : []),
      ]),
    drawing: (
      <Plate height={foot + 44} title={title}>
        {lines.map((l, n) => (
          <g key={l.name}>
            <path class={`curve ${l.look}`} d={`M6 ${14 + n * 20}H36`} />
            <Label x={44} y={18 + n * 20} anchor="start" text={`${l.name} (${lookWords[l.look]})`} />
          </g>
        ))}
        <Label x={6} y={82} anchor="start" text="mm" look="quiet" />
        <PlotFrame axes={front} />
        {lines.map(l => (
          <PlotLine key={l.name} line={l} axes={front} />
        ))}
        {rear && <InnerRear axes={rear} line={line('load', platesWords.innerRear, 'plain')} low={Math.min(...loads)} />}
        {[front, ...(rear ? [rear] : [])].map((axes, n) => (
          <g key={axes.top}>
            {Number.isFinite(here) && (
              <Upright axes={axes} at={here} words={n === 0 ? `asked ${Math.abs(here).toFixed(1)}°` : ''} />
            )}
            {Number.isFinite(lift) && Math.abs(lift) <= most && (
              <Upright
                axes={axes}
                at={lift}
                words={n === 0 ? '' : platesWords.lifts(Math.abs(lift).toFixed(1))}
                signal
              />
            )}
          </g>
        ))}
        <Label x={34} y={foot + 36} anchor="start" text={platesWords.steeredRight} look="quiet" />
        <Label x={SHEET_WIDTH - 10} y={foot + 36} anchor="end" text={platesWords.steeredLeft} look="quiet" />
      </Plate>
    ),
  };
};

const liftWords = (asked: Asked, lift: number): string =>
  Number.isFinite(lift)
    ? platesWords.innerRearWheelLifts(wordsOf(asked, 'inner rear lifts from steering'))
    : platesWords.atWhichSteeringInner;

/** Below the line at zero the wheel is off the road. */
function InnerRear({ axes, line, low }: { readonly axes: Axes; readonly line: Line; readonly low: number }) {
  return (
    <g>
      <Label x={6} y={axes.top - 10} anchor="start" text={platesWords.leftOnInnerRearWheel} />
      <PlotFrame axes={axes} />
      <PlotLine line={line} axes={axes} />
      <Label
        x={SHEET_WIDTH - 18}
        y={plotY(0, axes) + (low < 0 ? 15 : -5)}
        anchor="end"
        text={platesWords.offRoadOrLifts(low)}
        look="quiet"
      />
    </g>
  );
}

function Upright(props: {
  readonly axes: Axes;
  readonly at: number;
  readonly words: string;
  readonly signal?: boolean;
}) {
  const { axes, at } = props;
  const x = plotX(at, axes);
  const left = x > SHEET_WIDTH * 0.7;
  return (
    <g class={props.signal ? 'signal' : ''}>
      <line class="thin" x1={x} x2={x} y1={axes.top} y2={axes.top + axes.height} />
      {props.words !== '' && (
        <Label x={left ? x - 5 : x + 5} y={axes.top + 14} anchor={left ? 'end' : 'start'} text={props.words} />
      )}
    </g>
  );
}
