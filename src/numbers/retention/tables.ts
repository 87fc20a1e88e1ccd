/** Sizes and rules of pins, wire and straps, as they are printed. Lengths in metres, forces in newtons. */

const IN = 0.0254; // m
const MM = 0.001; // m
const KGF = 9.80665; // N

/** Nominal size is the hole; the pin itself is thinner, from `least` to `most` [m]. Source: iso-1234. */
export type SplitPin = { readonly nominal: number; readonly least: number; readonly most: number };
export const SPLIT_PINS: readonly SplitPin[] = [
  { nominal: 1.6 * MM, least: 1.3 * MM, most: 1.4 * MM },
  { nominal: 2 * MM, least: 1.7 * MM, most: 1.8 * MM },
  { nominal: 2.5 * MM, least: 2.1 * MM, most: 2.3 * MM },
  { nominal: 3.2 * MM, least: 2.7 * MM, most: 2.9 * MM },
  { nominal: 4 * MM, least: 3.5 * MM, most: 3.7 * MM },
];

/** Nominal pin [mm] for a bolt of a metric diameter [mm]. Source: pin-for-bolt, memory. */
const PIN_FOR: Readonly<Record<number, number>> = { 6: 1.6, 8: 2, 10: 2.5, 12: 3.2 };

/** The largest pin that goes through a hole [m]; undefined below the smallest. */
export const pinForHole = (hole: number): SplitPin | undefined =>
  SPLIT_PINS.findLast(pin => pin.nominal <= hole + 1e-9);

/** The usual pin of a bolt of this diameter [m]; undefined where none is listed. */
export const pinForBolt = (diameter: number): SplitPin | undefined => {
  const nominal = PIN_FOR[Math.round(diameter * 1e6) / 1000];
  return SPLIT_PINS.find(pin => nominal !== undefined && Math.abs(pin.nominal - nominal * MM) < 1e-9);
};

/** Twists an inch by wire diameter [m]. Source: twist-per-inch, second hand. */
const TWISTS = [
  { from: 0.02 * IN, to: 0.025 * IN, least: 8, most: 14 },
  { from: 0.032 * IN, to: 0.041 * IN, least: 6, most: 11 },
  { from: 0.051 * IN, to: 0.06 * IN, least: 4, most: 8 },
] as const;
/** Wire sold in mm is up to this much off its inch size: 0.8 mm for 0.032 in [m]. */
const ROUNDED = 0.02 * MM;

/** Twists an inch for a wire of this diameter [m]; undefined between and beyond the printed sizes. */
export const twistsFor = (wire: number): { readonly least: number; readonly most: number } | undefined =>
  TWISTS.find(row => wire >= row.from - ROUNDED && wire <= row.to + ROUNDED);

/** Double twist. Source: lockwire-rules. */
export const WIRE_RULES = {
  usual: 0.032 * IN, // thinnest wire where the hole is larger than `smallHole`
  smallHole: 0.045 * IN,
  small: 0.02 * IN, // thinnest wire of all, only for the holes and the distance below
  smallHoles: [0.045 * IN, 0.062 * IN],
  smallSpacing: 2 * IN, // less than
  longestSpan: 6 * IN,
  wide: [4 * IN, 6 * IN], // heads this far apart
  wideHeads: 3, // at most so many in series
  longestWire: 24 * IN, // in a close group
  pigtailTurns: [4, 6],
  pigtail: [0.5 * IN, 0.625 * IN],
} as const;

/** Loop strength of a nylon strap by its width [m], new [N]. Source: strap-strength. */
export type Strap = { readonly width: number; readonly strength: number };
export const STRAPS: readonly Strap[] = [
  { width: 2.5 * MM, strength: 8 * KGF },
  { width: 3.6 * MM, strength: 18.2 * KGF },
  { width: 4.8 * MM, strength: 22.2 * KGF },
  { width: 7.6 * MM, strength: 54.4 * KGF },
  { width: 9 * MM, strength: 79.4 * KGF },
  { width: 12.7 * MM, strength: 114 * KGF },
];
/** Share of the strength that is left after heat and damp, type 1. Source: strap-ageing. */
export const STRAP_LEFT = 0.5;

/** The widest listed strap that is not wider than this [m]; undefined below the narrowest. */
export const strapOf = (width: number): Strap | undefined => STRAPS.findLast(strap => strap.width <= width + 1e-9);
/** The narrowest strap whose aged loop holds this load [N]; undefined where none does. */
export const strapFor = (load: number): Strap | undefined => STRAPS.find(strap => STRAP_LEFT * strap.strength >= load);

/** A plastic insert is not used above this [K]: 250 °F. Source: ac-43-13-locking. */
export const INSERT_LIMIT = (250 + 459.67) * (5 / 9);
