/** What the hub holds over what pulls at it, clean against a film: two bars a case, and the line where it slips. */
import { Label, Plate, SHEET_WIDTH } from '../../drawing/lines.tsx';
import { platesWords } from '../../words/plates.ts';
import type { DrawPlate } from './asked.ts';

type Case = { readonly name: string; readonly clean: Margin; readonly film: Margin };
type Margin = { readonly si: number; readonly text: string };

const LEFT = 6;
const RIGHT = SHEET_WIDTH - 84;
const ROW = 58;
/** A longer bar says no more: from here on it is cut, its figure is not. */
const MOST = 3;

export const hubHoldPlate: DrawPlate = ({ answer }) => {
  const cases = Object.entries(answer.figures).flatMap(([key, clean]): Case[] => {
    const name = /^margin (.+) clean$/.exec(key)?.[1];
    const film = answer.figures[`margin ${name} film`];
    return name === undefined || film === undefined ? [] : [{ name: wordsFor(name), clean, film }];
  });
  if (cases.length === 0) return undefined;
  const height = 34 + cases.length * ROW;
  const x = (margin: number): number => LEFT + ((RIGHT - LEFT) * Math.min(Math.max(margin, 0), MOST)) / MOST;
  const title = platesWords.holdOverLoadSaid(cases.map(c => `${c.name} ${c.clean.text} and ${c.film.text}`).join('; '));
  return {
    title,
    head: [platesWords.holdOverLoadHead, 'clean', platesWords.filmOfOil],
    rows: cases.map(c => [c.name, said(c.clean), said(c.film)]),
    drawing: (
      <Plate height={height} title={title}>
        <g class="signal">
          {cases.map((c, n) => (
            <line key={c.name} class="thin" x1={x(1)} x2={x(1)} y1={44 + n * ROW} y2={76 + n * ROW} />
          ))}
          <Label x={x(1)} y={14} text={platesWords.slipsBelow} />
        </g>
        {cases.map((c, n) => (
          <g key={c.name} transform={`translate(0 ${28 + n * ROW})`}>
            <Label x={LEFT} y={13} anchor="start" text={c.name} />
            <Bar margin={c.clean} y={18} x={x(c.clean.si)} clear={x(1)} word="clean" />
            <Bar margin={c.film} y={34} x={x(c.film.si)} clear={x(1)} word="film" />
          </g>
        ))}
      </Plate>
    ),
  };
};

function Bar(props: {
  readonly margin: Margin;
  readonly y: number;
  readonly x: number;
  readonly clear: number; // words begin beyond it, so that its line crosses none
  readonly word: 'clean' | 'film';
}) {
  const { margin, y, x, clear, word } = props;
  return (
    <g class={margin.si >= 1 ? '' : 'signal'}>
      <rect class={word === 'clean' ? 'bar' : 'bar open'} x={LEFT} y={y} width={Math.max(x - LEFT, 1)} height={12} />
      <Label x={Math.max(x, clear) + 5} y={y + 11} anchor="start" text={`${margin.text} ${word}`} />
    </g>
  );
}

const said = ({ si, text }: Margin): string => (si >= 1 ? text : `${text}: slips`);

/** 'side outer' → 'Side load, outer wheel'. */
const wordsFor = (name: string): string =>
  name
    .replace(/^side /, platesWords.sideLoad)
    .replace(/^braking /, platesWords.braking)
    .replace(/^drive /, platesWords.drive)
    .replace(/^together /, platesWords.sideLoadAndTorque)
    .replace(/ (outer|inner)$/, ', $1 wheel');
