/** Alignment: toe with the diameter it was read at, what to turn on the tie rods, and whether the axle stands square. */
import { formatQuantity } from '../../quantity/index.ts';
import { wrong } from '../asked.ts';
import type { Card } from '../card.ts';
import { small } from '../figure.ts';
import { type Answer, type Figure, type Problems, problems, subject } from '../subject.ts';
import { alignmentProblems, asToeIn, bothWays, type Input, schema } from './input.ts';
import { type Square, squareOf, type Toe, toeOf } from './read.ts';
import { type RodWork, rodWork } from './rods.ts';
import { stringBias, toeTotal } from './toe.ts';
import { alignmentNotes, saySquare, sayToe } from './words.ts';

const card: Card = {
  what: 'Toe is an angle; millimetres of toe say nothing without the diameter they are read at. An axle is square when sides and diagonals both agree.',
  equation:
    'θ = asin(T / 2D);  T = 2 D sin θ;  string: θ = atan((front - rear) / D);  rod: Δl = r Δθ;  A = D1² - D2², B = SL² - SR²;  y0 = -(A + B) / 4wk;  sin(ψ + atan(y0/L)) = (B - A) / (4 wr √(L² + y0²))',
  symbols: {
    θ: 'toe of one wheel, toe-in above 0 [rad]',
    T: 'toe of both wheels: rims apart behind less in front [m]',
    D: 'diameter at which it is read, never the radius [m]',
    r: 'steering arm: kingpin axis square to the tie rod [m]',
    l: 'length of a tie rod [m]',
    D1: 'diagonal, left kingpin to right axle mark; D2 the other [m]',
    SL: 'side, left kingpin to left axle mark; SR right [m]',
    wk: 'kingpin marks apart; wr axle marks apart [m]',
    L: 'wheelbase [m]',
    ψ: 'yaw of the axle, left end rearward above 0 [rad]',
    y0: 'middle of the axle left of the middle of the kingpins [m]',
  },
  validity:
    'Readings at axle height, steering centred, driver or his weight in the seat, tyres at running pressure, all marks for squareness at one height. Toe up to 5° a wheel. Change of a rod to first order: measure again after it.',
  sources: ['toe-geometry', 'half-turn', 'square-geometry', 'square-limits', 'jcgm-100'],
};

export const alignment = subject({
  name: 'alignment',
  title: 'Alignment: toe with its measuring diameter, turns of the tie rods, squareness of the axle',
  card,
  schema,
  example: {
    'front apart': '1001 mm',
    'rear apart': '1000 mm',
    'front apart after half a turn': '1001.4 mm',
    'rear apart after half a turn': '1000 mm',
    'measuring diameter': '255 mm',
    'wanted toe-out': '2 mm',
    'wanted toe diameter': '260 mm',
    'steering arm': '95 mm',
    'steering arms': 'behind',
    'rod thread pitch': '1.25 mm',
    'rod threads': 'left and right',
  },
  solve,
});

function solve(asked: Input): Answer | Problems {
  const input = asToeIn(asked);
  const against = [...bothWays(asked), ...alignmentProblems(input)];
  if (against.length > 0) return problems(...against);
  const square = squareOf(input);
  if (square !== undefined && !possible(square))
    return problems(
      wrong(
        'side left',
        'sides, diagonals and spacings of one figure',
        'lengths that no axle and kingpins can have',
        'measure all six again between the same marks; a diagonal is longer than a side',
      ),
    );
  const toe = toeOf(input);
  const work = toe && rodWork(input, toe);
  return {
    kind: 'answer',
    figures: { ...toeFigures(input, toe, work), ...squareFigures(square) },
    say: [...sayToe(input, toe, work), ...saySquare(square)],
    notes: alignmentNotes(input, toe, square),
  };
}

/** Beyond this the lengths are mixed up: axle turned by 5°, 100 mm aside, or four lengths 25 mm away from one figure. */
const possible = ({ yaw, offset, wheelbase, misfit }: Square): boolean =>
  Math.abs(yaw) < (5 * Math.PI) / 180 && Math.abs(offset) < 0.1 && Math.abs(misfit) < 0.025 * 4 * wheelbase;

const angle = (si: number): Figure => ({ si, unit: '°', text: formatQuantity(si, '°', 3) });

function toeFigures(input: Input, toe: Toe | undefined, work: RodWork | undefined): Record<string, Figure> {
  if (toe === undefined) return {};
  const over = input['wanted toe diameter'];
  const found: Record<string, Figure> = {
    'toe-in total': angle(toe.total),
    'toe-in total at measuring diameter': small(toeTotal(toe.total / 2, toe.diameter)),
    'measuring diameter': small(toe.diameter),
    'expanded uncertainty': angle(2 * toe.u), // k = 2
  };
  if (toe.left !== undefined) found['toe-in left'] = angle(toe.left);
  if (toe.right !== undefined) found['toe-in right'] = angle(toe.right);
  if (toe.left === undefined) found['toe-in each'] = angle(toe.total / 2);
  if (toe.runOut !== undefined) found['rim run-out'] = small(toe.runOut);
  if (input['string off parallel'] && input['string span'])
    found['string bias'] = angle(stringBias(input['string off parallel'].si, input['string span'].si));
  if (over) found['toe-in total at wanted diameter'] = small(toeTotal(toe.total / 2, over.si));
  if (work) found['toe-in to add'] = angle(work.toe);
  if (work?.each !== undefined) found['each rod longer by'] = small(work.each);
  if (work?.turns !== undefined) found['turns of each rod'] = { si: work.turns, unit: '', text: work.turns.toFixed(2) };
  return found;
}

function squareFigures(square: Square | undefined): Record<string, Figure> {
  if (square === undefined) return {};
  return {
    'axle yaw': angle(square.yaw),
    'yaw uncertainty': angle(2 * square.uYaw),
    'axle offset': small(square.offset),
    'offset uncertainty': small(2 * square.uOffset),
    wheelbase: small(square.wheelbase),
    'sides apart': small(square.sides),
    'diagonals apart': small(square.diagonals),
    'left end rearward': small(square.marks * Math.sin(square.yaw)),
  };
}
