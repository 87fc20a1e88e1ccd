/**
 * Chains as data, sizes in metres. `read`: seen in tables of motorcycle chain, of ASME/ANSI B29.1 (inches converted) or a
 * kart magazine; `memory`: recalled, not verified. Where a size has both, `from memory` says which is recalled.
 */
export const CHAINS = ['219', '420', '428', '520', '35', '40', '41', '50'] as const;
export type ChainName = (typeof CHAINS)[number];
export type ChainSize = {
  readonly pitch: number;
  readonly roller: number; // diameter; of 35 its bush, it has no roller
  readonly inside: number; // between the inner plates
  readonly strength?: number; // least tensile strength [N], read for 35, 40 and 41 in lbf
  readonly mark: 'read' | 'read, roller and width from memory';
};

const LBF = 4.4482216152605;
const size = (pitch: number, roller: number, inside: number, mark: ChainSize['mark'] = 'read'): ChainSize => ({
  pitch: pitch / 1000,
  roller: roller / 1000,
  inside: inside / 1000,
  mark,
});

export const CHAIN_SIZES: Readonly<Record<ChainName, ChainSize>> = {
  // Not ANSI 35, not 5/16 in and not 8 mm.
  '219': size(7.774, 4.59, 4.85, 'read, roller and width from memory'),
  // 420 and 428 have one pitch and two rollers: one on the other's sprocket eats it.
  '420': size(12.7, 7.77, 6.35),
  '428': size(12.7, 8.51, 7.75), // one table gives 7.85 inside
  '520': size(15.875, 10.16, 6.35),
  '35': { ...size(9.525, 5.08, 4.78), strength: 1758 * LBF },
  '40': { ...size(12.7, 7.92, 7.92), strength: 3125 * LBF },
  '41': { ...size(12.7, 7.77, 6.35), strength: 1500 * LBF },
  '50': size(15.875, 10.16, 9.53),
};

/** Chains of the same pitch whose roller is another one: they seem to fit, and do not. */
export const seemToFit = (name: ChainName): readonly ChainName[] => {
  const { pitch, roller } = CHAIN_SIZES[name];
  return CHAINS.filter(other => CHAIN_SIZES[other].pitch === pitch && CHAIN_SIZES[other].roller !== roller);
};
