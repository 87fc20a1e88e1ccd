/** What stands on the drawings. */
export const drawingWords = {
  known: 'known to',
  notKnown: 'not known',
  air: (clock: string, words: string) => `Air at ${clock} ${words}`,
  cannotBeTold: 'cannot be told from the baseline',
  denserThanBaselineSame: 'denser than the baseline: the same jet is lean, it can seize',
  thinnerThanBaseline: 'thinner than the baseline: the same jet is rich',
  densityKgM: 'Density, kg/m³',
  rearWidthNotGiven: 'rear width not given',
  wheelbaseNotGiven: 'wheelbase not given',
  placeListed: (n: number, count: number) => `Place ${n}, ${count} listed`,
  defectOrFailed: 'defect or failed',
  liesOff: 'lies off',
  jointOpen: 'joint open',
  workDue: 'work due',
  offKart: 'off the kart',
} as const;
