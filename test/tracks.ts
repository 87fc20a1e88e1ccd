/** Curvature of the invented tracks that the logs of test/fixtures/laps were driven on; elements of the notes on laps. */

/** A straight of so many metres, or a bend: radius [m], angle [degrees, to the left above 0], length of each clothoid [m]. */
type Element = readonly [length: number] | readonly [radius: number, angle: number, clothoid: number];

const TRACKS: Readonly<Record<'K1' | 'K3', readonly Element[]>> = {
  K1: [
    [201.656168],
    [22.0, 135.0, 12],
    [55.0],
    [32.0, 165.0, 4],
    [8.0],
    [8.0, -180.0, 8],
    [55.0],
    [11.0, -75.0, 6.5],
    [55.0],
    [36.0, 60.0, 6],
    [40.0],
    [25.0, 135.0, 6],
    [210.202498],
    [22.0, 120.0, 4],
  ],
  K3: [
    [40.0],
    [8.0, 70.0, 4.4],
    [30.0],
    [18.0, -40.0, 5.7],
    [120.0],
    [36.0, 75.0, 6],
    [186.92089],
    [14.0, 70.0, 7.7],
    [70.0],
    [28.0, 90.0, 8],
    [55.0],
    [32.0, -55.0, 12],
    [40.0],
    [10.0, 165.0, 10],
    [40.0],
    [36.0, -135.0, 4],
    [140.460441],
    [18.0, 120.0, 10],
  ],
};

export type KnownTrack = { readonly length: number; readonly curvatureAt: (distance: number) => number };

export function knownTrack(name: keyof typeof TRACKS): KnownTrack {
  const pieces: { readonly from: number; readonly length: number; readonly first: number; readonly last: number }[] =
    [];
  let from = 0;
  const piece = (length: number, first: number, last: number): void => {
    if (length > 1e-9) pieces.push({ from, length, first, last });
    from += length;
  };
  for (const [size, angle, clothoid = 0] of TRACKS[name])
    if (angle === undefined) piece(size, 0, 0);
    else {
      const top = Math.sign(angle) / size;
      piece(clothoid, 0, top);
      piece((size * Math.abs(angle) * Math.PI) / 180 - clothoid, top, top);
      piece(clothoid, top, 0);
    }
  const length = from;
  const curvatureAt = (distance: number): number => {
    const at = ((distance % length) + length) % length;
    const found = pieces.findLast(each => each.from <= at);
    if (!found) throw new Error(`curvatureAt: distance must be a number, got ${distance}`);
    return found.first + (found.last - found.first) * Math.min(1, (at - found.from) / found.length);
  };
  return { length, curvatureAt };
}
