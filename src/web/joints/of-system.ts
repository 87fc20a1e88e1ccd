/** How the parts of one system are held: every joint with what keeps it made, what holds when that lets go, and how it stands. */
import type { State } from '../../book/index.ts';
import type { Joint, Kart, System } from '../../kart/index.ts';
import { openedBy } from '../../life/index.ts';
import { drawKart, type Point, placeOf } from '../drawing/geometry.ts';
import { type Mark, marked } from '../drawing/marks.ts';

/** In the order that wins where several fall on one mark. */
export const HELD = ['open', 'off', 'retention', 'together'] as const;
/** Opened and not made, or lying off; held by one retention, by a second too. */
export type Held = (typeof HELD)[number];

export type JointLine = {
  readonly kind: Held;
  readonly at: Point;
  readonly joint: Joint;
  readonly made: string | null; // when, where the record says so
};

export function jointsOf(kart: Kart, state: State, system: System): readonly JointLine[] {
  return Object.values(kart.parts)
    .filter(part => part.system === system)
    .flatMap(part =>
      part.joints.flatMap((id): JointLine[] => {
        const joint = kart.joints[id];
        if (joint === undefined) return [];
        const kind: Held =
          state.parts[part.id]?.on === false
            ? 'off'
            : openedBy(kart, state, id)
              ? 'open'
              : joint.second === undefined
                ? 'retention'
                : 'together';
        return [{ kind, at: placeOf(part), joint, made: state.joints[id]?.made?.at ?? null }];
      }),
    );
}

export const mapOfJoints = (kart: Kart, lines: readonly JointLine[]): readonly Mark<JointLine>[] =>
  marked(lines, HELD, drawKart(kart).view);
