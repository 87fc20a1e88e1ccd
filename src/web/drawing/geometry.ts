/**
 * The kart from above, from its own dimensions and the places of its parts: plain shapes in millimetres, front up,
 * the driver's left on the left. x to the right and y down as on a sheet; the middle of the rear axle is the origin.
 */
import type { Corner, Kart, Part } from '../../kart/index.ts';
import { drawingWords } from '../words/drawing.ts';

export type Point = { readonly x: number; readonly y: number };
export type Box = { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
export type Shape =
  | { readonly as: 'box'; readonly box: Box; readonly round: number }
  | { readonly as: 'circle'; readonly at: Point; readonly radius: number }
  | { readonly as: 'line'; readonly points: readonly Point[]; readonly closed: boolean };

export type DrawnPart = { readonly part: string; readonly at: Point; readonly shape: Shape };
/** A wheel to scale, with the part it is; none where the kart names none at that corner. */
export type DrawnWheel = { readonly corner: Corner; readonly part: string | undefined; readonly shape: Shape };
export type Dimension = { readonly from: Point; readonly to: Point; readonly label: Point; readonly text: string };
export type Drawing = {
  readonly view: Box;
  readonly frame: readonly Shape[];
  readonly axle: readonly Shape[];
  readonly wheels: readonly DrawnWheel[];
  /** What lies under the frame. */
  readonly under: readonly DrawnPart[];
  readonly parts: readonly DrawnPart[];
  readonly dimensions: readonly Dimension[];
};

/** Used only where the kart file is silent, so that something can be drawn: common practice, mm. */
const USUAL = {
  wheelbase: 1050,
  'overall rear width': 1390,
  'overall front width': 1150,
  'bearing faces': 655,
  'kingpin spacing': 640,
  'axle length': 1040,
  'axle diameter': 50,
  'front tyre diameter': 260,
  'front tyre width': 130,
  'rear tyre diameter': 274,
  'rear tyre width': 207,
} as const;

/** Millimetres of a kart dimension. */
const sizeOf = (kart: Kart, name: keyof typeof USUAL): number => {
  const si = kart.dimensions[name]?.si;
  return si !== undefined && Number.isFinite(si) && si > 0 ? si * 1000 : USUAL[name];
};

/** Where a part is on the sheet, mm: the kart's x points forward, which is up here; its y points left. */
export const placeOf = ({ place }: Pick<Part, 'place'>): Point => ({ x: -place.y * 1000 + 0, y: -place.x * 1000 + 0 });

export function drawKart(kart: Kart): Drawing {
  const wheelbase = sizeOf(kart, 'wheelbase');
  const rear = sizeOf(kart, 'overall rear width') / 2;
  const front = sizeOf(kart, 'overall front width') / 2;
  const bearing = sizeOf(kart, 'bearing faces') / 2;
  const kingpin = sizeOf(kart, 'kingpin spacing') / 2;
  const axle = { length: sizeOf(kart, 'axle length'), width: sizeOf(kart, 'axle diameter') };
  const drawn = Object.values(kart.parts)
    .flatMap(drawPart)
    .toSorted((a, b) => areaOf(b.shape) - areaOf(a.shape));
  const half = Math.max(rear + 250, front + 250, ...drawn.map(p => Math.abs(p.at.x) + 120));
  const nose = Math.max(wheelbase + 420, ...drawn.map(p => 120 - p.at.y));
  const tail = Math.max(420, ...drawn.map(p => p.at.y + 120));
  return {
    view: { x: -half, y: -nose, width: 2 * half, height: nose + tail },
    frame: frameOf(wheelbase, bearing, kingpin),
    axle: [
      box(-axle.length / 2, -axle.width / 2, axle.length, axle.width, 4),
      ...[-1, 1].map(side =>
        line([
          { x: side * kingpin, y: -wheelbase },
          { x: side * (front - 60), y: -wheelbase },
        ]),
      ),
      ...[-1, 1].map(side => circle({ x: side * kingpin, y: -wheelbase }, 18)),
    ],
    wheels: (['rear left', 'rear right', 'front left', 'front right'] as const).map(corner => ({
      corner,
      part: wheelAt(kart, corner),
      shape: wheelOf(kart, corner),
    })),
    under: drawn.filter(p => isUnder(kart, p)),
    parts: drawn.filter(p => !isUnder(kart, p)),
    dimensions: [
      {
        from: { x: -rear, y: 385 },
        to: { x: rear, y: 385 },
        label: { x: 0, y: 440 },
        text: kart.dimensions['overall rear width']?.text ?? drawingWords.rearWidthNotGiven,
      },
      {
        from: { x: rear + 105, y: 0 },
        to: { x: rear + 105, y: -wheelbase },
        label: { x: rear + 82, y: -wheelbase / 2 },
        text: kart.dimensions.wheelbase?.text ?? drawingWords.wheelbaseNotGiven,
      },
    ],
  };
}

function frameOf(wheelbase: number, bearing: number, kingpin: number): readonly Shape[] {
  const back = bearing * 0.86;
  const waist = bearing * 1.02;
  const yoke = kingpin * 0.82;
  const rails = [-1, 1].map(side =>
    line([
      { x: side * back, y: 110 },
      { x: side * back, y: -180 },
      { x: side * waist, y: -wheelbase * 0.38 },
      { x: side * waist, y: -wheelbase * 0.6 },
      { x: side * yoke * 0.72, y: -wheelbase * 0.86 },
      { x: side * yoke * 0.72, y: -wheelbase - 150 },
    ]),
  );
  const across = (y: number, half: number): Shape =>
    line([
      { x: -half, y },
      { x: half, y },
    ]);
  return [
    ...rails,
    across(110, back),
    across(-wheelbase * 0.38, waist),
    across(-wheelbase * 0.6, waist),
    across(-wheelbase - 150, yoke * 0.72),
    ...[-1, 1].map(side =>
      line([
        { x: side * yoke * 0.72, y: -wheelbase * 0.9 },
        { x: side * kingpin, y: -wheelbase },
        { x: side * yoke * 0.72, y: -wheelbase - 60 },
      ]),
    ),
  ];
}

function wheelOf(kart: Kart, corner: 'rear left' | 'rear right' | 'front left' | 'front right'): Shape {
  const [end, side] = corner.split(' ') as ['front' | 'rear', 'left' | 'right'];
  const outer = sizeOf(kart, `overall ${end} width`) / 2;
  const width = sizeOf(kart, `${end} tyre width`);
  const diameter = sizeOf(kart, `${end} tyre diameter`);
  const y = end === 'front' ? -sizeOf(kart, 'wheelbase') : 0;
  return box(side === 'left' ? -outer : outer - width, y - diameter / 2, width, diameter, 26);
}

const wheelAt = (kart: Kart, corner: Corner): string | undefined =>
  Object.values(kart.parts).find(p => p.corner === corner && /wheel$/.test(p.kind))?.id;

const isUnder = (kart: Kart, drawn: DrawnPart): boolean => /floor/.test(kart.parts[drawn.part]?.kind ?? '');

/** How a part looks from above, by the word in its kind that says so; sizes in mm, common practice, for the drawing only. */
const LOOKS: readonly (readonly [RegExp, (at: Point) => Shape])[] = [
  [/steering wheel/, at => circle(at, 140)],
  [/wheel|^frame$|^axle$|stub axle|kingpin|piston|crankshaft/, at => circle(at, 0)], // to scale already, or inside
  [/^seat$/, at => box(at.x - 165, at.y - 240, 330, 430, 130)],
  [/floor tray/, at => box(at.x - 200, at.y - 300, 400, 560, 10)],
  [/hub$/, at => box(at.x - 42, at.y - 34, 84, 68, 8)],
  [/sprocket$|brake disc/, at => box(at.x - 7, at.y - 95, 14, 190, 3)],
  [/caliper/, at => box(at.x - 30, at.y - 45, 60, 90, 10)],
  [/chain guard/, at => box(at.x - 22, at.y - 160, 44, 320, 22)],
  [/^chain$/, at => box(at.x - 8, at.y - 120, 16, 240, 8)],
  [/engine unit/, at => box(at.x - 95, at.y - 130, 190, 250, 14)],
  [/cylinder|gearbox clutch|clutch cover/, at => circle(at, 48)],
  [/radiator/, at => box(at.x - 45, at.y - 165, 90, 330, 8)],
  [/tank/, at => box(at.x - 95, at.y - 95, 190, 190, 26)],
  [/silencer/, at => box(at.x - 45, at.y - 130, 90, 260, 44)],
  [/exhaust pipe/, at => box(at.x - 50, at.y - 190, 100, 380, 50)],
  [/airbox/, at => box(at.x - 60, at.y - 100, 120, 200, 20)],
  [/carburettor$/, at => box(at.x - 30, at.y - 45, 60, 90, 10)],
  [/front fairing/, at => box(at.x - 450, at.y - 75, 900, 150, 70)],
  [/front panel/, at => box(at.x - 130, at.y - 50, 260, 100, 30)],
  [/side box/, at => box(at.x - 60, at.y - 260, 120, 520, 40)],
  [/side bumper/, at => box(at.x - 10, at.y - 230, 20, 460, 10)],
  [/rear guard/, at => box(at.x - 600, at.y - 40, 1200, 80, 36)],
  [/bumper/, at => box(at.x - 220, at.y - 12, 440, 24, 12)],
  [/steering column/, at => box(at.x - 9, at.y - 190, 18, 380, 8)],
  [/tie rod/, at => box(at.x - 110, at.y - 7, 220, 14, 6)],
  [/torsion bar/, at => box(at.x - 190, at.y - 9, 380, 18, 8)],
  [/pedal/, at => box(at.x - 40, at.y - 50, 80, 100, 12)],
  [/push rod|link|shift rod|cable/, at => box(at.x - 6, at.y - 70, 12, 140, 5)],
  [/master cylinder|pump$|battery|ignition unit/, at => box(at.x - 26, at.y - 40, 52, 80, 8)],
];

function drawPart(part: Part): readonly DrawnPart[] {
  const at = placeOf(part);
  if (!Number.isFinite(at.x) || !Number.isFinite(at.y)) return [];
  const look = LOOKS.find(([word]) => word.test(part.kind));
  return [{ part: part.id, at, shape: look ? look[1](at) : circle(at, 15) }];
}

/** The larger lies under the smaller. */
const areaOf = (shape: Shape): number =>
  shape.as === 'box' ? shape.box.width * shape.box.height : shape.as === 'circle' ? Math.PI * shape.radius ** 2 : 0;

const box = (x: number, y: number, width: number, height: number, round: number): Shape => ({
  as: 'box',
  box: { x, y, width, height },
  round,
});
const circle = (at: Point, radius: number): Shape => ({ as: 'circle', at, radius });
const line = (points: readonly Point[], closed = false): Shape => ({ as: 'line', points, closed });
