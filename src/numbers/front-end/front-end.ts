/** Front end: caster, inclination, scrub, trail; camber, contact height and warp when steered; Ackermann; inner rear lift. */
import { formatQuantity } from '../../quantity/index.ts';
import { type Asked, wrong } from '../asked.ts';
import type { Card } from '../card.ts';
import { small } from '../figure.ts';
import { type Answer, type Figure, type Problems, problems, subject } from '../subject.ts';
import { SIDES } from './build.ts';
import { type Input, schema } from './input.ts';
import { frontEndProblems } from './problems.ts';
import { edgeDrop, type SideName } from './wheel.ts';
import { frontEndNotes, sayFrontEnd } from './words.ts';
import { type Worked, work } from './work.ts';

const card: Card = {
  what: 'A wheel on an inclined kingpin leans and rises as it is steered. Opposite on both sides, that warps the front and lightens the inner rear wheel.',
  equation:
    "k = (-tan τ, ∓tan σ, 1)/n;  r' = r cos δ + (k × r) sin δ + k (k·r)(1 - cos δ);  s = e - R tan σ;  t = R tan τ - f;  dz/dδ = ∓(tan τ s + tan σ t)/n;  cot inner = cot outer - w/L;  1/Ks = 1/Kt + 2/(kF tF²) + 2/(kR tR²);  M = Ks z/tF",
  symbols: {
    τ: 'caster, top of the kingpin rearward [rad]',
    σ: 'kingpin inclination, top inward [rad]',
    k: 'unit vector along the kingpin, upper sign left [1]',
    δ: 'turn of the kingpin, left above 0; the wheel points a little less or more [rad]',
    R: 'radius of the tyre, half of its diameter [m]',
    e: 'kingpin axis at hub height to the middle plane of the wheel [m]',
    f: 'hub ahead of the kingpin axis [m]',
    s: 'scrub: kingpin axis on the road to the middle of the tyre [m]',
    t: 'trail: contact behind the kingpin axis on the road [m]',
    z: 'warp: right contact above the left [m]',
    w: 'kingpins apart at hub height [m]',
    L: 'wheelbase [m]',
    Kt: 'stiffness of the frame in twist [N·m/rad]',
    Ks: 'the same with the tyres in series [N·m/rad]',
    M: 'moment that goes from one side of an axle to the other [N·m]',
  },
  validity:
    'Thin disc on a flat road, tyre not giving, kingpin without play, turns below 90°. Ackermann share reckoned from the outer wheel. Loads while all four wheels touch, frame and tyres as springs, stiffness measured on this kart.',
  sources: ['rodrigues', 'axis-angles', 'ackermann', 'spring-statics', 'gravity-1901'],
};

export const frontEnd = subject({
  name: 'front-end',
  title:
    'Front end: camber, contact height and warp when steered, Ackermann, toe by tie rod, when the inner rear lifts',
  card,
  schema,
  behind: [
    'scrub *',
    'trail *',
    'rise per degree *',
    'ideal inner angle',
    'kingpin turn *',
    'points *',
    'stiffness *',
    'front diagonal *',
    'rear diagonal *',
  ],
  example: {
    caster: '12°',
    'kingpin inclination': '11°',
    'stub length': '110 mm',
    'tyre diameter': '260 mm',
    'steering angle': '10°',
    wheelbase: '1045 mm',
    'kingpin spacing': '800 mm',
    'inner angle': '12°',
    'outer angle': '10°',
    'front contact track': '1080 mm',
    'rear contact track': '1170 mm',
    'front tyre stiffness': '90 N/mm',
    'rear tyre stiffness': '110 N/mm',
    'frame torque per degree': '150 N·m',
    mass: '181 kg',
    'front share': '41.7 %',
    'cg height': '240 mm',
    'lateral acceleration': '1.5 g',
  },
  solve,
});

function solve(input: Input): Answer | Problems {
  const against = frontEndProblems(input);
  if (against.length > 0) return problems(...against);
  const worked = work(input);
  const apart = unreachable(input, worked);
  if (apart.length > 0) return problems(...apart);
  return {
    kind: 'answer',
    figures: figures(input, worked),
    say: sayFrontEnd(input, worked),
    notes: frontEndNotes(input, worked),
  };
}

/** Rods that cannot reach, straight ahead or where the column was turned. */
function unreachable(input: Asked, { at, sides }: Worked) {
  return SIDES.flatMap(side => {
    const { rod, toePerLength } = sides[side];
    if (rod === undefined) return [];
    const turn = at?.[side === 'left' ? 'turnLeft' : 'turnRight'] ?? 0;
    if (!Number.isNaN(turn) && Number.isFinite(toePerLength)) return [];
    const path =
      input['tie rod'] || input[`tie rod ${side}`]
        ? input['tie rod']
          ? 'tie rod'
          : `tie rod ${side}`
        : 'column angle';
    return [
      wrong(
        path,
        `a rod that reaches from the column to the ${side} arm`,
        `${formatQuantity(rod, 'mm')} at this turn of the column`,
        'correct the rod, the arm or the column, or ask for a smaller turn',
      ),
    ];
  });
}

const angle = (si: number): Figure => ({ si, unit: '°', text: formatQuantity(si, '°', 2) });
const force = (si: number): Figure => ({ si, unit: 'N', text: formatQuantity(si, 'N', 1) });
const percent = (si: number): Figure => ({ si, unit: '%', text: formatQuantity(si, '%', 0) });

function figures(input: Asked, worked: Worked): Readonly<Record<string, Figure>> {
  return { ...straight(worked), ...steeredFigures(input, worked), ...springFigures(worked) };
}

function straight({ sides, plates }: Worked): Record<string, Figure> {
  const found: Record<string, Figure> = {};
  for (const side of SIDES) {
    const of = sides[side];
    found[`scrub ${side}`] = small(of.scrub);
    found[`trail ${side}`] = small(of.trail);
    const perDegree = (of.jacking * Math.PI) / 180;
    found[`rise per degree ${side}`] = {
      si: perDegree,
      unit: 'mm',
      text: `${formatQuantity(perDegree, 'mm', 3)} a degree`,
    };
    if (of.rod !== undefined) found[`tie rod ${side}`] = small(of.rod);
    if (of.toePerLength !== undefined) {
      const perMillimetre = of.toePerLength / 1000;
      found[`toe-in per mm of rod ${side}`] = {
        si: perMillimetre,
        unit: '°',
        text: `${formatQuantity(perMillimetre, '°', 3)} a mm`,
      };
    }
  }
  if (plates) {
    found['ideal inner angle'] = angle(plates.ideal);
    found['ackermann from the outer wheel'] = percent(plates.share);
  }
  return found;
}

const SWEPT = {
  left: { turn: 'turnLeft', road: 'roadLeft', camber: 'camberLeft', rise: 'riseLeft' },
  right: { turn: 'turnRight', road: 'roadRight', camber: 'camberRight', rise: 'riseRight' },
} as const satisfies Record<SideName, object>;

function steeredFigures(input: Asked, { at, front }: Worked): Record<string, Figure> {
  if (at === undefined) return {};
  const found: Record<string, Figure> = {};
  const width = input['tyre width'];
  for (const side of SIDES) {
    const of = SWEPT[side];
    found[`kingpin turn ${side}`] = angle(at[of.turn]);
    found[`points ${side}`] = angle(at[of.road]);
    found[`camber ${side}`] = angle(at[of.camber]);
    found[`contact height ${side}`] = small(at[of.rise]);
    if (typeof width === 'object') found[`edge drop ${side}`] = small(edgeDrop(at[of.camber], width.si));
  }
  found.warp = small(at.warp);
  if (front.linkage && Number.isFinite(at.ackermann))
    found['ackermann when steered, from the outer wheel'] = percent(at.ackermann);
  return found;
}

function springFigures({ at, series, transfer, liftSteer, front }: Worked): Record<string, Figure> {
  const found: Record<string, Figure> = {};
  if (series !== undefined) {
    const perDegree = (series * Math.PI) / 180;
    found['stiffness of frame and tyres'] = {
      si: series,
      unit: 'N·m',
      text: `${formatQuantity(perDegree, 'N·m', 1)} a degree`,
    };
  }
  if (transfer) {
    found['front diagonal transfer'] = force(transfer.front);
    found['rear diagonal transfer'] = force(transfer.rear);
  }
  if (front.weight && at) {
    found['inner rear load'] = at.innerRear > 0 ? force(at.innerRear) : { si: 0, unit: 'N', text: '0 N, off the road' };
    found['inner rear lifts at'] = {
      si: at.liftAt,
      unit: 'g0',
      text: Number.isFinite(at.liftAt) ? formatQuantity(at.liftAt, 'g0', 2) : 'not by turning',
    };
  }
  if (typeof liftSteer === 'number') found['inner rear lifts from steering'] = angle(liftSteer);
  return found;
}
