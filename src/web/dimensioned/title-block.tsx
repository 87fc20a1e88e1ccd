/** The title block of a dimensioned drawing: what it is, of which kart, to which scale, from when. */
import { dimensionedWords } from '../words/dimensioned.ts';

export type TitleBlock = {
  readonly title: string;
  readonly kart: string;
  readonly scale: string;
  readonly record: string; // the day of the newest fact, or that there is none
  readonly number: string; // 'drawing 1 of 2'
};

const HIGH = 104;
export const TITLE_HEIGHT = 2 * HIGH;

export function TitleRows(props: {
  readonly block: TitleBlock;
  readonly x: number;
  readonly y: number;
  readonly width: number;
}) {
  const { block, x, y, width } = props;
  const said = dimensionedWords.block;
  const rows = [
    [
      [0, said.drawing, block.title],
      [1000, said.kart, block.kart],
      [1500, said.number, block.number],
    ],
    [
      [0, said.scale, block.scale],
      [480, said.unit, said.units],
      [790, said.nothingStated, said.noTolerance],
      [1100, said.recordAsOf, block.record],
      [1500, said.drawnUp, said.kartwright],
    ],
  ] as const;
  return (
    <g class="title-rows">
      <path class="wide" d={`M${x} ${y}h${width}`} />
      <path class="narrow" d={`M${x} ${y + HIGH}h${width}`} />
      {rows.map((cells, row) =>
        cells.map(([from, label, words]) => (
          <g key={label}>
            {from > 0 && <path class="narrow" d={`M${x + from} ${y + row * HIGH}v${HIGH}`} />}
            <text class="caption" x={x + from + 22} y={y + row * HIGH + 42}>
              {label}
            </text>
            <text class="strong" x={x + from + 22} y={y + row * HIGH + 86}>
              {words}
            </text>
          </g>
        )),
      )}
    </g>
  );
}
