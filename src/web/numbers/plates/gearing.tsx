/** What pushes in each gear over road speed, where the next gear takes over, and what air and rolling hold back. */
import { type Push, pushOf, resistanceAt } from '../../../numbers/index.ts';
import { formatQuantity, inUnit } from '../../../quantity/index.ts';
import { Label, Plate, SHEET_WIDTH } from '../../drawing/lines.tsx';
import { type Axes, type Line, PlotFrame, PlotLine, plotX, plotY } from '../../drawing/plot.tsx';
import { platesWords } from '../../words/plates.ts';
import { type Asked, type DrawPlate, figureOf, wordsOf } from './asked.ts';

const STEPS = 40; // of the drag curve

const speedName = (gear: number, gears: number): string => (gears === 1 ? 'speed' : `speed in gear ${gear}`);
const ratioName = (gear: number, gears: number): string =>
  gears === 1 ? 'overall ratio' : `overall ratio in gear ${gear}`;
const shiftName = (gear: number): string => `shift ${gear} to ${gear + 1} at`;

/** The push of a gear at an engine speed between its points. */
function pushAt(pushes: readonly Push[], rotation: number): Push | undefined {
  const next = pushes.findIndex(push => push.rotation >= rotation);
  const [before, after] = [pushes[Math.max(0, next - 1)], pushes[next]];
  if (!before || !after || after === before) return after;
  const share = (rotation - before.rotation) / (after.rotation - before.rotation);
  const between = (from: number, to: number): number => from + share * (to - from);
  return { rotation, speed: between(before.speed, after.speed), force: between(before.force, after.force) };
}

const strongest = (pushes: readonly Push[]): Push | undefined => pushes.toSorted((a, b) => b.force - a.force)[0];

export const gearingPlate: DrawPlate = asked => {
  const found = pushOf(asked.question);
  if (found === undefined) return undefined;
  const { gears, against } = found;
  const unit = asked.answer.figures[speedName(1, gears.length)]?.unit ?? 'km/h';
  const all = gears.flat();
  const fastest = Math.max(...all.map(push => inUnit(push.speed, unit)));
  const most = Math.max(...all.map(push => push.force)) / 1000;
  if (!(fastest > 0 && most > 0)) return undefined;
  const axes: Axes = { x: [0, 1.04 * fastest], y: [0, 1.1 * most], top: 74, height: 250 };
  const place = (push: Push): readonly [number, number] => [inUnit(push.speed, unit), push.force / 1000];
  const curves = gears.map((pushes, n): Line => ({ name: `gear ${n + 1}`, look: 'plain', points: pushes.map(place) }));
  const drag: Line | undefined = against && {
    name: platesWords.heldBackByAir,
    look: 'dashed',
    points: Array.from({ length: STEPS + 1 }, (_, n) => {
      const speed = (fastest * n) / STEPS / inUnit(1, unit);
      return [inUnit(speed, unit), resistanceAt(against, speed) / 1000] as const;
    }).filter(([, force]) => force <= axes.y[1]),
  };
  const shifts = gears.slice(0, -1).flatMap((pushes, n) => {
    const push = pushAt(pushes, figureOf(asked, shiftName(n + 1)));
    return push ? [place(push)] : [];
  });
  const title = platesWords.pushOfRearTyresOver(
    gears.length,
    gears
      .slice(1)
      .map((_, n) => `${n + 1} to ${n + 2} at ${wordsOf(asked, shiftName(n + 1))}`)
      .join(', '),
    against ? platesWords.topSpeedOnLevel(wordsOf(asked, 'top speed on the level')) : '',
  );
  return {
    title,
    head: [
      'gear',
      platesWords.speed(String(asked.question['engine speed'])),
      platesWords.strongestPush,
      platesWords.shiftUp,
    ],
    rows: gears.map((pushes, n) => row(asked, n + 1, gears.length, strongest(pushes))),
    drawing: (
      <Plate height={axes.top + axes.height + 42} title={title}>
        <Key y={14} look="plain" text={platesWords.pushByGear(gears.length)} />
        {drag && <Key y={34} look="dashed" text={drag.name} />}
        {shifts.length > 0 && (
          <g class="signal">
            <circle class="ring" cx={SHEET_WIDTH - 118} cy={14} r={4.5} />
            <Label x={SHEET_WIDTH - 108} y={18} anchor="start" text={platesWords.shiftUpLegend} />
          </g>
        )}
        <Label x={6} y={64} anchor="start" text="kN" look="quiet" />
        <PlotFrame axes={axes} unit="" />
        {drag && <PlotLine line={drag} axes={axes} />}
        {curves.map(line => (
          <PlotLine key={line.name} line={line} axes={axes} />
        ))}
        {shifts.map(([speed, force]) => (
          <g key={speed} class="signal">
            <circle class="ring" cx={plotX(speed, axes)} cy={plotY(force, axes)} r={4.5} />
          </g>
        ))}
        {gears.length > 1 &&
          gears.map((pushes, n) => <GearNumber key={n} axes={axes} at={strongest(pushes)} n={n + 1} place={place} />)}
        <Label
          x={SHEET_WIDTH - 16}
          y={axes.top + axes.height + 36}
          anchor="end"
          text={platesWords.roadSpeed(unit)}
          look="quiet"
        />
      </Plate>
    ),
  };
};

/** The number of a gear over the top of its curve. */
function GearNumber(props: {
  readonly axes: Axes;
  readonly at: Push | undefined;
  readonly n: number;
  readonly place: (push: Push) => readonly [number, number];
}) {
  if (props.at === undefined) return null;
  const [speed, force] = props.place(props.at);
  return <Label x={plotX(speed, props.axes)} y={plotY(force, props.axes) - 7} text={String(props.n)} look="strong" />;
}

const Key = (props: { readonly y: number; readonly look: Line['look']; readonly text: string }) => (
  <g>
    <path class={`curve ${props.look}`} d={`M6 ${props.y}H36`} />
    <Label x={44} y={props.y + 4} anchor="start" text={props.text} />
  </g>
);

function row(asked: Asked, gear: number, gears: number, most: Push | undefined): readonly string[] {
  const push = most ? `${formatQuantity(Math.round(most.force / 10) * 10, 'N', 0)}` : '–';
  return [
    `${gears > 1 ? gear : 'direct'} (${wordsOf(asked, ratioName(gear, gears))})`,
    wordsOf(asked, speedName(gear, gears)),
    push,
    gear < gears ? wordsOf(asked, shiftName(gear)) : '–',
  ];
}
