/** Numbers of jets from lean to rich: the band, the jet there was, the one to fit, and what is in the box. */
import { Head, Label, Plate, SHEET_WIDTH } from '../../drawing/lines.tsx';
import { across, type Scale, ScaleDrawing, type ScaleMark, scaleHeight } from '../../drawing/scale.tsx';
import { platesWords } from '../../words/plates.ts';
import { type Asked, type DrawPlate, figureOf, saidText, wordsOf } from './asked.ts';

const SHOWN = [
  'jet to fit',
  'jet to fit, at least',
  'jet by theory',
  'jet by the paddock rule',
  'jet by the log',
  'richest of the band',
  'change of air',
  'mixture with the jet as it is',
  'share of the main jet',
] as const;

/** Room one number of three figures takes on the sheet. */
const NUMBER_ROOM = 30;
const HEAD = 28;
const BOX_ROOM = 56;

export const carburationPlate: DrawPlate = asked => {
  const was = Number(saidText(asked, 'jet').replace(',', '.'));
  const [low, high] = [figureOf(asked, 'leanest of the band'), figureOf(asked, 'richest of the band')];
  if (![was, low, high].every(Number.isFinite) || was <= 0) return undefined;
  const box = sizesOf(asked);
  const marks = marksOf(asked, was);
  const near = [low, high, ...marks.map(({ at }) => at)];
  const margin = Math.max(0.12 * (Math.max(...near) - Math.min(...near)), 2);
  const byLog = asked.answer.figures['jet by the log'] !== undefined;
  const scale: Scale = {
    low: Math.min(...near) - margin,
    high: Math.max(...near) + margin,
    above: marks,
    bands: [{ from: low, to: high, text: byLog ? platesWords.byLog : platesWords.theoryToPaddockRule }],
  };
  const inside = box.filter(size => {
    const x = across(size, scale);
    return x > NUMBER_ROOM / 2 && x < SHEET_WIDTH - NUMBER_ROOM / 2;
  });
  const foot = HEAD + scaleHeight(scale);
  const title = platesWords.mainJetFromLean(
    marks.map(({ text }) => text).join(', '),
    wordsOf(asked, 'leanest of the band'),
    wordsOf(asked, 'richest of the band'),
  );
  return {
    title,
    head: ['', 'value'],
    rows: SHOWN.flatMap(name => (asked.answer.figures[name] ? [[name, wordsOf(asked, name)]] : [])),
    drawing: (
      <Plate height={foot + (inside.length > 0 ? BOX_ROOM : 8)} title={title}>
        <Direction />
        <ScaleDrawing scale={scale} top={HEAD} />
        {inside.length > 0 && <Box sizes={inside} scale={scale} top={foot} />}
      </Plate>
    ),
  };
};

function marksOf(asked: Asked, was: number): readonly ScaleMark[] {
  const fit = ['jet to fit', 'jet to fit, at least'].find(name => asked.answer.figures[name]);
  const at = fit === undefined ? Number.NaN : figureOf(asked, fit);
  const least = fit === 'jet to fit' ? '' : platesWords.orNextAbove;
  if (Math.abs(at - was) < 1e-6) return [{ at: was, text: `keep ${saidText(asked, 'jet')}` }];
  const old = { at: was, text: `${saidText(asked, 'jet')} before` };
  if (fit === undefined || !Number.isFinite(at))
    return [old, { at: figureOf(asked, 'richest of the band'), text: platesWords.noneInBox, signal: true }];
  return [old, { at, text: `${at > was ? 'fit' : 'try'} ${wordsOf(asked, fit)}${least}`, signal: true }];
}

const sizesOf = (asked: Asked): readonly number[] =>
  [
    ...new Set(
      saidText(asked, 'jets in the box')
        .split(/[\s;]+|,\s+/)
        .map(word => Number(word.replace(',', '.'))),
    ),
  ]
    .filter(size => size > 0)
    .toSorted((a, b) => a - b);

/** Which way is which, said at both ends. */
const Direction = () => (
  <g>
    <Label x={6} y={15} anchor="start" text={platesWords.leanSeizureSide} look="strong" />
    <Label x={SHEET_WIDTH - 22} y={15} anchor="end" text="rich" look="strong" />
    <line x1={SHEET_WIDTH - 18} x2={SHEET_WIDTH - 8} y1={11} y2={11} />
    <Head x={SHEET_WIDTH - 4} y={11} turn={0} />
  </g>
);

/** What is in the box, each where it lies; a number is left out where it would stand in its neighbour's. */
function Box({
  sizes,
  scale,
  top,
}: {
  readonly sizes: readonly number[];
  readonly scale: Scale;
  readonly top: number;
}) {
  let free = Number.NEGATIVE_INFINITY;
  return (
    <g>
      <Label x={6} y={top + 14} anchor="start" text={platesWords.inBox} look="quiet" />
      {sizes.map(size => {
        const x = across(size, scale);
        const named = x - NUMBER_ROOM / 2 >= free;
        if (named) free = x + NUMBER_ROOM / 2;
        return (
          <g key={size}>
            <line x1={x} x2={x} y1={top + 22} y2={top + 32} />
            {named && <Label x={x} y={top + 48} text={String(size)} />}
          </g>
        );
      })}
      <line class="thin" x1={10} x2={SHEET_WIDTH - 10} y1={top + 32} y2={top + 32} />
    </g>
  );
}
