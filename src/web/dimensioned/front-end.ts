/** The front end three ways: from above, from behind, and each kingpin from its side; drawn at the sizes of the kart file. */
import type { Point } from '../drawing/geometry.ts';
import { dimensionedWords } from '../words/dimensioned.ts';
import { figureOf, type Of } from './figures.ts';
import {
  type Angle,
  box,
  circle,
  closed,
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

const RADIAN = Math.PI / 180;

export function frontEnd(of: Of): Sheet {
  const figures = figuresOf(of);
  const size = (key: keyof typeof figures): number => figures[key].size;
  const drawnAs = (...keys: readonly (keyof typeof figures)[]): LineType =>
    keys.some(key => figures[key].nominal === null) ? 'beside' : 'wide';
  const half = size('width') / 2;
  const pin = size('pins') / 2;
  const tyre = { width: size('tyreWidth'), height: size('tyre') };
  const middle = half - tyre.width / 2;
  const arm = size('arm');
  // From above the front axle lies at y = -wheelbase, the middle of the rear axle at 0; the other views hang below it.
  const front = -size('wheelbase');
  const nose = front - tyre.height / 2;
  const row = (n: number): number => nose - 78 - n * ROW;
  const behind = front + 590;
  const side = behind + tyre.height + 130;
  const ground = behind + tyre.height / 2;

  const plan: readonly Stroke[] = [
    { line: 'axis', shape: line(point(0, row(0) + 30), point(0, ground + 30)) },
    { line: 'axis', shape: line(point(-half - 40, front), point(half + 40, front)) },
    ...SIDES.flatMap((on): Stroke[] => {
      const out = outward(on);
      return [
        {
          line: drawnAs('width', 'tyreWidth', 'tyre'),
          shape: box(out < 0 ? -half : half - tyre.width, nose, tyre.width, tyre.height, 24),
        },
        {
          line: 'axis',
          shape: line(point(out * middle, row(0) + 20), point(out * middle, front + tyre.height / 2 + 20)),
        },
        { line: drawnAs('pins'), shape: circle(point(out * pin, front), 18) },
        {
          line: drawnAs(`stub ${on}`),
          shape: box(out < 0 ? -middle : pin + 18, front - 12, middle - pin - 18, 24, 3),
        },
        {
          line: drawnAs('arm'),
          shape: closed(
            point(out * (pin - 9), front + 16),
            point(out * (pin - 9), front + arm),
            point(out * (pin + 9), front + arm),
            point(out * (pin + 9), front + 16),
          ),
        },
        { line: 'beside', shape: line(point(out * pin, front + arm), point(out * 30, front + arm)) },
      ];
    }),
    { line: 'beside', shape: box(-9, front + arm - 4, 18, 190, 6) }, // the steering column
    { line: 'axis', shape: line(point(half - 90, 0), point(half + 140, 0)) },
  ];

  const fromBehind: readonly Stroke[] = [
    { line: 'narrow', shape: line(point(-half - 40, ground), point(half + 40, ground)) },
    ...SIDES.flatMap((on): Stroke[] => {
      const out = outward(on);
      const lean = Math.tan(size(`inclination ${on}`) * RADIAN);
      const pinAt = (y: number): Point => point(out * (pin + lean * (y - behind)), y);
      const tilt = out * size(`camber ${on}`) * RADIAN;
      const corner = (x: number, y: number): Point =>
        point(out * middle + x * Math.cos(tilt) - y * Math.sin(tilt), behind + x * Math.sin(tilt) + y * Math.cos(tilt));
      const [w, h] = [tyre.width / 2, tyre.height / 2];
      return [
        {
          line: drawnAs(`camber ${on}`, 'tyreWidth', 'tyre'),
          shape: closed(corner(-w, -h), corner(w, -h), corner(w, h), corner(-w, h)),
        },
        {
          line: drawnAs(`stub ${on}`),
          shape: box(out < 0 ? -middle + w : pin + 14, behind - 12, middle - pin - w - 14, 24, 3),
        },
        { line: 'axis', shape: line(pinAt(behind - 190), pinAt(ground)) },
        { line: 'axis', shape: line(point(out * pin, behind - 150), point(out * pin, behind + 60)) },
      ];
    }),
    {
      line: drawnAs('ride'),
      shape: line(point(-pin + 60, ground - size('ride')), point(pin - 60, ground - size('ride'))),
    },
  ];

  const views = { left: -470, right: 60 } as const;
  const fromTheSide: readonly Stroke[] = SIDES.flatMap((on): Stroke[] => {
    const at = point(views[on], side);
    const back = on === 'left' ? 1 : -1; // seen from the left the kart drives to the left
    const lean = Math.tan(size(`caster ${on}`) * RADIAN) * back;
    return [
      { line: drawnAs('tyre'), shape: circle(at, tyre.height / 2) },
      { line: 'axis', shape: line(point(at.x, at.y - 190), point(at.x, at.y + tyre.height / 2 + 16)) },
      { line: 'axis', shape: line(point(at.x - tyre.height / 2 - 16, at.y), point(at.x + tyre.height / 2 + 16, at.y)) },
      {
        line: drawnAs(`caster ${on}`),
        shape: line(point(at.x + lean * 100, at.y - 100), point(at.x - lean * 100, at.y + 100)),
      },
      { line: 'axis', shape: line(point(at.x + lean * 190, at.y - 190), point(at.x + lean * 100, at.y - 100)) },
      {
        line: 'narrow',
        shape: line(point(at.x - 170, side + tyre.height / 2), point(at.x + 170, side + tyre.height / 2)),
      },
    ];
  });

  const across = (figure: string, from: number, to: number, n: number, on: number): Length => ({
    figure,
    way: 'across',
    from: point(from, on),
    to: point(to, on),
    at: row(n),
    words: 'between',
  });
  const lengths: readonly Length[] = [
    across('stub left', -pin - size('stub left'), -pin, 0, front - 18),
    across('stub right', pin, pin + size('stub right'), 0, front - 18),
    across('pins', -pin, pin, 1, front - 18),
    across('track', -middle, middle, 2, row(0)),
    across('width', -half, half, 3, nose),
    {
      figure: 'wheelbase',
      way: 'along',
      from: point(half - 60, 0),
      to: point(half, front),
      at: half + 126,
      words: 'between',
    },
    {
      figure: 'tyre',
      way: 'along',
      from: point(-half, front + tyre.height / 2),
      to: point(-half, nose),
      at: -half - 90,
      words: 'between',
    },
    {
      figure: 'tyreWidth',
      way: 'across',
      from: point(half - tyre.width, front + tyre.height / 2),
      to: point(half, front + tyre.height / 2),
      at: front + tyre.height / 2 + 80,
      words: 'between',
    },
    {
      figure: 'arm',
      way: 'along',
      from: point(pin, front + arm),
      to: point(pin, front),
      at: pin - 90,
      words: 'between',
    },
    ...SIDES.map(
      (on): Length => ({
        figure: `rod ${on}`,
        way: 'across',
        from: point(on === 'left' ? -pin : 30, front + arm),
        to: point(on === 'left' ? -30 : pin, front + arm),
        at: front + arm + 90,
        words: 'between',
      }),
    ),
  ];

  const leaders: readonly Leader[] = [
    {
      figure: 'toe',
      words: dimensionedWords.toe,
      at: point(-half + tyre.width, nose + 34),
      knee: point(-pin + 30, nose + 10),
      side: 'right',
    },
    ...SIDES.flatMap((on): Leader[] => [
      {
        figure: `spacers ${on}`,
        words: dimensionedWords.spacers,
        at: point(outward(on) * (pin + 80), front + 12),
        knee: point(outward(on) * (pin + 10), front + 250),
        side: on,
      },
      {
        figure: `camber ${on}`,
        words: dimensionedWords.camber,
        at: point(outward(on) * middle, behind - tyre.height / 2),
        knee: point(outward(on) * (middle - 12), behind - tyre.height / 2 - 62),
        side: on === 'left' ? 'right' : 'left',
      },
    ]),
    {
      figure: 'ride',
      words: dimensionedWords.rideHeight,
      at: point(0, ground - size('ride')),
      knee: point(24, ground - size('ride') - 130),
      side: 'right',
    },
  ];

  const angles: readonly Angle[] = SIDES.flatMap((on): Angle[] => {
    const out = outward(on);
    const back = on === 'left' ? 1 : -1;
    return [
      {
        figure: `inclination ${on}`,
        apex: point(out * pin, behind),
        radius: 140,
        from: -90,
        to: -90 - out * size(`inclination ${on}`),
        label: point(out * (pin - 60), behind - 150),
        anchor: on === 'left' ? 'start' : 'end',
      },
      {
        figure: `caster ${on}`,
        apex: point(views[on], side),
        radius: 170,
        from: -90,
        to: -90 + back * size(`caster ${on}`),
        label: point(views[on] + back * 122, side - 150),
        anchor: on === 'left' ? 'start' : 'end',
      },
    ];
  });

  const wide = sheetWidth(half);
  const top = row(3) - 76;
  return {
    name: 'front end',
    title: dimensionedWords.inTitleBlock['front end'],
    view: { x: -wide / 2, y: top, width: wide, height: Math.max(side + tyre.height / 2 + 70, 60) - top },
    figures,
    strokes: [...plan, ...fromBehind, ...fromTheSide],
    lengths,
    leaders,
    angles,
    captions: [
      { at: point(-wide / 2 + 150, front + 400), words: dimensionedWords.fromAbove },
      { at: point(-wide / 2 + 150, behind), words: dimensionedWords.fromBehind },
      { at: point(views.left - 290, side + 12), words: dimensionedWords.sideView.left },
      { at: point(views.right + 290, side + 12), words: dimensionedWords.sideView.right },
      { at: point(half - 30, -24), words: dimensionedWords.rearAxle },
    ],
  };
}

function figuresOf(of: Of) {
  const { kart } = of;
  const { item, atCorner } = itemsOf(kart);
  const less = lessOf(kart);
  const sided = (name: string, side: Side): readonly string[] => [`${name} ${side}`, name];
  const over = kart.dimensions['measuring diameter']?.text;
  return {
    wheelbase: figureOf(of, {
      name: dimensionedWords.front.wheelbase,
      dimensions: ['wheelbase'],
      limit: 'wheelbase',
      usual: 1050,
    }),
    width: figureOf(of, {
      name: dimensionedWords.front.width,
      dimensions: ['overall front width'],
      item: item(one => one.measure?.dimension === 'overall front width'),
      settings: ['overall front width', 'front width', 'front track'],
      limit: 'overall front width',
      usual: 1150,
    }),
    track: figureOf(of, {
      name: dimensionedWords.front.track,
      worked: less('overall front width', 'front tyre width'),
      reference: true,
      usual: 1020,
    }),
    pins: figureOf(of, { name: dimensionedWords.front.pins, dimensions: ['kingpin spacing'], usual: 640 }),
    ...eachSide('stub', side =>
      figureOf(of, { name: dimensionedWords.front.stub(side), dimensions: sided('stub length', side), usual: 194 }),
    ),
    ...eachSide('spacers', side =>
      figureOf(of, {
        name: dimensionedWords.front.spacers(side),
        dimensions: sided('front spacers', side),
        item: atCorner(`front ${side}`, one => one.key === 'spacers'),
        settings: ['front spacers', `front spacers ${side}`],
        usual: 15,
      }),
    ),
    toe: figureOf(of, {
      name: dimensionedWords.front.toe(over),
      item: item(one => one.measure?.number === 'toe'),
      settings: ['toe'],
      usual: 0,
    }),
    ...eachSide('camber', side =>
      figureOf(of, {
        name: dimensionedWords.front.camber(side),
        unit: '°',
        dimensions: sided('camber', side),
        settings: ['camber', `camber ${side}`],
        usual: 0,
      }),
    ),
    ...eachSide('caster', side =>
      figureOf(of, {
        name: dimensionedWords.front.caster(side),
        unit: '°',
        dimensions: sided('caster', side),
        item: atCorner(`front ${side}`, one => one.measure?.dimension === 'caster'),
        settings: ['caster', `caster ${side}`],
        usual: 15,
      }),
    ),
    ...eachSide('inclination', side =>
      figureOf(of, {
        name: dimensionedWords.front.inclination(side),
        unit: '°',
        dimensions: sided('kingpin inclination', side),
        usual: 11,
      }),
    ),
    arm: figureOf(of, { name: dimensionedWords.front.arm, dimensions: ['steering arm'], usual: 95 }),
    ...eachSide('rod', side =>
      figureOf(of, { name: dimensionedWords.front.rod(side), dimensions: sided('tie rod', side), usual: 290 }),
    ),
    tyre: figureOf(of, {
      name: dimensionedWords.front.tyre,
      round: true,
      dimensions: ['front tyre diameter'],
      usual: 260,
    }),
    tyreWidth: figureOf(of, { name: dimensionedWords.front.tyreWidth, dimensions: ['front tyre width'], usual: 130 }),
    ride: figureOf(of, {
      name: dimensionedWords.front.ride,
      dimensions: ['ride height front'],
      item: item(one => one.measure?.dimension === 'ride height front'),
      settings: ['ride height front', 'front ride height'],
      usual: 35,
    }),
  };
}
