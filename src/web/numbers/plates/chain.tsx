/** The two sprockets to scale with the chain round them; below, how worn it is and how slack. */
import { ORDER_AT, SLACK } from '../../../numbers/index.ts';
import { formatQuantity } from '../../../quantity/index.ts';
import { Dimension, Extension, Label, Plate, SHEET_WIDTH } from '../../drawing/lines.tsx';
import { type Scale, ScaleDrawing, scaleHeight } from '../../drawing/scale.tsx';
import { platesWords } from '../../words/plates.ts';
import { type Asked, askedSize, type DrawPlate, figureOf, saidText, wordsOf } from './asked.ts';

const SHOWN = [
  'links',
  'links to cut',
  'links around',
  'wrap of the front sprocket',
  'stretch',
  'length to replace at',
  'slack least',
  'slack most',
  'pitch',
  'roller',
  'between inner plates',
  'swing of chain speed',
  'pull',
] as const;

const percent = (share: number): string => formatQuantity(share, '%', 1);
const mm = (metres: number): string => formatQuantity(metres, 'mm', 0);

/** Stretch from new to past the end, with the reading on it. */
function stretches(asked: Asked): Scale | undefined {
  const [now, limit] = [figureOf(asked, 'stretch'), figureOf(asked, 'replace at')];
  if (!Number.isFinite(now + limit)) return undefined;
  return {
    low: Math.min(0, now),
    high: Math.max(1.4 * limit, 1.1 * now),
    above: [{ at: now, text: `now ${wordsOf(asked, 'stretch')}`, signal: !(now < ORDER_AT) }],
    bands: [
      { from: ORDER_AT, to: limit, text: platesWords.orderChain(percent(ORDER_AT)) },
      {
        from: limit,
        to: Math.max(1.4 * limit, 1.1 * now),
        text: platesWords.replace(percent(limit)),
        signal: !(now < limit),
      },
    ],
  };
}

function slacks(asked: Asked): Scale | undefined {
  const now = askedSize(asked, 'slack', 'length');
  if (!Number.isFinite(now)) return undefined;
  return {
    low: 0,
    high: Math.max(1.5 * SLACK.most, 1.15 * now),
    above: [{ at: now, text: `now ${saidText(asked, 'slack')}`, signal: now < SLACK.least || now > SLACK.most }],
    bands: [{ from: SLACK.least, to: SLACK.most, text: `wanted ${mm(SLACK.least)} to ${mm(SLACK.most)}` }],
  };
}

export const chainPlate: DrawPlate = asked => {
  const round = sprocketsOf(asked);
  const [worn, slack] = [stretches(asked), slacks(asked)];
  const blocks = [
    ...(worn ? [{ name: platesWords.howWorn, scale: worn }] : []),
    ...(slack ? [{ name: platesWords.howSlackWholeMovement, scale: slack }] : []),
  ];
  if (round === undefined && blocks.length === 0) return undefined;
  const tops = blocks.map((_, n) =>
    blocks.slice(0, n).reduce((sum, { scale }) => sum + 36 + scaleHeight(scale), round?.height ?? 0),
  );
  const height =
    (tops.at(-1) ?? round?.height ?? 0) + (blocks.length > 0 ? 36 + scaleHeight(blocks.at(-1)?.scale ?? NONE) : 0);
  const title = platesWords.chainOnAndTeeth(
    saidText(asked, 'chain'),
    saidText(asked, 'front sprocket'),
    saidText(asked, 'rear sprocket'),
    asked.answer.say.slice(0, 2).join(' '),
  );
  return {
    title,
    head: ['', 'value'],
    rows: SHOWN.flatMap(name => (asked.answer.figures[name] ? [[name, wordsOf(asked, name)]] : [])),
    drawing: (
      <Plate height={height} title={title}>
        {round && <Sprockets {...round} asked={asked} />}
        {blocks.map(({ name, scale }, n) => (
          <g key={name}>
            <Label x={6} y={(tops[n] ?? 0) + 15} anchor="start" text={name} look="strong" />
            <ScaleDrawing scale={scale} top={(tops[n] ?? 0) + 24} />
          </g>
        ))}
      </Plate>
    ),
  };
};

const NONE: Scale = { low: 0, high: 1, above: [], bands: [] };

type Drawn = {
  readonly front: number; // radii and distance on the sheet
  readonly rear: number;
  readonly apart: number;
  readonly height: number;
};

/** The pitch circles and their distance, as large as the sheet allows. */
function sprocketsOf(asked: Asked): Drawn | undefined {
  const centre = askedSize(asked, 'centre distance', 'length');
  const [front, rear] = [figureOf(asked, 'pitch diameter front') / 2, figureOf(asked, 'pitch diameter rear') / 2];
  const scale = Math.min((SHEET_WIDTH - 40) / (centre + front + rear), 75 / rear);
  if (!(scale > 0)) return undefined;
  return { front: front * scale, rear: rear * scale, apart: centre * scale, height: 2 * rear * scale + 92 };
}

/** Seen from the right: the axle behind, so on the left; the engine in front of it. */
function Sprockets({ front, rear, apart, asked }: Drawn & { readonly asked: Asked }) {
  const left = (SHEET_WIDTH - apart - front - rear) / 2 + rear;
  const right = left + apart;
  const y = rear + 26;
  const lean = Math.asin((rear - front) / apart);
  const [dx, dy] = [Math.sin(lean), Math.cos(lean)];
  const run = (side: 1 | -1): string =>
    `M${left + rear * dx} ${y + side * rear * dy}L${right + front * dx} ${y + side * front * dy}`;
  const foot = y + rear + 24;
  return (
    <g>
      <circle class="ring" cx={left} cy={y} r={rear} />
      <circle class="ring" cx={right} cy={y} r={front} />
      <path class="curve plain" d={run(1)} />
      <path class="curve plain" d={run(-1)} />
      <circle class="ring" cx={left} cy={y} r={3} />
      <circle class="ring" cx={right} cy={y} r={3} />
      <Label x={left} y={y - 12} text={`${saidText(asked, 'rear sprocket')} axle`} />
      <Label x={right} y={y - front - 10} text={`${saidText(asked, 'front sprocket')} engine`} />
      <Extension from={{ x: left, y: y + 5 }} to={{ x: left, y: foot + 5 }} />
      <Extension from={{ x: right, y: y + 5 }} to={{ x: right, y: foot + 5 }} />
      <Dimension from={{ x: left, y: foot }} to={{ x: right, y: foot }} />
      <Label x={(left + right) / 2} y={foot - 5} text={saidText(asked, 'centre distance')} />
      <Label x={(left + right) / 2} y={foot + 22} text={taut(asked)} look="strong" />
    </g>
  );
}

/** Where the chosen links are taut. */
function taut(asked: Asked): string {
  const links = wordsOf(asked, 'links');
  const move = figureOf(asked, `${links}, move of the engine`);
  if (!Number.isFinite(move)) return '';
  const way = move > 0 ? 'away from' : 'toward';
  return platesWords.engineAxle(links, formatQuantity(Math.abs(move), 'mm', 1), way);
}
