/** Toe from above, turned far more than it is so that the eye sees it, with the readings it comes from. */
import { Dimension, Extension, Label, Plate, SHEET_WIDTH } from '../../drawing/lines.tsx';
import { platesWords } from '../../words/plates.ts';
import { type Asked, askedSize, type DrawPlate, figureOf, saidText, wordsOf } from './asked.ts';

const MIDDLE = SHEET_WIDTH / 2;
const OUT = 96;
const ACROSS = 118; // height on the sheet of the wheel centres
const HALF = 58; // half of a wheel's length on the sheet
/** Drawn as at most so many degrees, whatever it is. */
const DRAWN = 9;

const DEGREE = Math.PI / 180;
const BITE = 0.02 * DEGREE;

/** Toe-in of each wheel [rad]: its own where it was read, else half of both together. */
function toes(asked: Asked): { readonly left: number; readonly right: number } {
  const each = figureOf(asked, 'toe-in each');
  const own = (side: string): number => figureOf(asked, `toe-in ${side}`);
  return Number.isFinite(each) ? { left: each, right: each } : { left: own('left'), right: own('right') };
}

const word = (toe: number): string => (toe > BITE ? 'toe-in' : toe < -BITE ? 'toe-out' : 'straight');

const SHOWN = [
  'toe-in total',
  'toe-in total at measuring diameter',
  'toe-in left',
  'toe-in right',
  'rim run-out',
  'toe-in total at wanted diameter',
  'each rod longer by',
  'turns of each rod',
] as const;

export const alignmentPlate: DrawPlate = asked => {
  const toe = toes(asked);
  if (!Number.isFinite(toe.left + toe.right)) return squarePlate(asked);
  const most = Math.max(Math.abs(toe.left), Math.abs(toe.right), BITE);
  const drawn = (side: 'left' | 'right'): number => ((side === 'left' ? 1 : -1) * DRAWN * toe[side]) / most;
  const end = (side: 'left' | 'right', front: boolean) => {
    const turn = drawn(side) * DEGREE;
    const along = front ? HALF : -HALF;
    const centre = MIDDLE + (side === 'left' ? -OUT : OUT);
    return { x: centre + along * Math.sin(turn), y: ACROSS - along * Math.cos(turn) };
  };
  const total = toe.left + toe.right;
  const apart = saidText(asked, 'front apart') !== '';
  const title = platesWords.frontWheelsFromAbove(
    word(total),
    wordsOf(asked, 'toe-in total at measuring diameter'),
    wordsOf(asked, 'measuring diameter'),
  );
  return {
    title,
    head: ['', 'value'],
    rows: [
      ['measuring diameter', wordsOf(asked, 'measuring diameter')],
      ...SHOWN.flatMap(name => (asked.answer.figures[name] ? [[name, wordsOf(asked, name)]] : [])),
    ],
    drawing: (
      <Plate height={256} title={title}>
        <line class="chain" x1={MIDDLE} x2={MIDDLE} y1={10} y2={220} />
        {(['left', 'right'] as const).map(side => {
          const centre = MIDDLE + (side === 'left' ? -OUT : OUT);
          return (
            <g key={side}>
              <line class="thin" x1={MIDDLE} x2={centre} y1={ACROSS} y2={ACROSS} />
              <g transform={`translate(${centre} ${ACROSS}) rotate(${drawn(side)})`}>
                <rect class="shape tyre" x={-17} y={-HALF} width={34} height={2 * HALF} rx={8} />
                <line class="thin" x1={0} x2={0} y1={-HALF - 12} y2={HALF + 12} />
              </g>
              <Label
                x={side === 'left' ? 6 : SHEET_WIDTH - 6}
                y={ACROSS + 98}
                anchor={side === 'left' ? 'start' : 'end'}
                text={`${side} ${word(toe[side])}`}
              />
            </g>
          );
        })}
        <Across
          from={end('left', true)}
          to={end('right', true)}
          y={34}
          text={apart ? `front ${saidText(asked, 'front apart')}` : 'front'}
        />
        <Across
          from={end('left', false)}
          to={end('right', false)}
          y={ACROSS + 74}
          text={apart ? `behind ${saidText(asked, 'rear apart')}` : 'behind'}
        />
        <Label
          x={MIDDLE}
          y={244}
          text={platesWords.atNotToScale(
            word(total),
            wordsOf(asked, 'toe-in total at measuring diameter').replace('-', ''),
            wordsOf(asked, 'measuring diameter'),
          )}
          look="strong"
        />
      </Plate>
    ),
  };
};

type At = { readonly x: number; readonly y: number };

function Across({
  from,
  to,
  y,
  text,
}: {
  readonly from: At;
  readonly to: At;
  readonly y: number;
  readonly text: string;
}) {
  return (
    <g>
      <Extension from={from} to={{ x: from.x, y }} />
      <Extension from={to} to={{ x: to.x, y }} />
      <Dimension from={{ x: from.x, y }} to={{ x: to.x, y }} />
      <Label x={MIDDLE} y={y - 5} text={text} />
    </g>
  );
}

/** The axle against the kingpins: sides and diagonals, and which end stands back. */
function squarePlate(asked: Asked) {
  const back = figureOf(asked, 'left end rearward');
  const spacing = askedSize(asked, 'kingpin spacing', 'length');
  const marks = askedSize(asked, 'axle mark spacing', 'length');
  if (![back, spacing, marks].every(Number.isFinite)) return undefined;
  const scale = 220 / Math.max(spacing, marks);
  const tilt = Math.abs(back) < 1e-5 ? 0 : 10 * Math.sign(back);
  const kingpin = (side: -1 | 1): At => ({ x: MIDDLE + (side * spacing * scale) / 2, y: 30 });
  const mark = (side: -1 | 1): At => ({ x: MIDDLE + (side * marks * scale) / 2, y: 200 - side * tilt });
  const lengths = ['side left', 'side right', 'diagonal from left', 'diagonal from right'] as const;
  const title = platesWords.axleAndKingpins(
    wordsOf(asked, 'sides apart'),
    wordsOf(asked, 'diagonals apart'),
    wordsOf(asked, 'left end rearward'),
  );
  const ends = [-1, 1] as const;
  return {
    title,
    head: ['', 'value'],
    rows: [
      ...lengths.map(name => [name, saidText(asked, name)]),
      ...['sides apart', 'diagonals apart', 'axle yaw', 'left end rearward', 'axle offset'].map(name => [
        name,
        wordsOf(asked, name),
      ]),
    ],
    drawing: (
      <Plate height={250} title={title}>
        <path class="thin" d={`M${kingpin(-1).x} 30H${kingpin(1).x}`} />
        {ends.map(side => (
          <g key={side}>
            <Dimension from={kingpin(side)} to={mark(side)} />
            <Dimension from={kingpin(side)} to={mark(side === 1 ? -1 : 1)} />
            <circle class="shape" cx={kingpin(side).x} cy={30} r={5} />
            <Label
              x={side < 0 ? 4 : SHEET_WIDTH - 4}
              y={112}
              anchor={side < 0 ? 'start' : 'end'}
              text={saidText(asked, side < 0 ? 'side left' : 'side right')}
            />
          </g>
        ))}
        <path
          class={tilt === 0 ? 'axle' : 'axle signal'}
          d={`M${mark(-1).x} ${mark(-1).y}L${mark(1).x} ${mark(1).y}`}
        />
        <Label x={MIDDLE} y={20} text="kingpins" look="quiet" />
        <Label
          x={MIDDLE}
          y={240}
          text={platesWords.leftEndRearward(wordsOf(asked, 'left end rearward'))}
          look="strong"
        />
      </Plate>
    ),
  };
}
