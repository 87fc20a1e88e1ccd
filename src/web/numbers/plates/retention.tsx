/** A joint from the side: what holds it, what stands behind that, and which failure each of the two survives. */
import { failsAnotherWay, type LetsGo, MEANS, meansOf } from '../../../numbers/index.ts';
import { Label, Plate, SHEET_WIDTH } from '../../drawing/lines.tsx';
import { platesWords } from '../../words/plates.ts';
import { capital } from '../../words/reads.ts';
import { type Asked, type DrawPlate, saidText } from './asked.ts';
import { MeansDrawn, SHANK } from './means-drawn.tsx';

const AXIS = 66;
const FIRST = 151;
const SECOND = 268;
const ROWS = 176;
const ROW = 21;

/** Every way of letting go that a means here has. */
const WAYS: readonly LetsGo[] = [...new Set(MEANS.flatMap(({ letsGo }) => letsGo ?? []))];

/** One place of the line; `text` as it was written, empty where nothing was said of it. */
type Held = { readonly text: string; readonly x: number; readonly place: 'first' | 'second' };

/** Without a pair, the means that was asked about stands in the first place. */
function inLine(asked: Asked): readonly [Held, Held] {
  const [first, second] = [saidText(asked, 'first'), saidText(asked, 'second')];
  const only = first === '' && second === '' ? saidText(asked, 'means') : first;
  return [
    { text: only, x: FIRST, place: 'first' },
    { text: second, x: SECOND, place: 'second' },
  ];
}

const nameOf = ({ text }: Held): string =>
  text === '' ? platesWords.notSaid : (meansOf(text)[0]?.name ?? 'not known');

/** A first means goes with any part of it; a second holds by any part of it, unless the text leaves a choice. */
function survives({ text, place }: Held, way: LetsGo): string {
  const means = meansOf(text);
  if (text === '') return platesWords.notSaid;
  if (means.length === 0) return 'not known';
  if (means.every(({ letsGo }) => letsGo === undefined)) return platesWords.holdsNothing;
  const holds = (each: (typeof means)[number]): boolean => each.letsGo !== undefined && each.letsGo !== way;
  const all = place === 'first' || /\bor\b/.test(text);
  return (all ? means.every(holds) : means.some(holds)) ? 'holds' : platesWords.letsGo;
}

const BEHIND = {
  yes: platesWords.secondIsStillThere,
  no: platesWords.nothingStandsBehind,
  'not known': platesWords.notKnownWhetherSecond,
} as const;

export const retentionPlate: DrawPlate = asked => {
  const held = inLine(asked);
  const [first, second] = held;
  if (first.text === '' && second.text === '') return undefined;
  const paired = first.text !== '' && second.text !== '';
  const behind = paired ? failsAnotherWay(first.text, second.text) : undefined;
  const verdict = behind === undefined ? platesWords.whatStandsBehindItWas : capital(BEHIND[behind]);
  const alone = behind !== undefined && behind !== 'yes';
  const goes = (one: Held): readonly LetsGo[] => WAYS.filter(way => survives(one, way) === 'lets go');
  const ways = [...new Set(held.flatMap(goes))];
  const title = platesWords.jointFromSideFirst(nameOf(first), nameOf(second), verdict);
  const foot = ROWS + ways.length * ROW + 24;
  return {
    title,
    head: [platesWords.ifThisHappens, 'first', 'second'],
    rows: [
      [platesWords.whatHolds, ...held.map(nameOf)],
      ...WAYS.map(way => [way, ...held.map(one => survives(one, way))]),
      [platesWords.ifFirstLetsGo, '', behind === undefined ? platesWords.notAsked : BEHIND[behind]],
    ],
    drawing: (
      <Plate height={foot + 12} title={title}>
        <Joint />
        {held.map(one => (
          <g key={one.place} class={alone && one.place === 'second' ? 'signal' : ''}>
            <MeansDrawn name={meansOf(one.text)[0]?.name ?? ''} x={one.x} y={AXIS} />
            <Label x={one.x} y={122} text={one.place} look="quiet" />
            <Label x={one.x} y={139} text={nameOf(one).replace('-locking compound', '-lock')} look="strong" />
          </g>
        ))}
        <line class="hair" x1={6} x2={SHEET_WIDTH - 6} y1={150} y2={150} />
        {ways.map((way, n) => (
          <g key={way}>
            <Label x={6} y={ROWS + n * ROW} anchor="start" text={way} />
            {held.map(one => (
              <Label
                key={one.place}
                x={one.x + (one.place === 'first' ? 26 : 14)}
                y={ROWS + n * ROW}
                text={survives(one, way)}
                look={survives(one, way) === 'holds' ? 'strong' : 'quiet'}
              />
            ))}
          </g>
        ))}
        <g class={alone ? 'signal' : ''}>
          <Label
            x={6}
            y={foot - 6}
            anchor="start"
            text={platesWords.ifFirstLetsGoThen(verdictWords(behind))}
            look="strong"
          />
        </g>
      </Plate>
    ),
  };
};

const verdictWords = (behind: keyof typeof BEHIND | undefined): string =>
  behind === undefined ? platesWords.whatThenHoldsWas : BEHIND[behind];

/** A bolt from the left through the part it holds, and out to the right where it is kept. */
const Joint = () => (
  <g>
    <rect class="shape" x={8} y={AXIS - 20} width={20} height={40} />
    <rect class="shape" x={28} y={AXIS - SHANK} width={SHEET_WIDTH - 40} height={2 * SHANK} />
    <rect class="shape tyre" x={28} y={AXIS - 38} width={55} height={76} />
    <rect class="shape" x={83} y={AXIS - 38} width={55} height={76} />
    <Label x={83} y={20} text={platesWords.whatIsHeld} look="quiet" />
  </g>
);
