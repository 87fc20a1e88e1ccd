/** What the sheet of labels says. */
export const labelsWords = {
  labels: 'Labels',
  kartFromAbove: 'The kart from above',
  labelsWithCode: 'Labels with a code',
  labelsFor: 'Labels for',
  everyPartAndEveryBox: 'every part and every box of spares',
  boxesOfSpares: 'boxes of spares',
  addressThatCodeOpens: 'Address that the code opens',
  thisAddress: 'This address is of this device alone: another phone does not find it.',
  asPhoneThatScans: (text: string) => `As the phone that scans reaches this page. ${text}`,
  printLabels: (count: number) => `Print ${count} labels`,
  code: (name: string) => `Code for ${name}`,
  sparesKart: (kart: string) => `Spares, kart ${kart}`,
  kart: (kart: string) => `Kart ${kart}`,
} as const;
