/**
 * A flat map round one place: east and north of it, on the plane that touches the earth there.
 *
 *   X = (N + h) cos φ cos λ,  Y = (N + h) cos φ sin λ,  Z = ((1 - e²) N + h) sin φ,  N = a / √(1 - e² sin² φ)
 *   east = -dX sin λ₀ + dY cos λ₀;  north = -dX sin φ₀ cos λ₀ - dY sin φ₀ sin λ₀ + dZ cos φ₀
 *
 * φ latitude, λ longitude [rad], h height above the ellipsoid [m], d less that of the origin (φ₀, λ₀). A way from the origin is
 * drawn too short by its cube over 6 R²: half a millimetre at 5 km, see `planeError`. Height counts only in that
 * everything lies at the origin's: 100 m off is 16 mm in a kilometre, and nothing in a lap time.
 * Source: IOGP Guidance Note 7-2, methods 9602 and 9837, worked example in checks/rows/laps.json; WGS 84: a, 1/f by definition.
 */
export type Place = { readonly lat: number; readonly lon: number }; // rad
export type Point = { readonly x: number; readonly y: number }; // m east, m north

export type Plane = Place & {
  readonly height: number; // m, of everything that names no height
  readonly forward: (lat: number, lon: number, height?: number) => Point;
  readonly back: (point: Point) => Place;
};

const A = 6_378_137; // m
const F = 1 / 298.257223563;
const E2 = F * (2 - F);

export function planeAt({ lat, lon }: Place, height = 0): Plane {
  if (!(Math.abs(lat) <= Math.PI / 2 && Number.isFinite(lon)))
    throw new Error(`planeAt: lat and lon must be angles on the earth in rad, got ${lat} and ${lon}`);
  const [sin, cos, sinLon, cosLon] = [Math.sin(lat), Math.cos(lat), Math.sin(lon), Math.cos(lon)];
  const [x0, y0, z0] = centric(lat, lon, height);
  const forward = (toLat: number, toLon: number, at = height): Point => {
    const [x, y, z] = centric(toLat, toLon, at);
    const [dx, dy, dz] = [x - x0, y - y0, z - z0];
    return { x: dy * cosLon - dx * sinLon, y: dz * cos - sin * (dx * cosLon + dy * sinLon) };
  };
  const { meridian, parallel } = radii(lat, height);
  /** Corrects a first guess by what the way forth makes of it; each turn leaves a thousandth and less. */
  const back = ({ x, y }: Point): Place => {
    let guess = { lat: lat + y / meridian, lon: lon + x / parallel };
    for (let turn = 0; turn < 8; turn++) {
      const off = forward(guess.lat, guess.lon);
      guess = { lat: guess.lat + (y - off.y) / meridian, lon: guess.lon + (x - off.x) / parallel };
    }
    return guess;
  };
  return { lat, lon, height, forward, back };
}

/** How much too short a way of `distance` m from the origin is drawn at most, m: by the smallest radius of the earth. */
export function planeError(distance: number): number {
  const smallest = A * (1 - E2);
  return Math.abs(distance) ** 3 / (6 * smallest ** 2);
}

const across = (lat: number): number => A / Math.sqrt(1 - E2 * Math.sin(lat) ** 2);

function centric(lat: number, lon: number, height: number): readonly [number, number, number] {
  const n = across(lat);
  const out = (n + height) * Math.cos(lat);
  return [out * Math.cos(lon), out * Math.sin(lon), ((1 - E2) * n + height) * Math.sin(lat)];
}

/** m per rad to the north and to the east. */
function radii(lat: number, height: number): { readonly meridian: number; readonly parallel: number } {
  const n = across(lat);
  const meridian = ((1 - E2) * n) / (1 - E2 * Math.sin(lat) ** 2) + height;
  return { meridian, parallel: (n + height) * Math.max(Math.cos(lat), 1e-9) };
}
