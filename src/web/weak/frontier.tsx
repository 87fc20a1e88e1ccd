/** What each budget of minutes leaves: joints that alone are enough and could have a second, as steps going down. */
import type { SecondRetentions } from '../../risk/index.ts';
import { Label, Plate } from '../drawing/lines.tsx';
import { type Axes, PlotFrame, PlotLine, plotX, plotY } from '../drawing/plot.tsx';
import type { Drawn } from '../numbers/plates/asked.ts';

type Points = SecondRetentions['frontier'];
const TOP = 30;
const TALL = 150;

/** Undefined where time changes nothing. */
export function drawFrontier(frontier: Points): Drawn | undefined {
  const last = frontier.at(-1);
  if (frontier.length < 2 || last === undefined) return undefined;
  const most = Math.max(...frontier.flatMap(({ singlesLeft: { severity1, severity2 } }) => [severity1, severity2]), 1);
  const axes: Axes = { x: [0, last.minutes], y: [0, most], top: TOP, height: TALL };
  const line = (severity: 'severity1' | 'severity2') =>
    frontier.flatMap(({ minutes, singlesLeft }, n): (readonly [number, number])[] => {
      const before = frontier[n - 1]?.singlesLeft[severity] ?? singlesLeft[severity];
      return [
        [minutes, before],
        [minutes, singlesLeft[severity]],
      ];
    });
  // Beside the first step down, where the line leaves room.
  const fall = frontier.find(({ singlesLeft }) => singlesLeft.severity1 < (frontier[0]?.singlesLeft.severity1 ?? 0));
  return {
    title: 'What is left by minutes',
    drawing: (
      <Plate
        height={TOP + TALL + 40}
        title="Joints left that alone are enough and could have a second, by the minutes spent. The table says the same."
      >
        <Label x={0} y={14} anchor="start" text="joints left that alone are enough" look="quiet" />
        <PlotFrame axes={axes} unit="" />
        <PlotLine axes={axes} line={{ name: 'severity 2', points: line('severity2'), look: 'dashed' }} />
        <PlotLine axes={axes} line={{ name: 'severity 1', points: line('severity1'), look: 'signal' }} />
        {fall && <Label x={plotX(fall.minutes, axes) + 8} y={TOP + 14} anchor="start" text="severity 1" />}
        <Label
          x={plotX(last.minutes, axes) - 2}
          y={plotY(last.singlesLeft.severity2, axes) - 6}
          anchor="end"
          text="severity 2"
        />
        <Label x={plotX(last.minutes / 2, axes)} y={TOP + TALL + 34} text="minutes" look="quiet" />
      </Plate>
    ),
    head: ['Minutes', 'Money', 'Severity 1 left', 'Severity 2 left'],
    rows: frontier.map(({ minutes, money, singlesLeft: { severity1, severity2 } }) => [
      String(minutes),
      String(money),
      String(severity1),
      String(severity2),
    ]),
  };
}
