/** Front share of the braking against the share that uses both axles alike, and which axle locks first. */
import { formatQuantity } from '../../../quantity/index.ts';
import { Label, Plate, SHEET_WIDTH } from '../../drawing/lines.tsx';
import { across, type Scale, ScaleDrawing, scaleHeight } from '../../drawing/scale.tsx';
import { platesWords } from '../../words/plates.ts';
import { type Asked, type DrawPlate, figureOf, twoLines, wordsOf } from './asked.ts';

const SHOWN = [
  'front share of braking',
  'ideal front share',
  'move the bearing forward',
  'front locks at',
  'rear locks at',
  'rear lifts at',
  'deceleration asked for',
  'deceleration without locking',
  'braking force front',
  'braking force rear',
  'braking distance',
] as const;

/** Up to where each axle holds, as bars on one scale of deceleration. */
function locking(asked: Asked): Scale | undefined {
  const axles = (['front', 'rear'] as const).flatMap(axle => {
    const to = figureOf(asked, `${axle} locks at`);
    return Number.isFinite(to) ? [{ axle, to }] : [];
  });
  if (axles.length === 0) return undefined;
  const wanted = figureOf(asked, 'deceleration asked for');
  const first = Math.min(...axles.map(({ to }) => to));
  return {
    low: 0,
    high: 1.1 * Math.max(...axles.map(({ to }) => to), Number.isFinite(wanted) ? wanted : 0),
    above: Number.isFinite(wanted)
      ? [{ at: wanted, text: platesWords.pedalAsks(twoLines(wordsOf(asked, 'deceleration asked for'))[0]) }]
      : [],
    bands: axles.map(({ axle, to }) => ({
      from: 0,
      to,
      text: platesWords.locks(axle, wordsOf(asked, `${axle} locks at`)),
      signal: to === first && wanted > to,
    })),
  };
}

export const brakesPlate: DrawPlate = asked => {
  const share = figureOf(asked, 'front share of braking');
  const ideal = figureOf(asked, 'ideal front share');
  const scale = locking(asked);
  if (scale === undefined) return undefined;
  const title = platesWords.brakingFrontShareIdeal(
    wordsOf(asked, 'front share of braking'),
    wordsOf(asked, 'ideal front share'),
    [...scale.bands, ...scale.above].map(m => m.text).join(', '),
  );
  const both = Number.isFinite(share + ideal);
  const top = both ? 92 : 0;
  return {
    title,
    head: ['', 'value'],
    rows: SHOWN.flatMap(name => (asked.answer.figures[name] ? [[name, wordsOf(asked, name)]] : [])),
    drawing: (
      <Plate height={top + 34 + scaleHeight(scale)} title={title}>
        {both && <Shares asked={asked} share={share} ideal={ideal} />}
        <Label x={6} y={top + 15} anchor="start" text={platesWords.howHardUntilAxleLocks} look="strong" />
        <ScaleDrawing scale={scale} top={top + 24} />
      </Plate>
    ),
  };
};

const WHOLE = { low: 0, high: 1 };

/** All of the braking as one bar, front filled, with a mark where it should part. */
function Shares({ asked, share, ideal }: { readonly asked: Asked; readonly share: number; readonly ideal: number }) {
  const [now, best] = [across(share, WHOLE), across(ideal, WHOLE)];
  const [start, end] = [across(0, WHOLE), across(1, WHOLE)];
  const left = best > SHEET_WIDTH / 2;
  return (
    <g>
      <Label x={start} y={15} anchor="start" text={`front ${wordsOf(asked, 'front share of braking')}`} look="strong" />
      <Label x={end} y={15} anchor="end" text={`rear ${formatQuantity(1 - share, '%', 1)}`} />
      <rect class="bar" x={start} y={24} width={now - start} height={22} />
      <rect class="bar open" x={now} y={24} width={end - now} height={22} />
      <g class="signal">
        <path class="thin" d={`M${best} 20V66`} />
        <Label
          x={left ? best - 6 : best + 6}
          y={66}
          anchor={left ? 'end' : 'start'}
          text={platesWords.usesBothAxlesAlike(wordsOf(asked, 'ideal front share'))}
        />
      </g>
    </g>
  );
}
