/** What goes into the can, and how far what is in the tank goes: two bars, each to its own scale. */
import { formatQuantity } from '../../../quantity/index.ts';
import { Label, Plate, SHEET_WIDTH } from '../../drawing/lines.tsx';
import { across } from '../../drawing/scale.tsx';
import { type Asked, askedSize, type DrawPlate, figureOf, wordsOf } from './asked.ts';

const SHOWN = [
  'oil to pour',
  'petrol to pour',
  'mix in the can then',
  'petrol through the same jet',
  'fuel a lap',
  'fuel to have in the tank',
  'burnt in the session',
  'burnt at most',
  'left at the flag, at least',
  'mass burnt',
  'mass at the flag',
  'chance of being heavy enough',
  'ratio by volume',
  'ratio by mass',
] as const;

type Part = { readonly size: number; readonly text: string; readonly open?: boolean };
type Bar = { readonly name: string; readonly parts: readonly Part[]; readonly whole: number; readonly over: boolean };

const LINE = 19;
const heightOf = ({ parts }: Bar): number => 60 + parts.length * LINE;

export const premixPlate: DrawPlate = asked => {
  const bars = [canOf(asked), tankOf(asked)].filter(bar => bar !== undefined);
  if (bars.length === 0) return undefined;
  const title = bars.map(({ name, parts }) => `${name}: ${parts.map(({ text }) => text).join(', ')}`).join('. ');
  let top = 0;
  return {
    title: `${title}.`,
    head: ['', 'value'],
    rows: SHOWN.flatMap(name => (asked.answer.figures[name] ? [[name, wordsOf(asked, name)]] : [])),
    drawing: (
      <Plate height={bars.reduce((sum, bar) => sum + heightOf(bar), 0)} title={`${title}.`}>
        {bars.map(bar => {
          const at = top;
          top += heightOf(bar);
          return <BarDrawing key={bar.name} bar={bar} top={at} />;
        })}
      </Plate>
    ),
  };
};

function canOf(asked: Asked): Bar | undefined {
  const [oil, mix] = [figureOf(asked, 'oil to pour'), figureOf(asked, 'mix in the can then')];
  if (!Number.isFinite(oil) || !(mix > 0)) return undefined;
  const had = askedSize(asked, 'in the can', 'volume') || 0;
  const petrol = mix - had - oil;
  const parts = [
    { size: had, text: `${formatQuantity(had, 'l', 2)} in it before`, open: true },
    { size: petrol, text: `${formatQuantity(petrol, 'l', 2)} of petrol` },
    { size: oil, text: `${wordsOf(asked, 'oil to pour')} of oil` },
  ].filter(({ size }) => size > 0);
  return { name: `Can: ${wordsOf(asked, 'mix in the can then')}`, parts, whole: mix, over: false };
}

function tankOf(asked: Asked): Bar | undefined {
  const [fill, mean, most] = ['fuel to have in the tank', 'burnt in the session', 'burnt at most'].map(name =>
    figureOf(asked, name),
  ) as [number, number, number];
  if (!(fill > 0) || !Number.isFinite(mean + most)) return undefined;
  const reserve = askedSize(asked, 'reserve', 'volume');
  const spare = fill - reserve - mean;
  const holds = askedSize(asked, 'tank holds', 'volume');
  const over = fill > holds;
  const parts = [
    { size: mean, text: `${formatQuantity(mean, 'l', 1)} for the session` },
    { size: spare, text: `${formatQuantity(spare, 'l', 1)} for spare laps and a thirsty day`, open: true },
    { size: reserve, text: `${formatQuantity(reserve, 'l', 1)} that must be left` },
  ].filter(({ size }) => size > 0);
  const room = Number.isFinite(holds) ? `, holds ${formatQuantity(holds, 'l', 1)}` : '';
  const whole = Number.isFinite(holds) ? Math.max(holds, fill) : fill;
  return {
    name: `Tank: ${wordsOf(asked, 'fuel to have in the tank')}${room}${over ? ': too small' : ''}`,
    parts,
    whole,
    over,
  };
}

/** One bar, its parts from the left, each with a line of words under it led up to its middle. */
function BarDrawing({ bar, top }: { readonly bar: Bar; readonly top: number }) {
  const scale = { low: 0, high: bar.whole };
  let from = 0;
  const placed = bar.parts.map(part => {
    const [left, right] = [across(from, scale), across(from + part.size, scale)];
    from += part.size;
    return { ...part, left, right, middle: (left + right) / 2 };
  });
  const foot = top + 46;
  return (
    <g class={bar.over ? 'signal' : ''}>
      <Label x={6} y={top + 15} anchor="start" text={bar.name} look="strong" />
      <rect class="bar open" x={across(0, scale)} y={top + 24} width={SHEET_WIDTH - 20} height={22} />
      {placed.map(({ text, open, left, right, middle }, n) => {
        const y = foot + (placed.length - n) * LINE;
        const toLeft = middle > SHEET_WIDTH / 2;
        return (
          <g key={text}>
            <rect
              class={open ? 'bar open' : 'bar'}
              x={left}
              y={top + 24}
              width={Math.max(right - left, 2)}
              height={22}
            />
            <path class="thin" d={`M${middle} ${top + 44}V${y - 4}H${toLeft ? middle - 6 : middle + 6}`} />
            <Label x={toLeft ? middle - 9 : middle + 9} y={y} anchor={toLeft ? 'end' : 'start'} text={text} />
          </g>
        );
      })}
    </g>
  );
}
