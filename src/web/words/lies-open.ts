/** What is said of what lies open. */
export const liesOpenWords = {
  countOff: (count: number) => `${count} off`,
  halfDone: (count: number) => `${count} half done`,
  toolsOut: (count: number) => `${count} tools out`,
  openOnKart: 'Open on the kart',
  partsOff: 'Parts off',
  jointsHalfDone: 'Joints half done',
  toolsUsedAndNotCounted: 'Tools used and not counted since',
  notCountedSinceThey: (tools: string) => `not counted since they were used: ${tools}`,
  openOnKartName: 'Open on the kart: name each before you sign',
} as const;
