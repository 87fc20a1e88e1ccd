/** This air on one scale with the standard day, its baseline and its band; below, what each instrument adds to the doubt. */
import { formatQuantity } from '../../../quantity/index.ts';
import { Label, Plate } from '../../drawing/lines.tsx';
import { type Scale, ScaleDrawing, scaleHeight } from '../../drawing/scale.tsx';
import { platesWords } from '../../words/plates.ts';
import { type Asked, askedSize, type DrawPlate, figureOf, wordsOf } from './asked.ts';

const STANDARD = 1.225; // kg/m³, ISO 2533 at sea level
const SHOWN = [
  'density',
  'density known to',
  'relative density',
  'relative dry-air density',
  'density altitude',
  'pressure at the track',
  'change since the baseline',
] as const;
const INSTRUMENTS = ['thermometer', 'barometer', 'hygrometer', 'elevation'] as const;

const words = (si: number): string => formatQuantity(si, 'kg/m³', 3);

function densities(asked: Asked): Scale {
  const [now, band] = [figureOf(asked, 'density'), figureOf(asked, 'density known to')];
  const base = askedSize(asked, 'baseline density', 'density');
  const known = wordsOf(asked, 'density known to').replace(' kg/m³', '');
  const all = [STANDARD, now - band, now + band, ...(Number.isFinite(base) ? [base] : [])];
  const room = Math.max(0.02, 0.12 * (Math.max(...all) - Math.min(...all)));
  return {
    low: Math.min(...all) - room,
    high: Math.max(...all) + room,
    above: [],
    bands: [
      { from: STANDARD, to: STANDARD, text: platesWords.standardDay(words(STANDARD)) },
      ...(Number.isFinite(base) ? [{ from: base, to: base, text: `baseline ${words(base)}` }] : []),
      // Denser than the air the jetting was right in: leaner.
      { from: now - band, to: now + band, text: platesWords.thisAir(words(now), known), signal: now > base },
    ],
  };
}

/** What each reading alone leaves open, ± in about 95 of 100 cases. */
const openOf = (asked: Asked) =>
  INSTRUMENTS.flatMap(name => {
    const u = figureOf(asked, `uncertainty from ${name}`);
    return u > 0 ? [{ name, open: 2 * u, text: `± ${formatQuantity(2 * u, '%', 2)}` }] : [];
  });

function doubts(asked: Asked): Scale {
  const open = openOf(asked);
  const whole = 2 * figureOf(asked, 'standard uncertainty of density');
  return {
    low: 0,
    high: 1.05 * whole,
    above: [],
    bands: [
      ...open.map(each => ({ from: 0, to: each.open, text: `${each.name} ${each.text}` })),
      { from: 0, to: whole, text: platesWords.allTogether(formatQuantity(whole, '%', 2)) },
    ],
  };
}

export const airPlate: DrawPlate = asked => {
  const open = openOf(asked);
  if (open.length === 0) return undefined;
  const [top, below] = [densities(asked), doubts(asked)];
  const second = 30 + scaleHeight(top) + 14;
  const title = platesWords.airOfStandardDay(
    wordsOf(asked, 'density'),
    wordsOf(asked, 'density known to'),
    wordsOf(asked, 'relative density'),
    open.map(each => `${each.name} ${each.text}`).join(', '),
  );
  return {
    title,
    head: ['', 'value'],
    rows: [
      ...SHOWN.flatMap(name => (asked.answer.figures[name] ? [[name, wordsOf(asked, name)]] : [])),
      ...open.map(each => [platesWords.open(each.name), each.text]),
    ],
    drawing: (
      <Plate height={second + 24 + scaleHeight(below)} title={title}>
        <Label x={6} y={15} anchor="start" text={platesWords.densityDenserToRight} look="strong" />
        <ScaleDrawing scale={top} top={24} />
        <Label x={6} y={second + 13} anchor="start" text={platesWords.whatEachReadingLeaves} look="strong" />
        <ScaleDrawing scale={below} top={second + 18} />
      </Plate>
    ),
  };
};
