/** The rear axle from behind, at the sizes of the kart file: bearings, hubs, wheels, sprocket, disc, and what is measured on it. */
import type { Item, Kart } from '../../kart/index.ts';
import { rearTrackTarget } from '../../numbers/index.ts';
import { type Point, placeOf } from '../drawing/geometry.ts';
import { dimensionedWords } from '../words/dimensioned.ts';
import { figureOf, type Of } from './figures.ts';
import {
  box,
  type Leader,
  type Length,
  type LineType,
  line,
  point,
  ROW,
  type Sheet,
  type Stroke,
  sheetWidth,
} from './model.ts';
import { eachSide, itemsOf, lessOf, outward, SIDES, type Side } from './sides.ts';

export function rearAxle(of: Of): Sheet {
  const figures = figuresOf(of);
  const size = (key: keyof typeof figures): number => figures[key].size;
  const drawnAs = (key: keyof typeof figures): LineType => (figures[key].nominal === null ? 'beside' : 'wide');
  const face = size('faces') / 2;
  const half = size('width') / 2;
  const tyre = { width: size('tyreWidth'), height: size('tyre') };
  const end = size('axle') / 2;
  const at = (side: Side) => {
    const hubIn = face + size(`gap ${side}`);
    const mount = hubIn + size(`hub ${side}`);
    return { hubIn, mount };
  };
  const x = (side: Side, out: number): number => outward(side) * out;
  const foot = tyre.height / 2 + 78;
  const row = (n: number): number => foot + n * ROW;
  const top = -tyre.height / 2 - ROW;

  const across = (figure: string, from: number, to: number, y: number, on: number, words: Length['words']): Length => ({
    figure,
    way: 'across',
    from: point(Math.min(from, to), on),
    to: point(Math.max(from, to), on),
    at: y,
    words,
  });
  const inwards = (side: Side): Length['words'] => (side === 'left' ? 'after' : 'before');
  const outwards = (side: Side): Length['words'] => (side === 'left' ? 'before' : 'after');

  const wide = sheetWidth(half);
  const strokes: readonly Stroke[] = [
    { line: 'axis', shape: line(point(-half - 40, 0), point(half + 40, 0)) },
    { line: 'axis', shape: line(point(0, top + 20), point(0, foot + 40)) },
    ...SIDES.flatMap((side): Stroke[] => {
      const { hubIn, mount } = at(side);
      const centre = x(side, half - tyre.width / 2);
      return [
        {
          line: drawnAs('width'),
          shape: box(
            Math.min(x(side, half), x(side, half - tyre.width)),
            -tyre.height / 2,
            tyre.width,
            tyre.height,
            24,
          ),
        },
        { line: 'axis', shape: line(point(centre, top - 20), point(centre, tyre.height / 2 + 30)) },
        {
          line: figures[`hub ${side}`].nominal === null || figures[`gap ${side}`].nominal === null ? 'beside' : 'wide',
          shape: box(Math.min(x(side, hubIn), x(side, mount)), -40, mount - hubIn, 80, 4),
        },
        { line: drawnAs('faces'), shape: box(Math.min(x(side, face), x(side, face - 28)), -46, 28, 92, 4) },
        // The end of the axle is inside the hub.
        {
          line: 'hidden',
          shape: line(point(x(side, hubIn), -size('bore') / 2), point(x(side, end), -size('bore') / 2)),
        },
        { line: 'hidden', shape: line(point(x(side, hubIn), size('bore') / 2), point(x(side, end), size('bore') / 2)) },
        { line: 'hidden', shape: line(point(x(side, end), -size('bore') / 2), point(x(side, end), size('bore') / 2)) },
      ];
    }),
    {
      line: drawnAs('bore'),
      shape: line(point(-at('left').hubIn, -size('bore') / 2), point(at('right').hubIn, -size('bore') / 2)),
    },
    {
      line: drawnAs('bore'),
      shape: line(point(-at('left').hubIn, size('bore') / 2), point(at('right').hubIn, size('bore') / 2)),
    },
    ...turning(of.kart).map(
      ({ at: where, radius }): Stroke => ({
        line: 'beside',
        shape: box(where - 6, -radius, 12, 2 * radius, 2),
      }),
    ),
  ];

  const lengths: readonly Length[] = [
    across('tyreWidth', -half, -half + tyre.width, top, -tyre.height / 2, 'after'),
    across('track', -half + tyre.width / 2, half - tyre.width / 2, top - ROW, top, 'between'),
    across('width', -half, half, top - 2 * ROW, -tyre.height / 2, 'between'),
    across('faces', -face, face, row(1), 46, 'between'),
    ...SIDES.flatMap(side => {
      const { hubIn, mount } = at(side);
      const inside = hubIn + size(`inside ${side}`);
      return [
        across(`gap ${side}`, x(side, face), x(side, hubIn), row(0), 46, inwards(side)),
        across(`outboard ${side}`, x(side, mount), x(side, half), row(0), 40, outwards(side)),
        across(`hub ${side}`, x(side, hubIn), x(side, mount), row(1), 40, outwards(side)),
        across(`inside ${side}`, x(side, hubIn), x(side, inside), row(2), 40, inwards(side)),
      ];
    }),
    across('axle', -end, end, row(3), size('bore') / 2, 'between'),
    {
      figure: 'tyre',
      way: 'along',
      from: point(half, tyre.height / 2),
      to: point(half, -tyre.height / 2),
      at: half + 90,
      words: 'between',
    },
  ];

  const leaders: readonly Leader[] = [
    ...turning(of.kart).flatMap(({ at: where, radius, words, figure }): Leader[] => {
      if (words === undefined) return [];
      const side = where < 0 ? 'left' : 'right';
      const away = (y: number): Point => point(where + outward(side) * 24, y);
      if (figure === undefined) return [{ words, at: point(where, radius), knee: away(radius + 41), side }];
      return [{ figure, words, at: point(where, -radius), knee: away(-radius - 72), side }];
    }),
    { figure: 'bore', at: point(-20, -size('bore') / 2), knee: point(-44, -132), side: 'left' },
    { figure: 'straight', at: point(20, size('bore') / 2), knee: point(44, 98), side: 'right' },
    { figure: 'centred', at: point(-end, 10), knee: point(-half - 30, 76), side: 'left' },
  ];

  return {
    name: 'rear axle',
    title: dimensionedWords.inTitleBlock['rear axle'],
    view: { x: -wide / 2, y: top - 2 * ROW - 76, width: wide, height: row(3) + 66 - (top - 2 * ROW - 76) },
    figures,
    strokes,
    lengths,
    leaders,
    angles: [],
    captions: [
      { at: point(-half + tyre.width / 2, row(3) + 36), words: dimensionedWords.left },
      { at: point(half - tyre.width / 2, row(3) + 36), words: dimensionedWords.right },
    ],
  };
}

function figuresOf(of: Of) {
  const { kart } = of;
  const { item, atCorner } = itemsOf(kart);
  const less = lessOf(kart);
  const onSide = (side: Side, number: string): Item | undefined =>
    atCorner(`rear ${side}`, one => one.measure?.number === number);
  const target = rearTrackTarget(kart.dimensions, kart.rules?.limits['overall rear width']?.max);
  const worked = 'missing' in target ? undefined : target;
  return {
    width: figureOf(of, {
      name: dimensionedWords.rear.width,
      dimensions: ['overall rear width'],
      item: item(one => one.measure?.dimension === 'overall rear width'),
      settings: ['overall rear width', 'rear width', 'rear track'],
      limit: 'overall rear width',
      usual: 1390,
    }),
    track: figureOf(of, {
      name: dimensionedWords.rear.track,
      worked: less('overall rear width', 'rear tyre width'),
      reference: true,
      usual: 1183,
    }),
    faces: figureOf(of, { name: dimensionedWords.rear.faces, dimensions: ['bearing faces'], usual: 655 }),
    ...eachSide('gap', side =>
      figureOf(of, {
        name: dimensionedWords.rear.gap(side),
        worked: (side === 'left' ? worked?.gapLeft : worked?.gapRight) ?? Number.NaN,
        item: onSide(side, 'rear-track'),
        usual: 142,
      }),
    ),
    ...eachSide('hub', side =>
      figureOf(of, {
        name: dimensionedWords.rear.hub(side),
        dimensions: [`hub length ${side}`, 'hub length'],
        usual: 75,
      }),
    ),
    ...eachSide('outboard', side =>
      figureOf(of, {
        name: dimensionedWords.rear.outboard(side),
        dimensions: [`tyre outboard ${side}`, 'tyre outboard'],
        usual: 150,
      }),
    ),
    ...eachSide('inside', side =>
      figureOf(of, {
        name: dimensionedWords.rear.inside(side),
        worked: (side === 'left' ? worked?.engagementLeft : worked?.engagementRight) ?? Number.NaN,
        reference: true,
        item: onSide(side, 'hub-engagement'),
        usual: 50,
      }),
    ),
    axle: figureOf(of, { name: dimensionedWords.rear.axle, dimensions: ['axle length'], usual: 1040 }),
    bore: figureOf(of, {
      name: dimensionedWords.rear.bore,
      round: true,
      dimensions: ['axle diameter'],
      limit: 'axle diameter',
      usual: 50,
    }),
    tyre: figureOf(of, {
      name: dimensionedWords.rear.tyre,
      round: true,
      dimensions: ['rear tyre diameter'],
      usual: 274,
    }),
    tyreWidth: figureOf(of, { name: dimensionedWords.rear.tyreWidth, dimensions: ['rear tyre width'], usual: 207 }),
    chain: figureOf(of, {
      name: dimensionedWords.rear.chain,
      item: item(one => one.key === 'chain line'),
      usual: 0,
    }),
    centred: figureOf(of, {
      name: dimensionedWords.rear.centred,
      item: item(one => one.key === 'centred'),
      usual: 0,
    }),
    straight: figureOf(of, {
      name: dimensionedWords.rear.straight,
      item: item(one => one.part === 'axle' && one.key === 'straight'),
      usual: 0,
    }),
  };
}

/** What turns with the axle between the bearings, where the kart file places it; its diameter is usual, nobody measured it. */
function turning({ parts }: Kart): readonly Turning[] {
  const found = (kind: string, shown: Omit<Turning, 'at'>): readonly Turning[] =>
    Object.values(parts)
      .filter(part => part.kind === kind && Math.abs(placeOf(part).y) < 60)
      .filter(part => kind !== 'axle bearing' || part.corner === 'whole')
      .slice(0, 1)
      .map(part => ({ at: placeOf(part).x, ...shown }));
  return [
    ...found('rear sprocket', { radius: 80, words: dimensionedWords.chainLine, figure: 'chain' }),
    ...found('brake disc', { radius: 80, words: dimensionedWords.brakeDisc }),
    ...found('axle bearing', { radius: 46 }),
  ];
}
type Turning = {
  readonly at: number; // from the middle, mm
  readonly radius: number;
  readonly words?: string;
  readonly figure?: string;
};
