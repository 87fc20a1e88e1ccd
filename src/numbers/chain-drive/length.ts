/**
 * Length of a chain round two sprockets, and the distance between them for a whole even number of links.
 *
 * L = 2C + (z1 + z2)/2 + ((z2 - z1)/2π)²/C;  C = [k + √(k² - 8((z2 - z1)/2π)²)]/4,  k = L - (z1 + z2)/2
 * L links, C distance of the shafts in pitches [1], z1, z2 teeth. Taut, one chain, both sprockets in line; about 1 in 5000
 * from the geometry of the pitch circles (`lengthOnCircles`). Pitch circle d = p/sin(π/z); wrap = π - 2 asin((R - r)/C).
 * Source: formula and worked case read in a paper on chain drives and at engpowerdata.com (checks/rows/chain.json).
 */
export type Round = { readonly front: number; readonly rear: number };

const spread = ({ front, rear }: Round): number => ((rear - front) / (2 * Math.PI)) ** 2;
const mean = ({ front, rear }: Round): number => (front + rear) / 2;

/** Links, not rounded; `centre` in pitches. */
export const linksAround = (round: Round, centre: number): number => 2 * centre + mean(round) + spread(round) / centre;

/** The same with 39.6 for 4π², as it is printed in places. */
export const linksAroundShort = ({ front, rear }: Round, centre: number): number =>
  2 * centre + (front + rear) / 2 + (rear - front) ** 2 / (39.6 * centre);

/** Distance of the shafts in pitches at which so many links are taut; not a number where they cannot go round. */
export function centreFor(round: Round, links: number): number {
  const k = links - mean(round);
  return (k + Math.sqrt(k ** 2 - 8 * spread(round))) / 4;
}

export const pitchCircle = (pitch: number, teeth: number): number => pitch / Math.sin(Math.PI / teeth);

/** Links by straight runs and arcs on the pitch circles; `centre` and `pitch` in metres. */
export function lengthOnCircles(round: Round, pitch: number, centre: number): number {
  const lean = leanOf(round, pitch, centre);
  const arcs = (round.front * (Math.PI - 2 * lean) + round.rear * (Math.PI + 2 * lean)) / (2 * Math.PI);
  return (2 * centre * Math.cos(lean)) / pitch + arcs;
}

/** How much the smaller sprocket is wrapped [rad]. */
export const wrapOf = (round: Round, pitch: number, centre: number): number =>
  Math.PI - 2 * Math.abs(leanOf(round, pitch, centre));

const leanOf = ({ front, rear }: Round, pitch: number, centre: number): number =>
  Math.asin((pitchCircle(pitch, rear) - pitchCircle(pitch, front)) / 2 / centre);

export type Links = {
  readonly links: number; // even
  readonly centre: number; // where they are taut [m]
  readonly move: number; // engine away from the axle; toward it below 0 [m]
  readonly fits: 'yes' | 'no' | 'not known'; // whether the slots of the mount reach there
};
export type Slot = { readonly away: number; readonly toward: number }; // room from here [m]

/** The even numbers of links next below and above, the smaller move first; one that the slot reaches before one that it does not. */
export function chainLinks(asked: {
  readonly round: Round;
  readonly pitch: number;
  readonly centre: number;
  readonly slot?: Slot;
}): { readonly exact: number; readonly choices: readonly Links[] } {
  const { round, pitch, centre, slot } = asked;
  const exact = linksAround(round, centre / pitch);
  const low = 2 * Math.floor(exact / 2);
  const choices = [low, low + 2].flatMap((links): Links[] => {
    const at = centreFor(round, links) * pitch;
    if (!Number.isFinite(at)) return [];
    const move = at - centre;
    const fits = slot === undefined ? 'not known' : move <= slot.away && -move <= slot.toward ? 'yes' : 'no';
    return [{ links, centre: at, move, fits }];
  });
  const order = { yes: 0, 'not known': 1, no: 2 };
  return {
    exact,
    choices: choices.toSorted((a, b) => order[a.fits] - order[b.fits] || Math.abs(a.move) - Math.abs(b.move)),
  };
}
