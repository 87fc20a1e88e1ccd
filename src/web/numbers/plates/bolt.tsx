/** A bolt as two scales: the torque that may be pulled, and the preload it makes against what the bolt bears. */
import { Label, Plate, SHEET_WIDTH } from '../../drawing/lines.tsx';
import { type Scale, ScaleDrawing, scaleHeight } from '../../drawing/scale.tsx';
import { platesWords } from '../../words/plates.ts';
import { type Asked, type DrawPlate, figureOf, saidText, wordsOf } from './asked.ts';

const SHOWN = [
  'least wrench setting',
  'largest wrench setting',
  'least torque',
  'largest torque',
  'torque',
  'wrench setting',
  'least preload',
  'preload',
  'largest preload',
  'preload at share of yield',
  'proof load',
  'breaking load',
] as const;

/** Only what the answer holds. */
const mark = (asked: Asked, name: string, words = name) =>
  Number.isFinite(figureOf(asked, name))
    ? [{ at: figureOf(asked, name), text: `${words} ${wordsOf(asked, name)}` }]
    : [];

const yieldWords = (asked: Asked): string => platesWords.ofYield(saidText(asked, 'yield share') || '90 %');

function torqueScale(asked: Asked): Scale | undefined {
  const wrench = Number.isFinite(figureOf(asked, 'least wrench setting'));
  const [least, largest, set] = wrench
    ? ['least wrench setting', 'largest wrench setting', 'wrench setting']
    : ['least torque', 'largest torque', 'torque'];
  const [low, high, at] = [figureOf(asked, least), figureOf(asked, largest), figureOf(asked, set)];
  if (!Number.isFinite(high)) return undefined;
  return {
    low: 0,
    high: 1.2 * Math.max(high, Number.isFinite(at) ? at : 0),
    above: mark(asked, set, wrench ? platesWords.wrench : 'torque'),
    bands: [{ from: low, to: high, text: `${wordsOf(asked, least)} to ${wordsOf(asked, largest)}` }],
  };
}

function preloadScale(asked: Asked): Scale | undefined {
  const [proof, breaking, most] = ['proof load', 'breaking load', 'largest preload'].map(name => figureOf(asked, name));
  if (proof === undefined || !(proof > 0)) return undefined;
  const reach = Number.isFinite(most) ? Number(most) : figureOf(asked, 'preload');
  const over = reach > proof;
  return {
    low: 0,
    high: 1.05 * Math.max(breaking ?? 0, proof, Number.isFinite(reach) ? reach : 0),
    above: [
      ...mark(asked, 'preload', 'likely'),
      ...mark(asked, 'preload at share of yield', yieldWords(asked)),
      ...mark(asked, 'proof load', 'proof load'),
      ...mark(asked, 'breaking load', platesWords.breaksAt),
    ],
    bands: Number.isFinite(most)
      ? [
          {
            from: figureOf(asked, 'least preload'),
            to: reach,
            text: `${wordsOf(asked, 'least preload')} to ${wordsOf(asked, 'largest preload')}${over ? platesWords.beyondProof : ''}`,
            signal: over,
          },
        ]
      : [],
  };
}

export const boltPlate: DrawPlate = asked => {
  const scales = [
    { name: platesWords.wrenchWithoutMakers, scale: torqueScale(asked) },
    { name: platesWords.preload, scale: preloadScale(asked) },
  ].flatMap(({ name, scale }) => (scale ? [{ name, scale }] : []));
  if (scales.length === 0) return undefined;
  const tops = scales.map((_, n) => scales.slice(0, n).reduce((sum, { scale }) => sum + scaleHeight(scale) + 40, 6));
  const last = scales.at(-1);
  const height = (tops.at(-1) ?? 0) + (last ? scaleHeight(last.scale) : 0) + 26;
  const title = platesWords.torqueAndPreload(
    scales
      .map(({ name, scale }) => `${name}: ${[...scale.bands, ...scale.above].map(m => m.text).join(', ')}`)
      .join('. '),
  );
  return {
    title,
    head: ['', 'value'],
    rows: SHOWN.flatMap(name => (asked.answer.figures[name] ? [[name, wordsOf(asked, name)]] : [])),
    drawing: (
      <Plate height={height} title={title}>
        {scales.map(({ name, scale }, n) => (
          <g key={name}>
            <Label x={6} y={(tops[n] ?? 0) + 13} anchor="start" text={name} look="strong" />
            <line class="hair" x1={6} x2={SHEET_WIDTH - 6} y1={(tops[n] ?? 0) + 20} y2={(tops[n] ?? 0) + 20} />
            <ScaleDrawing scale={scale} top={(tops[n] ?? 0) + 24} />
          </g>
        ))}
      </Plate>
    ),
  };
};
