/** The kart from above, small: four wheels at their places, front up, and what is said at each. */
import type { ComponentChildren } from 'preact';
import { Label, Plate, SHEET_WIDTH } from '../../drawing/lines.tsx';

export const WHEELS = ['front left', 'front right', 'rear left', 'rear right'] as const;
export type Wheel = (typeof WHEELS)[number];

export const MIDDLE = SHEET_WIDTH / 2;
/** Middle of the front and rear axle on the sheet, and how far the wheels stand out. */
export const PLAN = { front: 70, rear: 232, out: 92, height: 296 } as const;

export const wheelAt = (wheel: Wheel): { readonly x: number; readonly y: number } => ({
  x: MIDDLE + (wheel.endsWith('left') ? -1 : 1) * PLAN.out,
  y: wheel.startsWith('front') ? PLAN.front : PLAN.rear,
});

/** Two lines outside each wheel; `children` lies over the kart. */
export function PlanPlate(props: {
  readonly title: string;
  readonly height?: number;
  readonly says: (wheel: Wheel) => readonly [string, string];
  readonly children?: ComponentChildren;
}) {
  return (
    <Plate height={props.height ?? PLAN.height} title={props.title}>
      <path
        class="thin"
        d={`M${MIDDLE - 60} ${PLAN.front}H${MIDDLE + 60}M${MIDDLE - 76} ${PLAN.rear}H${MIDDLE + 76}M${MIDDLE - 34} ${PLAN.front}L${MIDDLE - 40} ${PLAN.rear}M${MIDDLE + 34} ${PLAN.front}L${MIDDLE + 40} ${PLAN.rear}M${MIDDLE - 34} ${PLAN.front}Q${MIDDLE - 26} 30 ${MIDDLE} 30Q${MIDDLE + 26} 30 ${MIDDLE + 34} ${PLAN.front}`}
      />
      <line class="chain" x1={MIDDLE} x2={MIDDLE} y1={22} y2={PLAN.rear + 34} />
      <Label x={MIDDLE} y={16} text="front" look="quiet" />
      {WHEELS.map(wheel => {
        const at = wheelAt(wheel);
        const front = wheel.startsWith('front');
        const [w, h] = front ? [24, 52] : [36, 56];
        const left = wheel.endsWith('left');
        const [first, second] = props.says(wheel);
        return (
          <g key={wheel}>
            <rect class="shape tyre" x={at.x - w / 2} y={at.y - h / 2} width={w} height={h} rx={5} />
            <Label
              x={left ? 4 : SHEET_WIDTH - 4}
              y={at.y + (front ? -36 : 44)}
              anchor={left ? 'start' : 'end'}
              text={first}
              look="strong"
            />
            <Label
              x={left ? 4 : SHEET_WIDTH - 4}
              y={at.y + (front ? -20 : 60)}
              anchor={left ? 'start' : 'end'}
              text={second}
            />
          </g>
        );
      })}
      {props.children}
    </Plate>
  );
}
