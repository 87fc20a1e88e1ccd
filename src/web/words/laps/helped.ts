/** What is said of whether a change helped. */
export const helpedWords = {
  didItHelp: 'Did it help?',
  noDayInRecordHas:
    'No day in the record has two sessions with lap times yet. Bring in the laps of each session, and write every change of the set-up down when it is made: then the laps before and after can be compared.',
  whichDay: 'Which day',
  runsWith: (name: string, count: number) => `${name}, ${count} runs`,
  tooSmallToMatter: 'Too small to matter',
  worthFinding: 'Worth finding',
  answer: 'Answer',
  cannotTell: 'Cannot tell.',
  allRuns: 'Runs',
  inOrderTheyWereDriven: 'in the order they were driven',
  lapsOfEachRun: 'The laps of each run, with the level that was fitted. The table says the same.',
  whatWasOnKart:
    'What was on the kart is as the set-up in the record had it. Tick otherwise where the record is behind; that changes this answer only.',
  noEffect: 'no effect',
  sLap: (signed: string) => `${signed} s a lap`,
  leftOfNoEffect: (smallest: string) =>
    `Left of no effect is faster. Such a test shows an effect of ${smallest} s 4 times of 5.`,
  waysOut: (out: number) => `${out} ways out`,
  markedOrInDoubt: (marked: number) => `${marked} marked or in doubt`,
  farTooSlow: (slow: number) => `${slow} far too slow`,
  fromLapsLapsDiffer: (
    counted: number,
    count: number,
    left: string,
    lapSpread: string,
    drift: number,
    abs: string,
    basis: string,
  ) =>
    `From ${counted} laps${count > 0 ? `, without ${left}` : ''}. Laps differ by ${lapSpread} s, the track ${drift <= 0 ? 'gained' : 'lost'} ${abs} ms a lap; how much runs differ by themselves is ${basis === 'own history' ? 'from your own days' : 'a starting guess'}.`,
  tableOfRuns: 'Table of the runs',
  run: 'Run',
  laps: 'Laps',
  middleLap: 'Middle lap, s',
  inRun: (change: string, n: number) => `${change} in run ${n}`,
  effectWorthFinding: 'An effect worth finding',
  yourLapsDiffer: 'Your laps differ by',
  beforeTest: 'Before a test',
  withoutChangeB: 'A without the change, B with it',
  oneStandardDeviation: 'One standard deviation; 0.10 s until a day in the book shows yours.',
  oneStandardDeviationAs: (run: string) =>
    `One standard deviation, as this day showed it; runs differ by ${run} s by themselves.`,
  lapsThatCountEachRun: (order: string, laps: number, driven: number) =>
    `${order}, ${laps} laps that count each run: ${driven} laps in all with the ways out.`,
  noTestOfOneDay: 'No test of one day shows so little with laps that differ so much.',
  orWithSoManyLaps: 'Or with so many laps a run',
  order: 'Order',
  shows: 'Shows from',
  lapsInAll: 'Laps in all',
  effectOfThisSizeShows:
    'An effect of this size shows 4 times of 5. A alone and then B alone tells nothing: the track changes too.',
  sOpenDoesNotCount: 's · open: does not count · arrow: slower than shown',
} as const;
