/**
 * What each budget of minutes leaves, as steps going down: joints that alone are enough and could have a second, and how likely over the
 * event what can hurt worst is then. Both stand over the same minutes; the table says the same.
 */
import type { SecondRetentions } from '../../risk/index.ts';
import { Label, Plate } from '../drawing/lines.tsx';
import { type Axes, PlotFrame, PlotLine, plotX, plotY } from '../drawing/plot.tsx';
import type { Drawn } from '../numbers/plates/asked.ts';
import { weakWords } from '../words/weak.tsx';

type Points = SecondRetentions['frontier'];
const TOP = 30;
const TALL = 150;
const BELOW = TOP + TALL + 84; // where the chances begin
const TALLER = 210;
const LOOKS = ['signal', 'plain', 'dashed'] as const;

/** Undefined where time changes nothing. @param hazardOf what to call the hazard of a function */
export function drawFrontier(frontier: Points, hazardOf: (name: string) => string): Drawn | undefined {
  const last = frontier.at(-1);
  if (frontier.length < 2 || last === undefined) return undefined;
  const most = Math.max(...frontier.flatMap(({ singlesLeft: { severity1, severity2 } }) => [severity1, severity2]), 1);
  const axes: Axes = { x: [0, last.minutes], y: [0, most], top: TOP, height: TALL };
  const risks = risksOf(frontier);
  // Beside the first step down, where the line leaves room.
  const fall = frontier.find(({ singlesLeft }) => singlesLeft.severity1 < (frontier[0]?.singlesLeft.severity1 ?? 0));
  return {
    title: weakWords.whatIsLeftByMinutes,
    drawing: (
      <Plate height={risks.length > 0 ? BELOW + TALLER + 40 : TOP + TALL + 40} title={weakWords.jointsLeftThatAlone}>
        <Label x={0} y={14} anchor="start" text={weakWords.jointsLeftThatAloneAre} look="quiet" />
        <PlotFrame axes={axes} unit="" />
        <PlotLine
          axes={axes}
          line={{ name: 'severity 2', points: steps(frontier, p => p.singlesLeft.severity2), look: 'dashed' }}
        />
        <PlotLine
          axes={axes}
          line={{ name: 'severity 1', points: steps(frontier, p => p.singlesLeft.severity1), look: 'signal' }}
        />
        {fall && <Label x={plotX(fall.minutes, axes) + 8} y={TOP + 14} anchor="start" text="severity 1" />}
        <Label
          x={plotX(last.minutes, axes) - 2}
          y={plotY(last.singlesLeft.severity2, axes) - 6}
          anchor="end"
          text="severity 2"
        />
        <Label x={plotX(last.minutes / 2, axes)} y={TOP + TALL + 34} text="minutes" look="quiet" />
        {risks.length > 0 && <Chances frontier={frontier} risks={risks} hazardOf={hazardOf} />}
      </Plate>
    ),
    head: [weakWords.minutes, weakWords.money, weakWords.severityLeft, weakWords.ofEventsWhereItChanges],
    rows: frontier
      .map(({ minutes, money, singlesLeft: { severity1, severity2 } }, n) => [
        String(minutes),
        String(money),
        `${severity1}, ${severity2}`,
        changedAt(frontier, n, risks, hazardOf),
      ])
      .filter(([, , left, changed], n, all) => n === 0 || changed !== '' || left !== all[n - 1]?.[2]),
  };
}

/** One line each; what several hazards leave never adds up, for they share links. */
function Chances(props: {
  readonly frontier: Points;
  readonly risks: readonly string[];
  readonly hazardOf: (name: string) => string;
}) {
  const { frontier, risks, hazardOf } = props;
  const end = frontier.at(-1)?.minutes ?? 0;
  const most = 1.1 * Math.max(...risks.map(name => 1000 * chanceAt(frontier, 0, name)));
  const axes: Axes = { x: [0, end], y: [0, most], top: BELOW, height: TALLER };
  const names = apart(
    risks.map(name => plotY(1000 * chanceAt(frontier, frontier.length - 1, name), axes) - 5),
    13,
  );
  return (
    <g>
      <Label x={0} y={BELOW - 16} anchor="start" text={weakWords.ofEventsLikeThisOne} look="quiet" />
      <PlotFrame axes={axes} unit="" />
      {risks.map((name, i) => (
        <g key={name}>
          <PlotLine
            axes={axes}
            line={{
              name,
              points: steps(frontier, (_, n) => 1000 * chanceAt(frontier, n, name)),
              look: LOOKS[i % LOOKS.length] ?? 'plain',
            }}
          />
          <Label x={plotX(end, axes) - 2} y={names[i] ?? 0} anchor="end" text={hazardOf(name)} />
        </g>
      ))}
      <Label x={plotX(end / 2, axes)} y={BELOW + TALLER + 34} text="minutes" look="quiet" />
    </g>
  );
}

/** Functions of severity 1 of which some budget leaves less. */
const risksOf = (frontier: Points): readonly string[] => [
  ...new Set(frontier.flatMap(({ hazards }) => hazards.filter(one => one.severity === 1).map(one => one.function))),
];

/** A point names only what it changes: elsewhere it is as at the beginning. */
function chanceAt(frontier: Points, n: number, name: string): number {
  const of = (point: Points[number] | undefined) => point?.hazards.find(one => one.function === name);
  return of(frontier[n])?.to ?? frontier.map(of).find(found => found)?.from ?? Number.NaN;
}

const steps = (frontier: Points, of: (point: Points[number], n: number) => number): (readonly [number, number])[] =>
  frontier.flatMap((point, n): (readonly [number, number])[] => {
    const before = frontier[n - 1];
    return [
      [point.minutes, before ? of(before, n - 1) : of(point, n)],
      [point.minutes, of(point, n)],
    ];
  });

/** 'no brakes 3.3; steering lost 14': all at first, then those that show another figure than before. */
function changedAt(frontier: Points, n: number, risks: readonly string[], hazardOf: (name: string) => string): string {
  const at = (place: number, name: string): string => shown(chanceAt(frontier, place, name));
  return risks
    .filter(name => n === 0 || at(n, name) !== at(n - 1, name))
    .map(name => `${hazardOf(name)} ${at(n, name)}`)
    .join('; ');
}

const shown = (chance: number): string => String(Number((1000 * chance).toPrecision(2)));

/** Heights for names that want these, so far apart that none covers another: the lowest where it wants, the next above. */
function apart(wanted: readonly number[], least: number): readonly number[] {
  const placed = new Map<number, number>();
  let below = Number.POSITIVE_INFINITY;
  for (const [i, y] of [...wanted.entries()].sort((a, b) => b[1] - a[1])) {
    below = Math.min(y, below - least);
    placed.set(i, below);
  }
  return wanted.map((y, i) => placed.get(i) ?? y);
}
