/** Four loads in plan: a bar at each wheel, and an open frame where a wheel is off the road. */
import { Arrow, Label } from '../../drawing/lines.tsx';
import { platesWords } from '../../words/plates.ts';
import { type DrawPlate, figureOf, saidText, wordsOf } from './asked.ts';
import { MIDDLE, PLAN, PlanPlate, WHEELS, type Wheel, wheelAt } from './plan.tsx';

const TALL = 96;

export const wheelLoadsPlate: DrawPlate = asked => {
  const loads = WHEELS.map(wheel => figureOf(asked, wheel));
  if (!loads.every(Number.isFinite)) return undefined;
  const most = Math.max(...loads, 1);
  const up = (wheel: Wheel): boolean => figureOf(asked, wheel) <= 0;
  const says = (wheel: Wheel): readonly [string, string] => [
    wordsOf(asked, wheel),
    up(wheel) ? platesWords.offRoad : '',
  ];
  const right = saidText(asked, 'turn') === 'right';
  const title = platesWords.wheelLoadsFromAbove(
    right,
    WHEELS.map(wheel => `${wheel} ${wordsOf(asked, wheel)}${up(wheel) ? platesWords.andOffRoad : ''}`).join('; '),
  );
  return {
    title,
    head: ['', 'left', 'right'],
    rows: [
      ...(['front', 'rear'] as const).map(axle => [
        axle,
        ...(['left', 'right'] as const).map(side => says(`${axle} ${side}`).filter(Boolean).join(', ')),
      ]),
      ...['front axle', 'rear axle', 'inner rear lifts at', 'goes over at'].map(name => [
        name,
        wordsOf(asked, name),
        '',
      ]),
    ],
    drawing: (
      <PlanPlate title={title} says={says}>
        <g>
          <Arrow from={{ x: MIDDLE + (right ? -22 : 22), y: 118 }} to={{ x: MIDDLE + (right ? 22 : -22), y: 118 }} />
          <Label x={MIDDLE} y={110} text={`turn ${right ? 'right' : 'left'}`} look="quiet" />
        </g>
        {WHEELS.map(wheel => {
          const { x, y } = wheelAt(wheel);
          const tall = (TALL * Math.max(figureOf(asked, wheel), 0)) / most;
          const at = wheel.endsWith('left') ? x + 24 : x - 38;
          const foot = y + 28;
          return (
            <g key={wheel} class={up(wheel) ? 'signal' : ''}>
              <rect class="bar" x={at} y={foot - tall} width={14} height={Math.max(tall, 1)} />
              <line x1={at - 3} x2={at + 17} y1={foot} y2={foot} />
            </g>
          );
        })}
        {[platesWords.innerRear, platesWords.liftsAt].map((text, n) => (
          <Label key={text} x={MIDDLE} y={PLAN.rear - 58 + n * 16} text={text} look="quiet" />
        ))}
        <Label x={MIDDLE} y={PLAN.rear - 24} text={wordsOf(asked, 'inner rear lifts at')} look="strong" />
      </PlanPlate>
    ),
  };
};
