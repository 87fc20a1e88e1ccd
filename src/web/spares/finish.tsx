/** What each sum of money brings: how likely the weekend is finished, with its band. */
import type { SparesBox } from '../../life/index.ts';
import { Label, Plate } from '../drawing/lines.tsx';
import { type Axes, PlotFrame, PlotLine, plotX, plotY } from '../drawing/plot.tsx';
import type { Drawn } from '../numbers/plates/asked.ts';
import { sparesWords } from '../words/spares.tsx';

const TOP = 30;
const TALL = 150;

/** Undefined where money changes nothing. */
export function drawFinish({ frontier }: SparesBox): Drawn | undefined {
  const last = frontier.at(-1);
  if (frontier.length < 2 || last === undefined) return undefined;
  const axes: Axes = { x: [0, last.money], y: [0, 100], top: TOP, height: TALL };
  const band = [
    ...frontier.map(({ money, finish }) => [money, finish.high * 100] as const),
    ...frontier.map(({ money, finish }) => [money, finish.low * 100] as const).toReversed(),
  ];
  return {
    title: sparesWords.weekendsFinishedTitle,
    drawing: (
      <Plate height={TOP + TALL + 40} title={sparesWords.weekendsFinishedOfLike}>
        <Label x={0} y={14} anchor="start" text={sparesWords.weekendsFinishedOf} look="quiet" />
        <polygon class="wide" points={band.map(([x, y]) => `${plotX(x, axes)},${plotY(y, axes)}`).join(' ')} />
        <PlotFrame axes={axes} unit="" />
        <PlotLine
          axes={axes}
          line={{
            name: 'finished',
            points: frontier.map(({ money, finish }) => [money, finish.chance * 100]),
            look: 'plain',
          }}
        />
        {frontier.map(({ money, finish }) => (
          <circle key={money} class="own" cx={plotX(money, axes)} cy={plotY(finish.chance * 100, axes)} r="4" />
        ))}
        <Label x={plotX(last.money / 2, axes)} y={TOP + TALL + 34} text="money" look="quiet" />
      </Plate>
    ),
    head: [sparesWords.money, sparesWords.weekendsFinishedHead],
    rows: frontier.map(({ money, finish }) => [String(money), finish.words]),
  };
}
