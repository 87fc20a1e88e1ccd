/** Crank and piston at the ignition point to scale, and the ports as rings of one turn of the crank. */
import { Dimension, Extension, Head, Label, Plate } from '../../drawing/lines.tsx';
import { platesWords } from '../../words/plates.ts';
import { type Asked, askedSize, type DrawPlate, figureOf, saidText, wordsOf } from './asked.ts';

const SHOWN = [
  'ignition before top',
  'piston below top at ignition',
  'gauge reading at ignition',
  '0.1 mm of drop turns',
  'exhaust opens after top',
  'exhaust closes before top',
  'exhaust duration',
  'exhaust duration with the new gasket',
  'transfer opens after top',
  'transfer closes before top',
  'transfer duration',
  'transfer duration with the new gasket',
  'blowdown',
] as const;
const PORTS = ['exhaust', 'transfer'] as const;
type PortName = (typeof PORTS)[number];
const CRANK_HEIGHT = 304;
const RING_HEIGHT = 212;

export const enginePlate: DrawPlate = asked => {
  const ignition = Number.isFinite(figureOf(asked, 'ignition before top'));
  const ports = PORTS.filter(name => Number.isFinite(figureOf(asked, `${name} duration`)));
  if (!ignition && ports.length === 0) return undefined;
  const said = [
    ...(ignition
      ? [
          platesWords.ignitionBeforeTop(
            wordsOf(asked, 'ignition before top'),
            wordsOf(asked, 'piston below top at ignition'),
          ),
        ]
      : []),
    ...ports.map(name => `${name} open ${wordsOf(asked, `${name} duration`)}`),
  ];
  const title = platesWords.engine(said.join('; '));
  const top = ignition ? CRANK_HEIGHT : 0;
  return {
    title,
    head: ['', 'value'],
    rows: SHOWN.flatMap(name => (asked.answer.figures[name] ? [[name, wordsOf(asked, name)]] : [])),
    drawing: (
      <Plate height={top + (ports.length > 0 ? RING_HEIGHT : 0)} title={title}>
        {ignition && <CrankAt asked={asked} ports={ports} />}
        {ports.length > 0 && <PortRing asked={asked} ports={ports} top={top} />}
      </Plate>
    ),
  };
};

const MIDDLE = 92; // of the crank, from the left
const WORDS = 186;
const HEAD_ROOM = 34;

/** Where everything stands, in the units of the sheet: y down, the crank turning clockwise, so before top is on the left. */
function placed(asked: Asked) {
  const [r, l] = [askedSize(asked, 'stroke', 'length') / 2, askedSize(asked, 'rod', 'length')];
  const bore = askedSize(asked, 'bore', 'length') || 2 * r; // square where it was not given
  const away = askedSize(asked, 'gudgeon offset', 'length') || 0;
  const e = saidText(asked, 'offset toward') === 'rising side' ? -away : away;
  const crown = 0.5 * bore; // above the pin: for the drawing only
  const scale = (CRANK_HEIGHT - HEAD_ROOM - 24) / (2 * r + l + crown);
  const turned = Math.asin(e / (r + l)) - figureOf(asked, 'ignition before top');
  const high = Math.sqrt((r + l) ** 2 - e ** 2);
  const drop = figureOf(asked, 'piston below top at ignition');
  const centre = HEAD_ROOM + scale * (high + crown);
  return {
    scale,
    r: r * scale,
    half: (bore * scale) / 2,
    axis: MIDDLE + e * scale,
    centre,
    top: HEAD_ROOM, // of the crown at top
    now: HEAD_ROOM + drop * scale,
    gudgeon: HEAD_ROOM + (drop + crown) * scale,
    pin: { x: MIDDLE + r * scale * Math.sin(turned), y: centre - r * scale * Math.cos(turned) },
    bottom: HEAD_ROOM + 2 * r * scale,
  };
}

function CrankAt({ asked, ports }: { readonly asked: Asked; readonly ports: readonly PortName[] }) {
  const { scale, r, half, axis, centre, top, now, gudgeon, pin, bottom } = placed(asked);
  const [left, right] = [axis - half, axis + half];
  const skirt = gudgeon + half * 0.7;
  return (
    <g>
      <path d={`M${left} ${top - 8}V${bottom + half}M${right} ${top - 8}V${bottom + half}`} />
      {ports.map(name => {
        const roof = top + scale * figureOf(asked, `${name} roof below the crown at top`);
        const x = name === 'exhaust' ? right : left - 7;
        return (
          <rect
            key={name}
            class={name === 'exhaust' ? 'bar' : 'bar open'}
            x={x}
            y={roof}
            width={7}
            height={bottom - roof}
          />
        );
      })}
      <circle class="ring" cx={MIDDLE} cy={centre} r={r} />
      <path
        class="chain"
        d={`M${MIDDLE} ${centre + r + 6}V${top - 14}M${MIDDLE - r - 8} ${centre}H${MIDDLE + r + 8}`}
      />
      <rect class="shape" x={left + 1.5} y={now} width={2 * half - 3} height={skirt - now} />
      <line class="axle" x1={axis} y1={gudgeon} x2={pin.x} y2={pin.y} />
      <circle class="ring" cx={axis} cy={gudgeon} r={7} />
      <g class="signal">
        <line x1={MIDDLE} y1={centre} x2={pin.x} y2={pin.y} />
        <circle class="ring" cx={pin.x} cy={pin.y} r={6} />
      </g>
      <circle class="ring" cx={MIDDLE} cy={centre} r={4} />
      <Extension from={{ x: axis - half + 6, y: top }} to={{ x: WORDS - 4, y: top }} />
      <Extension from={{ x: right, y: now }} to={{ x: WORDS - 4, y: now }} />
      <Dimension from={{ x: WORDS - 18, y: top }} to={{ x: WORDS - 18, y: now }} signal />
      <g class="signal">
        <Label
          x={WORDS}
          y={top + 5}
          anchor="start"
          text={platesWords.belowTop(wordsOf(asked, 'piston below top at ignition'))}
          look="strong"
        />
      </g>
      <Label x={WORDS} y={top + 23} anchor="start" text={`gauge ${wordsOf(asked, 'gauge reading at ignition')}`} />
      <g class="signal">
        <Label
          x={WORDS}
          y={centre - 6}
          anchor="start"
          text={platesWords.beforeTop(wordsOf(asked, 'ignition before top'))}
          look="strong"
        />
      </g>
      {Number.isFinite(figureOf(asked, '0.1 mm of drop turns')) && (
        <Label
          x={WORDS}
          y={centre + 12}
          anchor="start"
          text={platesWords.aTenthIs(wordsOf(asked, '0.1 mm of drop turns'))}
        />
      )}
      <Label x={WORDS} y={centre + 30} anchor="start" text={platesWords.turnsClockwise} look="quiet" />
    </g>
  );
}

const RING = { x: 98, wide: 82, thick: 15, gap: 4 } as const;
const full = 2 * Math.PI;

/** A place on the ring, by its angle clockwise from top. */
const on = (y: number, radius: number, angle: number) => ({
  x: RING.x + radius * Math.sin(angle),
  y: y - radius * Math.cos(angle),
});

const circle = (y: number, radius: number): string =>
  `M${RING.x} ${y - radius}a${radius} ${radius} 0 1 1 0 ${2 * radius}a${radius} ${radius} 0 1 1 0 ${-2 * radius}`;

/** A sector of a ring from one angle to a later one. */
function sector(y: number, outer: number, from: number, to: number): string {
  const inner = outer - RING.thick;
  const long = to - from > Math.PI ? 1 : 0;
  const text = ({ x, y: down }: { readonly x: number; readonly y: number }): string =>
    `${x.toFixed(1)} ${down.toFixed(1)}`;
  return `M${text(on(y, outer, from))}A${outer} ${outer} 0 ${long} 1 ${text(on(y, outer, to))}L${text(on(y, inner, to))}A${inner} ${inner} 0 ${long} 0 ${text(on(y, inner, from))}Z`;
}

function PortRing(props: { readonly asked: Asked; readonly ports: readonly PortName[]; readonly top: number }) {
  const { asked, ports, top } = props;
  const y = top + 24 + RING.wide;
  const at = figureOf(asked, 'ignition before top');
  const outerOf = (name: PortName): number => RING.wide - (name === 'exhaust' ? 0 : RING.thick + RING.gap);
  const inner = RING.wide - 2 * RING.thick - RING.gap;
  const [spark, foot] = [on(y, RING.wide + 5, -at), on(y, inner - 6, -at)];
  const turn = on(y, inner - 16, 0.9);
  return (
    <g>
      <Label x={RING.x} y={top + 14} text="top" look="quiet" />
      <Label x={RING.x} y={y + RING.wide + 17} text="bottom" look="quiet" />
      <path class="chain" d={`M${RING.x} ${y - RING.wide - 5}V${y + RING.wide + 5}`} />
      {ports.map(name => (
        <g key={name}>
          <path class="thin" d={circle(y, outerOf(name))} />
          <path class="thin" d={circle(y, outerOf(name) - RING.thick)} />
          <path
            class={name === 'exhaust' ? 'bar' : 'bar open'}
            d={sector(
              y,
              outerOf(name),
              figureOf(asked, `${name} opens after top`),
              full - figureOf(asked, `${name} closes before top`),
            )}
          />
        </g>
      ))}
      <path
        class="thin"
        d={`M${on(y, inner - 16, -0.5).x} ${on(y, inner - 16, -0.5).y}A${inner - 16} ${inner - 16} 0 0 1 ${turn.x} ${turn.y}`}
      />
      <Head x={turn.x} y={turn.y} turn={(0.9 * 180) / Math.PI} />
      {Number.isFinite(at) && (
        <g class="signal">
          <line x1={foot.x} y1={foot.y} x2={spark.x} y2={spark.y} />
          <Label x={spark.x - 4} y={Math.max(spark.y, top + 30)} anchor="end" text="spark" />
        </g>
      )}
      {ports.map((name, n) => {
        const line = y - 46 + n * 62;
        const from = platesWords.afterTop(wordsOf(asked, `${name} opens after top`));
        const to = `to ${wordsOf(asked, `${name} closes before top`)} before`;
        return (
          <g key={name}>
            <rect class={name === 'exhaust' ? 'bar' : 'bar open'} x={WORDS + 10} y={line - 10} width={12} height={10} />
            <Label
              x={WORDS + 28}
              y={line}
              anchor="start"
              text={`${name} ${wordsOf(asked, `${name} duration`)}`}
              look="strong"
            />
            <Label x={WORDS + 28} y={line + 18} anchor="start" text={from} />
            <Label x={WORDS + 28} y={line + 36} anchor="start" text={to} />
          </g>
        );
      })}
      {Number.isFinite(figureOf(asked, 'blowdown')) && (
        <Label x={WORDS + 28} y={y + 78} anchor="start" text={`blowdown ${wordsOf(asked, 'blowdown')}`} />
      )}
    </g>
  );
}
