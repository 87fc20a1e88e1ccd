/** The pen of a dimensioned drawing: lines by their type, lengths, angles and leaders with their words, the title block. */
import type { Point, Shape } from '../drawing/geometry.ts';
import { type Figure, lastOn, shownOn } from './figures.ts';
import { type Angle, LETTERING, type Leader, type Length, letterOf, type Sheet, type Stroke } from './model.ts';
import { TITLE_HEIGHT, type TitleBlock, TitleRows } from './title-block.tsx';

/** Between the work and its extension line, and how far that goes past the dimension line: 8 widths of a narrow line. */
const GAP = 20;
const HEAD = 34; // length of an arrowhead
/** A little more than the mean width of a character, so that words are never thought shorter than they are. */
const wide = (words: string): number => words.length * LETTERING * 0.56;

export function DrawnSheet(props: {
  readonly sheet: Sheet;
  readonly title: string;
  readonly block: TitleBlock;
  readonly asked?: string | undefined; // key of the figure a step asks for
}) {
  const { sheet, asked } = props;
  const { x, y, width, height } = sheet.view;
  const words = (key: string): Words => wordsOf(sheet, key);
  const look = (key: string | undefined): string => (key !== undefined && key === asked ? 'asked' : '');
  return (
    <svg
      class="dimensioned"
      viewBox={`${x} ${y} ${width} ${height + TITLE_HEIGHT}`}
      role="img"
      aria-label={props.title}
    >
      {sheet.strokes.map(({ line, shape }, n) => (
        <Drawn key={`${line} ${n}`} line={line} shape={shape} />
      ))}
      {sheet.lengths.map(length => (
        <g key={length.figure} class={look(length.figure)}>
          <LengthDrawn length={length} words={words(length.figure)} />
        </g>
      ))}
      {sheet.angles.map(angle => (
        <g key={angle.figure} class={look(angle.figure)}>
          <AngleDrawn angle={angle} words={words(angle.figure)} />
        </g>
      ))}
      {sheet.leaders.map(leader => (
        <g key={leader.figure ?? leader.words} class={look(leader.figure)}>
          <LeaderDrawn leader={leader} words={leader.figure === undefined ? undefined : words(leader.figure)} />
        </g>
      ))}
      {sheet.captions.map(({ at, words: said }) => (
        <text key={said} class="caption" x={at.x} y={at.y} text-anchor="middle">
          {said}
        </text>
      ))}
      <TitleRows block={props.block} x={x} y={y + height} width={width} />
      <rect class="frame-line" x={x + 3} y={y + 3} width={width - 6} height={height + TITLE_HEIGHT - 6} />
    </svg>
  );
}

type Words = { readonly letter: string; readonly value: string; readonly last: string };
function wordsOf(sheet: Sheet, key: string): Words {
  const figure = sheet.figures[key] as Figure;
  return { letter: letterOf(sheet, key), value: shownOn(figure), last: lastOn(figure) };
}

function Drawn({ line, shape }: Stroke) {
  switch (shape.as) {
    case 'box': {
      const { x, y, width, height } = shape.box;
      return <rect class={line} x={x} y={y} width={width} height={height} rx={shape.round} />;
    }
    case 'circle':
      return <circle class={line} cx={shape.at.x} cy={shape.at.y} r={shape.radius} />;
    case 'line':
      return <path class={line} d={pathOf(shape)} />;
  }
}

const pathOf = ({ points, closed }: Extract<Shape, { as: 'line' }>): string =>
  `M${points.map(p => `${round(p.x)} ${round(p.y)}`).join('L')}${closed ? 'Z' : ''}`;
const round = (value: number): number => Math.round(value * 100) / 100;

/**
 * Drawn as if it ran across and, where it runs along, turned so that it is read from the right: up the sheet is then to
 * the right, and above the line is to its left.
 */
function LengthDrawn({ length, words }: { readonly length: Length; readonly words: Words }) {
  const along = length.way === 'along';
  const flat = ({ x, y }: Point): Point => (along ? { x: -y, y: x } : { x, y });
  const [from, to] = [flat(length.from), flat(length.to)].toSorted((a, b) => a.x - b.x) as [Point, Point];
  const y = length.at;
  const size = to.x - from.x;
  const outside = size < 2.4 * HEAD;
  const said = Math.max(wide(`${words.letter} ${words.value}`), wide(words.last));
  const place = words.value === '' ? 'between' : length.words === 'between' && said > size ? 'after' : length.words;
  const off = outside ? HEAD + 16 : 14;
  const [x, anchor, far] =
    place === 'between'
      ? [(from.x + to.x) / 2, 'middle', 0]
      : place === 'before'
        ? [from.x - off, 'end', -said - off]
        : [to.x + off, 'start', said + off];
  const left = Math.min(from.x + Math.min(far, 0), outside ? from.x - HEAD - 16 : from.x);
  const right = Math.max(to.x + Math.max(far, 0), outside ? to.x + HEAD + 16 : to.x);
  return (
    <g {...(along && { transform: 'rotate(-90)' })}>
      <path class="narrow" d={[from, to].map(p => extension(p, y)).join('')} />
      <path class="narrow" d={`M${round(left)} ${y}H${round(right)}`} />
      <Arrow at={{ x: from.x, y }} turn={outside ? 0 : 180} />
      <Arrow at={{ x: to.x, y }} turn={outside ? 180 : 0} />
      <text x={x} y={y - 12} text-anchor={anchor}>
        <tspan class="letter">{words.letter}</tspan> {words.value}
      </text>
      {words.last !== '' && (
        <text class="last" x={x} y={y + LETTERING + 4} text-anchor={anchor}>
          {words.last}
        </text>
      )}
    </g>
  );
}

/** From a gap beside the work to a little past the dimension line. */
function extension(from: Point, to: number): string {
  const way = Math.sign(to - from.y) || 1;
  return `M${round(from.x)} ${round(from.y + way * GAP)}V${round(to + way * GAP)}`;
}

const Arrow = ({ at, turn }: { readonly at: Point; readonly turn: number }) => (
  <path
    class="tip"
    d={`M0 0L${-HEAD} -6L${-HEAD} 6Z`}
    transform={`translate(${round(at.x)} ${round(at.y)}) rotate(${round(turn)})`}
  />
);

/** An arc between the two directions; the arrows stand outside a small angle. */
function AngleDrawn({ angle, words }: { readonly angle: Angle; readonly words: Words }) {
  const { apex, radius, label } = angle;
  const [from, to] = [angle.from, angle.to].toSorted((a, b) => a - b) as [number, number];
  const head = (HEAD / radius) * (180 / Math.PI);
  const outside = to - from < 2.4 * head;
  const on = (degrees: number): Point => ({
    x: round(apex.x + radius * Math.cos((degrees * Math.PI) / 180)),
    y: round(apex.y + radius * Math.sin((degrees * Math.PI) / 180)),
  });
  const reach = outside ? 1.6 * head : 0;
  const [a, b] = [on(from - reach), on(to + reach)];
  return (
    <g>
      <path class="narrow" d={`M${a.x} ${a.y}A${radius} ${radius} 0 0 1 ${b.x} ${b.y}`} />
      <Arrow at={on(from)} turn={outside ? from + 90 - head / 2 : from - 90 + head / 2} />
      <Arrow at={on(to)} turn={outside ? to - 90 + head / 2 : to + 90 - head / 2} />
      <Lines at={label} anchor={angle.anchor} words={words} />
    </g>
  );
}

function LeaderDrawn({ leader, words }: { readonly leader: Leader; readonly words: Words | undefined }) {
  const { at, knee, side } = leader;
  const way = side === 'left' ? -1 : 1;
  return (
    <g>
      <path class="narrow" d={`M${round(at.x)} ${round(at.y)}L${round(knee.x)} ${round(knee.y)}h${way * 16}`} />
      <circle class="tip" cx={at.x} cy={at.y} r={6} />
      <Lines
        at={{ x: knee.x + way * 22, y: knee.y + 12 }}
        anchor={side === 'left' ? 'end' : 'start'}
        words={words}
        name={leader.words}
      />
    </g>
  );
}

/** Letter and value, or letter and name with the value below; what the book last had comes last. */
function Lines(props: {
  readonly at: Point;
  readonly anchor: 'start' | 'end';
  readonly words: Words | undefined;
  readonly name?: string | undefined;
}) {
  const { at, anchor, words, name } = props;
  const rows = [
    ...(words === undefined ? [name ?? ''] : name === undefined ? [words.value] : [name, words.value]),
    ...(words === undefined || words.last === '' ? [] : [words.last]),
  ];
  return (
    <text x={at.x} y={at.y} text-anchor={anchor}>
      {rows.map((row, n) => (
        <tspan key={row} x={at.x} {...(n > 0 && { dy: LETTERING + 3 })} class={row === words?.last ? 'last' : ''}>
          {n === 0 && words !== undefined && <tspan class="letter">{words.letter} </tspan>}
          {row}
        </tspan>
      ))}
    </text>
  );
}
