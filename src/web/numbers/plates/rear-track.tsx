/** The rear axle from behind, to scale across: width over the tyres, gap and engagement of each hub, what to move. */
import { Arrow, Dimension, Extension, Label, Plate, SHEET_WIDTH } from '../../drawing/lines.tsx';
import { platesWords } from '../../words/plates.ts';
import { type Asked, askedSize, type DrawPlate, figureOf, saidText, twoLines, wordsOf } from './asked.ts';

const SIDES = ['left', 'right'] as const;
type Side = (typeof SIDES)[number];

/** Used only to have something to draw where the question is silent: common practice, m. */
const USUAL = { hub: 0.075, tyre: 0.207 };
const MIDDLE = SHEET_WIDTH / 2;
const AXLE = 100; // height on the sheet of the middle of the axle
/** Less than this is left where it is [m]. */
const STILL = 0.0005;

/** Distances from the middle of the kart outward [m], as the hubs stand now where that is known. */
function stations(asked: Asked, side: Side) {
  const faces = askedSize(asked, 'bearing faces', 'length');
  const face = askedSize(asked, 'bearing face left', 'length');
  const bearing = Number.isNaN(face) ? faces / 2 : side === 'left' ? face : faces - face;
  const now = gapNow(asked, side);
  const gap = Number.isNaN(now) ? figureOf(asked, `gap ${side}`) : now;
  const own = askedSize(asked, `hub length ${side}`, 'length');
  const both = askedSize(asked, 'hub length', 'length');
  const hub = [own, both, USUAL.hub].find(size => size > 0) ?? USUAL.hub;
  return { bearing, gap, hub, half: figureOf(asked, `half width ${side}`) };
}

const gapNow = (asked: Asked, side: Side): number => {
  const own = askedSize(asked, `gap ${side}`, 'length');
  return Number.isNaN(own) ? askedSize(asked, 'gap', 'length') : own;
};

const moveText = (asked: Asked, side: Side): string => {
  const move = figureOf(asked, `${side} hub outward`);
  if (!Number.isFinite(move)) return platesWords.notAsked;
  if (Math.abs(move) < STILL) return platesWords.leave;
  return `${move < 0 ? 'in' : 'out'} ${wordsOf(asked, `${side} hub outward`).replaceAll('-', '')}`;
};

export const rearTrackPlate: DrawPlate = asked => {
  const at = { left: stations(asked, 'left'), right: stations(asked, 'right') };
  const outermost = Math.max(at.left.half, at.right.half);
  if (![outermost, at.left.bearing, at.left.gap, at.right.gap].every(size => size > 0)) return undefined;
  const scale = (MIDDLE - 6) / outermost;
  const x = (side: Side, out: number): number => MIDDLE + (side === 'left' ? -1 : 1) * out * scale;
  const width = wordsOf(asked, 'width');
  const limit = saidText(asked, 'width limit');
  const engaged = (side: Side): string => wordsOf(asked, `engagement ${side}`);
  const rows: readonly (readonly [string, (side: Side) => string])[] = [
    [platesWords.gapNow, side => saidText(asked, `gap ${side}`) || saidText(asked, 'gap') || platesWords.notSaid],
    [platesWords.gapToSet, side => wordsOf(asked, `gap ${side}`)],
    [platesWords.axleInHub, engaged],
    [platesWords.moveHub, side => moveText(asked, side)],
  ];
  const title = platesWords.rearAxleFromBehindOver(width, moveText(asked, 'left'), moveText(asked, 'right'));
  return {
    title,
    head: ['', 'left', 'right'],
    rows: [
      [platesWords.widthOverTyres, width, ''],
      ...(limit === '' ? [] : [['limit', limit, '']]),
      ...rows.map(([name, of]) => [name, of('left'), of('right')]),
    ],
    drawing: (
      <Plate height={limit === '' ? 300 : 322} title={title}>
        <Dimension from={{ x: x('left', at.left.half), y: 20 }} to={{ x: x('right', at.right.half), y: 20 }} />
        <Label x={MIDDLE} y={14} text={platesWords.overTyres(width)} />
        <line class="chain" x1={MIDDLE} x2={MIDDLE} y1={28} y2={178} />
        <rect
          class="shape"
          x={x('left', at.left.half - 0.1)}
          y={AXLE - 6}
          width={(at.left.half + at.right.half - 0.2) * scale}
          height={12}
        />
        {SIDES.map(side => (
          <Corner key={side} asked={asked} side={side} at={at[side]} x={out => x(side, out)} scale={scale} />
        ))}
        {rows.slice(0, 3).map(([name, of], n) => (
          <g key={name}>
            <Label x={MIDDLE} y={200 + n * 40} text={name} look="quiet" />
            {SIDES.map(side => (
              <Reading key={side} side={side} y={200 + n * 40} text={of(side)} />
            ))}
          </g>
        ))}
        {limit !== '' && <Label x={MIDDLE} y={316} text={platesWords.limitOfRules(limit)} look="quiet" />}
      </Plate>
    ),
  };
};

function Reading({ side, y, text }: { readonly side: Side; readonly y: number; readonly text: string }) {
  const [metric, tape] = twoLines(text);
  const x = side === 'left' ? 6 : SHEET_WIDTH - 6;
  const anchor = side === 'left' ? 'start' : 'end';
  return (
    <>
      <Label x={x} y={y} anchor={anchor} text={metric} look="strong" />
      {tape !== '' && <Label x={x} y={y + 15} anchor={anchor} text={tape} />}
    </>
  );
}

/** Bearing, hub and tyre of one side, with the arrow that says where the hub goes. */
function Corner(props: {
  readonly asked: Asked;
  readonly side: Side;
  readonly at: ReturnType<typeof stations>;
  readonly x: (out: number) => number;
  readonly scale: number;
}) {
  const { asked, side, at, x, scale } = props;
  const [face, hubIn, hubOut] = [x(at.bearing), x(at.bearing + at.gap), x(at.bearing + at.gap + at.hub)];
  const tyre = x(at.half - USUAL.tyre / 2);
  const move = figureOf(asked, `${side} hub outward`);
  const moves = Number.isFinite(move) && Math.abs(move) >= STILL;
  const hub = (hubIn + hubOut) / 2;
  const inward = side === 'left' ? 1 : -1;
  const way = move < 0 ? inward : -inward;
  return (
    <g>
      <rect
        class="shape tyre"
        x={tyre - (USUAL.tyre * scale) / 2}
        y={AXLE - 33}
        width={USUAL.tyre * scale}
        height={66}
        rx={8}
      />
      <rect class="shape" x={Math.min(face, face + inward * 14)} y={AXLE - 13} width={14} height={26} />
      <rect
        class={moves ? 'shape signal' : 'shape'}
        x={Math.min(hubIn, hubOut)}
        y={AXLE - 12}
        width={Math.abs(hubOut - hubIn)}
        height={24}
      />
      <Extension from={{ x: face, y: AXLE + 16 }} to={{ x: face, y: 164 }} />
      <Extension from={{ x: hubIn, y: AXLE + 16 }} to={{ x: hubIn, y: 164 }} />
      <Dimension from={{ x: face, y: 158 }} to={{ x: hubIn, y: 158 }} />
      <Label x={(face + hubIn) / 2} y={150} text="gap" look="quiet" />
      {moves && (
        <g class="signal">
          <Arrow from={{ x: hub - way * 17, y: 60 }} to={{ x: hub + way * 17, y: 60 }} />
          <Label
            x={side === 'left' ? 6 : SHEET_WIDTH - 6}
            y={48}
            anchor={side === 'left' ? 'start' : 'end'}
            text={`${side} hub ${moveText(asked, side)}`}
            look="strong"
          />
        </g>
      )}
    </g>
  );
}
