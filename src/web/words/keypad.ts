/** What is said at a value that is read. */
export const keypadWords = {
  keypad: 'Keypad',
  deleteLastSign: 'Delete the last sign',
  plusOrMinus: 'Plus or minus',
  nextReading: 'Next reading',
  point: 'Point',
  andFractionFollows: 'And: a fraction follows',
  over: 'Over',
  when: 'When',
  by: 'By',
  read: 'Read',
  notReadBefore: 'Not read before.',
  lastRead: (text: string, date: string) => `Last read ${text} on ${date}.`,
  lastReadOf: (text: string, date: string, readings: number, moved: string) =>
    `Last read ${text} on ${date}. Over ${readings} readings: ${moved}.`,
  noChange: 'no change',
  keyboardInstead: 'Keyboard instead',
  readSeveralTimesNext: 'Read several times? “next” begins another reading.',
  numberIsInAnyOther: (unit: string) =>
    `A number is in ${unit}; any other unit you write with it, like 5 3/4 in. Several readings: a ; between them.`,
  unit: 'Unit',
  noValueYet: 'No value yet',
  written: (reading: string) => `Written: ${reading}`,
} as const;
