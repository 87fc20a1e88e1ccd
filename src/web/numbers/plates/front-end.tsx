/** What steering does to the front corners: how far each is lifted, and the warp that lightens the inner rear wheel. */
import { Label, Plate, SHEET_WIDTH } from '../../drawing/lines.tsx';
import { type Axes, type Line, PlotFrame, PlotLine, plotX } from '../../drawing/plot.tsx';
import { type Asked, askedSize, type DrawPlate, figureOf, wordsOf } from './asked.ts';

const STEPS = 24; // to each side
const DEGREE = Math.PI / 180;

/** Heights do not need it, and without it no search for where the wheel lifts is made at each angle. */
const WEIGHING: ReadonlySet<string> = new Set([
  'mass',
  'front share',
  'cg height',
  'cg height front',
  'cg height rear',
  'cg left',
  'lateral acceleration',
]);

type Place = { readonly steer: number; readonly left: number; readonly right: number; readonly warp: number };

/** The same question over the whole range of steering, in degrees and mm; what is refused is a gap. */
function sweep(asked: Asked, key: string, most: number): readonly Place[] {
  const question = Object.fromEntries(Object.entries(asked.question).filter(([name]) => !WEIGHING.has(name)));
  return Array.from({ length: 2 * STEPS + 1 }, (_, n) => {
    const steer = (most * (n - STEPS)) / STEPS;
    const answer = asked.ask({ ...question, [key]: `${steer.toFixed(4)}°` });
    const of = (name: string): number =>
      answer.kind === 'answer' ? (answer.figures[name]?.si ?? Number.NaN) * 1000 : Number.NaN;
    // A contact that goes down pushes its corner of the kart up.
    return { steer, left: -of('contact height left'), right: -of('contact height right'), warp: of('warp') };
  });
}

const text = (value: number): string => (Number.isFinite(value) ? `${value.toFixed(1)} mm` : 'not known');

export const frontEndPlate: DrawPlate = asked => {
  const key = asked.question['column axis ahead'] === undefined ? 'steering angle' : 'column angle';
  const here = askedSize(asked, key, 'angle') / DEGREE;
  const most = Math.max(20, Number.isFinite(here) ? Math.ceil(Math.abs(here) / 5) * 5 + 5 : 0);
  const places = sweep(asked, key, most);
  const sizes = places.flatMap(p => [p.left, p.right, p.warp]).filter(Number.isFinite);
  const [low, high] = [Math.min(0, ...sizes), Math.max(0, ...sizes)];
  if (!(high > low)) return undefined;
  const edge = 0.08 * (high - low);
  const axes: Axes = { x: [-most, most], y: [low - edge, high + edge], top: 92, height: 220 };
  const line = (name: 'left' | 'right' | 'warp', words: string, look: Line['look']): Line => ({
    name: words,
    look,
    points: places.map(p => [p.steer, p[name]]),
  });
  const lines = [
    line('left', 'left front lifted', 'plain'),
    line('right', 'right front lifted', 'dashed'),
    line('warp', 'warp: left less right', 'signal'),
  ];
  const lift = figureOf(asked, 'inner rear lifts from steering') / DEGREE;
  const turned = key === 'column angle' ? 'column' : 'kingpins';
  const title = `How far steering lifts each front corner, in mm, against the turn of the ${turned}. At the asked angle warp is ${wordsOf(asked, 'warp')}; ${liftWords(asked, lift)}.`;
  return {
    title,
    head: [`turn of the ${turned}`, 'left lifted', 'right lifted', 'warp'],
    rows: places
      .filter((_, n) => n % 6 === 0)
      .map(p => [
        p.steer === 0 ? 'straight' : `${Math.abs(p.steer).toFixed(0)}° ${p.steer < 0 ? 'right' : 'left'}`,
        text(p.left),
        text(p.right),
        text(p.warp),
      ]),
    drawing: (
      <Plate height={axes.top + axes.height + 44} title={title}>
        {lines.map((l, n) => (
          <g key={l.name}>
            <path class={`curve ${l.look}`} d={`M6 ${14 + n * 20}H36`} />
            <Label x={44} y={18 + n * 20} anchor="start" text={l.name} />
          </g>
        ))}
        <Label x={6} y={82} anchor="start" text="mm" look="quiet" />
        <PlotFrame axes={axes} />
        {lines.map(l => (
          <PlotLine key={l.name} line={l} axes={axes} />
        ))}
        {Number.isFinite(here) && <Upright axes={axes} at={here} words={`asked ${Math.abs(here).toFixed(1)}°`} />}
        {Number.isFinite(lift) && Math.abs(lift) <= most && (
          <Upright axes={axes} at={lift} words={`inner rear lifts ${lift.toFixed(1)}°`} low signal />
        )}
        <Label x={34} y={axes.top + axes.height + 36} anchor="start" text="← steered right" look="quiet" />
        <Label x={SHEET_WIDTH - 10} y={axes.top + axes.height + 36} anchor="end" text="steered left →" look="quiet" />
      </Plate>
    ),
  };
};

const liftWords = (asked: Asked, lift: number): string =>
  Number.isFinite(lift)
    ? `the inner rear wheel lifts from ${wordsOf(asked, 'inner rear lifts from steering')}`
    : 'at which steering the inner rear wheel lifts is not asked or not reached';

function Upright(props: {
  readonly axes: Axes;
  readonly at: number;
  readonly words: string;
  readonly low?: boolean;
  readonly signal?: boolean;
}) {
  const { axes, at } = props;
  const x = plotX(at, axes);
  const left = x > SHEET_WIDTH * 0.7;
  return (
    <g class={props.signal ? 'signal' : ''}>
      <line class="thin" x1={x} x2={x} y1={axes.top} y2={axes.top + axes.height} />
      <Label
        x={left ? x - 5 : x + 5}
        y={props.low ? axes.top + axes.height - 8 : axes.top + 14}
        anchor={left ? 'end' : 'start'}
        text={props.words}
      />
    </g>
  );
}
