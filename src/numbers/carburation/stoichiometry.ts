/**
 * Air a fuel needs to burn wholly, kilogram a kilogram.
 *
 *   n = c + h/4 - o/2;  AFR = n Ma/(0.2095 M);  blend: AFR = w AFRe + (1 - w) AFRp,  w = x ρe/(x ρe + (1 - x) ρp)
 * c, h, o atoms in a molecule CcHhOo [1], n oxygen molecules for it [mol], 0.2095 share of oxygen in dry air [1], Ma 28.9647
 * and M molar mass of dry air and of the fuel [g/mol], x share of ethanol by volume, w by mass [1], ρ density [kg/m³].
 * Valid: dry air, complete combustion. Source: combustion-balance.
 */
const OXYGEN = 0.2095;
const AIR = 28.9647;
const ATOM = { carbon: 12.011, hydrogen: 1.008, oxygen: 15.999 } as const; // g/mol

export type Molecule = { readonly carbon: number; readonly hydrogen: number; readonly oxygen: number };

export const ISO_OCTANE: Molecule = { carbon: 8, hydrogen: 18, oxygen: 0 };
/** Petrol as one molecule: 1.85 hydrogen to a carbon. Source: combustion-balance. */
export const PETROL_MOLECULE: Molecule = { carbon: 1, hydrogen: 1.85, oxygen: 0 };
export const ETHANOL: Molecule = { carbon: 2, hydrogen: 6, oxygen: 1 };

export function stoichiometricRatio({ carbon: c, hydrogen: h, oxygen: o }: Molecule): number {
  const mass = c * ATOM.carbon + h * ATOM.hydrogen + o * ATOM.oxygen;
  return ((c + h / 4 - o / 2) * AIR) / (OXYGEN * mass);
}

/** Share of ethanol by mass from its share by volume [1]. */
export const ethanolByMass = (byVolume: number, ethanolDensity: number, petrolDensity: number): number =>
  (byVolume * ethanolDensity) / (byVolume * ethanolDensity + (1 - byVolume) * petrolDensity);

/** Air a blend of petrol and ethanol needs [kg/kg]; `byMass` share of ethanol, 0 to 1. */
export const blendRatio = (byMass: number): number =>
  byMass * stoichiometricRatio(ETHANOL) + (1 - byMass) * stoichiometricRatio(PETROL_MOLECULE);
