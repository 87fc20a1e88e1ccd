/**
 * What in a fact may name a person or is theirs (SPEC B35). In format 2 each of these is sealed by a digest of its own, so that
 * it can be taken out and the hash of the fact still holds.
 */
export const NAMES = ['by', 'signer'] as const;
/** Words that a person typed: a name in them is blacked out. */
export const BARRED = [
  'text',
  'why',
  'note',
  'how',
  'defect',
  'conditions',
  'statement',
  'wouldHaveHeld',
  'open',
  'name',
] as const;
/** Photos, logs, and words that nothing about the kart rests on. */
export const OUT = ['photo', 'file', 'text', 'note', 'conditions', 'statement', 'wouldHaveHeld'] as const;
export const PERSONAL = [...NAMES, ...BARRED, 'photo', 'file'] as const;
export type PersonalKey = (typeof PERSONAL)[number];
