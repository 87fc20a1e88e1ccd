/** Printed torque tables, as they are printed: in pound-inches, and not corrected where a row looks low. */

type Line = { readonly min: number; readonly max: number; readonly most: number };
/** A tension nut, and beside it the thin shear nut where one is printed. */
type Printed = Line & { readonly shear?: Line };

/**
 * Tension nuts, and thin shear nuts, on oil-free cadmium-plated threads, bolts stressed to 40 000 psi, most 90 000 psi [lbf·in].
 * Source: ac-43-13 table 7-1. The 3/8-24 row answers to a nut factor of only 0.12 to 0.14; it stands as printed.
 * The low figure of the 5/8-18 shear nut reads 600 in the copy that was seen.
 */
export const AIRCRAFT_TORQUE: Readonly<Record<string, Printed>> = {
  '8-36': { min: 12, max: 15, most: 20, shear: { min: 7, max: 9, most: 12 } },
  '10-24': { min: 20, max: 25, most: 35 },
  '10-32': { min: 20, max: 25, most: 40, shear: { min: 12, max: 15, most: 25 } },
  '1/4-20': { min: 40, max: 50, most: 75 },
  '1/4-28': { min: 50, max: 70, most: 100, shear: { min: 30, max: 40, most: 60 } },
  '5/16-18': { min: 80, max: 90, most: 160 },
  '5/16-24': { min: 100, max: 140, most: 225, shear: { min: 60, max: 85, most: 140 } },
  '3/8-16': { min: 160, max: 185, most: 275 },
  '3/8-24': { min: 160, max: 190, most: 390, shear: { min: 95, max: 110, most: 240 } },
  '7/16-20': { min: 450, max: 500, most: 840, shear: { min: 270, max: 300, most: 500 } },
  '1/2-20': { min: 480, max: 690, most: 1100, shear: { min: 290, max: 410, most: 660 } },
  '9/16-18': { min: 800, max: 1000, most: 1600, shear: { min: 480, max: 600, most: 960 } },
  '5/8-18': { min: 1100, max: 1300, most: 2400, shear: { min: 660, max: 780, most: 1400 } },
};

/**
 * Least torque a self-locking nut that is used again must still take to run down [lbf·in].
 * Source: ac-43-13 table 7-2 from 7/16 up; army-locknut below. A smaller one that fingers can turn down is thrown away.
 */
export const LEAST_RUNNING_TORQUE: Readonly<Record<string, number>> = {
  '10-32': 2,
  '1/4-28': 3.5,
  '5/16-24': 6.5,
  '3/8-24': 9.5,
  '7/16-14': 8,
  '7/16-20': 8,
  '1/2-13': 10,
  '1/2-20': 10,
  '9/16-12': 14,
  '9/16-18': 13,
  '5/8-11': 20,
  '5/8-18': 18,
};

export const POUND_INCH = 0.1129848290276167; // N·m: 4.4482216152605 N × 0.0254 m

/** Bearing face of a hexagon head and medium clearance hole, diameters [mm]: hex-head, memory. */
const HEADS: Readonly<Record<number, readonly [face: number, hole: number]>> = {
  3: [4.57, 3.4],
  4: [5.88, 4.5],
  5: [6.88, 5.5],
  6: [8.88, 6.6],
  8: [11.63, 9],
  10: [14.63, 11],
  12: [16.63, 13.5],
  14: [19.64, 15.5],
  16: [22.49, 17.5],
};

/** Diameters of the face and the hole [m]; undefined for a size that is not in the table. */
export function headOf(diameter: number): { readonly face: number; readonly hole: number } | undefined {
  const line = HEADS[Math.round(diameter * 1e6) / 1000];
  return line && { face: line[0] / 1000, hole: line[1] / 1000 };
}
