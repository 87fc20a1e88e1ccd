/** How ballast is bolted on: the rule set's figures, or the strictest of several rule books where it gives none. */

export type FixingRule = {
  readonly boltDiameter: number; // at least [m]
  readonly boltsABlock: number; // at least [1]
  readonly blockMass: number; // at most [kg]
  readonly massABolt?: number; // at most [kg]
};
export type Fixing = {
  readonly blocks: number;
  readonly boltsABlock: number;
  readonly boltDiameter: number; // [m]
};

/**
 * Where a rule set is silent: two bolts of 8 mm or more through each block, class 8.8, washers of 30 mm on both faces,
 * block 5 kg or less, a second means on every bolt. The strictest of five rule books that differ. Source: ballast-fixing.
 */
export const STRICTEST: FixingRule = { boltDiameter: 0.008, boltsABlock: 2, blockMass: 5 };

/**
 * Blocks and bolts for a mass at one place.  blocks = ⌈m/B⌉;  bolts = max(b, ⌈(m/blocks)/k⌉).
 * m mass there [kg]; B largest block [kg]; b least bolts a block [1]; k most mass a bolt [kg]. Valid for m above 0.
 * Source: ballast-fixing.
 */
export function fixing(mass: number, rule: FixingRule): Fixing {
  const blocks = Math.max(1, up(mass / rule.blockMass));
  const byMass = rule.massABolt === undefined ? 0 : up(mass / blocks / rule.massABolt);
  return { blocks, boltsABlock: Math.max(rule.boltsABlock, byMass), boltDiameter: rule.boltDiameter };
}

/** Names of the limits a rule set may give for this. */
const LIMITS = {
  boltDiameter: ['ballast bolt diameter', 'min'],
  boltsABlock: ['ballast bolts a block', 'min'],
  blockMass: ['ballast block mass', 'max'],
  massABolt: ['ballast mass a bolt', 'max'],
} as const;

type LimitsOf = Readonly<
  Record<string, { readonly min?: { readonly si: number }; readonly max?: { readonly si: number } } | undefined>
>;

/** The fixing rule of a rule set's limits, completed by `STRICTEST`; `missing` names the limits it does not give. */
export function fixingRule(limits: LimitsOf): { readonly rule: FixingRule; readonly missing: readonly string[] } {
  const given = Object.entries(LIMITS).flatMap(([name, [limit, end]]) => {
    const value = limits[limit]?.[end]?.si;
    return value === undefined ? [] : [[name, value] as const];
  });
  const names = new Set(given.map(([name]) => name));
  const missing = Object.entries(LIMITS).flatMap(([name, [limit]]) =>
    names.has(name) || name === 'massABolt' ? [] : [limit],
  );
  return { rule: { ...STRICTEST, ...Object.fromEntries(given) }, missing };
}

const up = (value: number): number => Math.ceil(value - 1e-9);
