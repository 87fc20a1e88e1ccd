/** What goes into the can, and how far what is in the tank goes: part after part along a scale as long as the vessel. */
import { formatQuantity } from '../../../quantity/index.ts';
import { Label, Plate } from '../../drawing/lines.tsx';
import { type Scale, ScaleDrawing, scaleHeight } from '../../drawing/scale.tsx';
import { platesWords } from '../../words/plates.ts';
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

type Part = { readonly size: number; readonly text: string };
type Vessel = { readonly name: string; readonly parts: readonly Part[]; readonly scale: Scale };

const HEAD = 24;
const heightOf = ({ scale }: Vessel): number => HEAD + scaleHeight(scale) + 8;

export const premixPlate: DrawPlate = asked => {
  const vessels = [canOf(asked), tankOf(asked)].filter(vessel => vessel !== undefined);
  if (vessels.length === 0) return undefined;
  const title = vessels.map(({ name, parts }) => `${name}: ${parts.map(({ text }) => text).join(', ')}`).join('. ');
  let top = 0;
  return {
    title: `${title}.`,
    head: ['', 'value'],
    rows: SHOWN.flatMap(name => (asked.answer.figures[name] ? [[name, wordsOf(asked, name)]] : [])),
    drawing: (
      <Plate height={vessels.reduce((sum, vessel) => sum + heightOf(vessel), 0)} title={`${title}.`}>
        {vessels.map(vessel => {
          const at = top;
          top += heightOf(vessel);
          return (
            <g key={vessel.name}>
              <Label x={6} y={at + 15} anchor="start" text={vessel.name} look="strong" />
              <ScaleDrawing scale={vessel.scale} top={at + HEAD} />
            </g>
          );
        })}
      </Plate>
    ),
  };
};

function canOf(asked: Asked): Vessel | undefined {
  const [oil, mix] = [figureOf(asked, 'oil to pour'), figureOf(asked, 'mix in the can then')];
  if (!Number.isFinite(oil) || !(mix > 0)) return undefined;
  const had = askedSize(asked, 'in the can', 'volume') || 0;
  const petrol = mix - had - oil;
  const parts = [
    { size: had, text: platesWords.inItBefore(formatQuantity(had, 'l', 2)) },
    { size: petrol, text: platesWords.ofPetrol(formatQuantity(petrol, 'l', 2)) },
    { size: oil, text: platesWords.ofOil(wordsOf(asked, 'oil to pour')) },
  ].filter(({ size }) => size > 0);
  return vessel(platesWords.can(wordsOf(asked, 'mix in the can then')), parts, mix);
}

function tankOf(asked: Asked): Vessel | undefined {
  const [fill, mean, most] = ['fuel to have in the tank', 'burnt in the session', 'burnt at most'].map(name =>
    figureOf(asked, name),
  ) as [number, number, number];
  if (!(fill > 0) || !Number.isFinite(mean + most)) return undefined;
  const reserve = askedSize(asked, 'reserve', 'volume');
  const spare = fill - reserve - mean;
  const holds = askedSize(asked, 'tank holds', 'volume');
  const over = fill > holds;
  const parts = [
    { size: mean, text: platesWords.forSession(formatQuantity(mean, 'l', 1)) },
    { size: spare, text: platesWords.forSpareLapsAndThirsty(formatQuantity(spare, 'l', 1)) },
    { size: reserve, text: platesWords.thatMustBeLeft(formatQuantity(reserve, 'l', 1)) },
  ].filter(({ size }) => size > 0);
  const room = Number.isFinite(holds) ? `, holds ${formatQuantity(holds, 'l', 1)}` : '';
  const whole = Number.isFinite(holds) ? Math.max(holds, fill) : fill;
  return vessel(platesWords.tank(wordsOf(asked, 'fuel to have in the tank'), room, over), parts, whole, over);
}

/** Each part begins where the one before it ended. */
function vessel(name: string, parts: readonly Part[], whole: number, over = false): Vessel {
  let from = 0;
  const bands = parts.map(({ size, text }) => {
    const band = { from, to: from + size, text, signal: over };
    from += size;
    return band;
  });
  return { name, parts, scale: { low: 0, high: whole, above: [], bands } };
}
