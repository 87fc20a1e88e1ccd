/** Where on the kart the links lie that alone are enough; near ones share one numbered mark. */
import type { Kart } from '../../kart/index.ts';
import type { SinglePoint } from '../../risk/index.ts';
import { drawKart, placeOf } from '../drawing/geometry.ts';
import { type Mark, marked } from '../drawing/marks.ts';
import { weakWords } from '../words/weak.tsx';

/** In the order that wins where several fall on one mark. */
export const ALONE = ['retention', 'together', 'part'] as const;
export type Alone = (typeof ALONE)[number];
export const ALONE_WORDS: Readonly<Record<Alone, string>> = {
  retention: weakWords.oneRetention,
  together: weakWords.severalThatOneThing,
  part: weakWords.partItself,
};

export type AloneLine = {
  readonly kind: Alone;
  readonly at: { readonly x: number; readonly y: number };
  readonly point: SinglePoint;
};

export const aloneOf = ({ sort }: SinglePoint): Alone =>
  sort === 'part' ? 'part' : sort === 'joint' ? 'retention' : 'together';

export function mapOf(kart: Kart, points: readonly SinglePoint[]): readonly Mark<AloneLine>[] {
  const lines = points.flatMap((point): AloneLine[] =>
    point.place ? [{ kind: aloneOf(point), at: placeOf({ place: point.place }), point }] : [],
  );
  return marked(lines, ALONE, drawKart(kart).view);
}
