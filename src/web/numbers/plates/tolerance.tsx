/** A size on its scale: at worst, and as far as twice its standard uncertainty, against the limits. */
import { Label, Plate } from '../../drawing/lines.tsx';
import { type Scale, ScaleDrawing, scaleHeight } from '../../drawing/scale.tsx';
import { platesWords } from '../../words/plates.ts';
import { askedSize, type DrawPlate, figureOf, saidText, wordsOf } from './asked.ts';

const SHOWN = [
  'size',
  'worst case',
  'expanded uncertainty',
  'chance inside limits',
  'least reading that proves it',
  'largest reading that proves it',
] as const;

export const tolerancePlate: DrawPlate = asked => {
  const [size, worst, likely] = ['size', 'worst case', 'expanded uncertainty'].map(name => figureOf(asked, name)) as [
    number,
    number,
    number,
  ];
  const limits = (['min', 'max'] as const).map(key => ({
    at: askedSize(asked, key, 'length'),
    text: saidText(asked, key),
  }));
  const ends = [size - worst, size + worst, size - likely, size + likely, ...limits.map(l => l.at)].filter(
    Number.isFinite,
  );
  const [low, high] = [Math.min(...ends), Math.max(...ends)];
  if (!(high > low)) return undefined;
  const margin = 0.12 * (high - low);
  const [min, max] = limits;
  const outside = (from: number, to: number): boolean => from < (min?.at ?? from) || to > (max?.at ?? to);
  const scale: Scale = {
    low: low - margin,
    high: high + margin,
    above: [
      { at: size, text: `size ${wordsOf(asked, 'size')}` },
      ...limits.flatMap(({ at, text }, n) =>
        Number.isFinite(at) ? [{ at, text: `${n === 0 ? 'least' : 'largest'} ${text}` }] : [],
      ),
    ],
    bands: [
      {
        from: size - worst,
        to: size + worst,
        text: platesWords.atWorst(
          wordsOf(asked, 'worst case'),
          outside(size - worst, size + worst) ? platesWords.pastLimit : '',
        ),
        signal: outside(size - worst, size + worst),
      },
      {
        from: size - likely,
        to: size + likely,
        text: platesWords.likelyAbout(wordsOf(asked, 'expanded uncertainty')),
      },
    ],
  };
  const title = platesWords.sizeOnScale([...scale.above, ...scale.bands].map(m => m.text).join(', '));
  return {
    title,
    head: ['', 'value'],
    rows: [
      ...SHOWN.flatMap(name => (asked.answer.figures[name] ? [[name, wordsOf(asked, name)]] : [])),
      ...limits.flatMap(({ text }, n) => (text === '' ? [] : [[platesWords.largestAllowed(n), text]])),
    ],
    drawing: (
      <Plate height={scaleHeight(scale) + 34} title={title}>
        <Label x={6} y={15} anchor="start" text={platesWords.sizeAgainstItsLimits} look="strong" />
        <ScaleDrawing scale={scale} top={24} />
      </Plate>
    ),
  };
};
