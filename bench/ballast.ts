/** The least ballast out of two thousand pieces, each with its own mass and place, beside a search that goes by hand's rule. */
import { leastBallast } from '../src/numbers/index.ts';
import { type Figure, median, ms, times } from './measure.ts';
import { seeded } from './random.ts';

const PIECES = 2000;
const KART = { mass: 160, least: 190, front: 0.41, left: 0.49 } as const;
const WANTED = { front: 0.43, left: 0.5, room: 0.002 } as const;

export async function ballasts(): Promise<readonly Figure[]> {
  const random = seeded(41);
  const between = (low: number, high: number): number => low + ((high - low) * random.below(10_000)) / 10_000;
  const pieces = Array.from({ length: PIECES }, () => ({
    most: between(0.1, 1),
    front: between(-0.1, 1.2),
    left: between(0.05, 0.95),
  }));
  const aims = (['front', 'left'] as const).map(name => ({
    now: KART[name],
    at: pieces.map(piece => piece[name]),
    low: WANTED[name] - WANTED.room,
    high: WANTED[name] + WANTED.room,
  }));
  const ask = () => leastBallast({ mass: KART.mass, least: KART.least, most: pieces.map(({ most }) => most), aims });
  const found = ask();
  const cut = found.masses.filter((mass, n) => mass > 1e-9 && mass < (pieces[n]?.most ?? 0) - 1e-9).length;
  const exact = await median(5, ask);
  const byHand = await median(5, () => greedy(pieces));
  return [
    {
      what: `least ballast of ${PIECES} pieces: ${found.total.toFixed(2)} kg, ${found.met ? 'met' : 'not met'}, ${cut} to cut`,
      value: ms(exact),
      ratio: times(exact, byHand, `one piece after another (${greedy(pieces).toFixed(2)} kg)`),
    },
  ];
}

/** What a person does: always the piece that brings both shares nearest, until it is heavy enough; mass used [kg]. */
function greedy(pieces: readonly { readonly most: number; readonly front: number; readonly left: number }[]): number {
  const left = new Set(pieces);
  let [mass, front, side] = [KART.mass, KART.mass * KART.front, KART.mass * KART.left];
  while (mass < KART.least && left.size > 0) {
    let best = pieces[0];
    let off = Number.POSITIVE_INFINITY;
    for (const piece of left) {
      const then = mass + piece.most;
      const away =
        Math.abs((front + piece.most * piece.front) / then - WANTED.front) +
        Math.abs((side + piece.most * piece.left) / then - WANTED.left);
      if (away < off) [best, off] = [piece, away];
    }
    if (best === undefined) break;
    left.delete(best);
    mass += best.most;
    front += best.most * best.front;
    side += best.most * best.left;
  }
  return mass - KART.mass;
}
