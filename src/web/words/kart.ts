/** What the sheet Kart says. */
export const kartWords = {
  kartFromAbove: 'The kart from above',
  kartFromAbovePlaces: (name: string, count: number) =>
    `Kart ${name} from above, ${count} places with open work, listed beside`,
  openWorkByPlace: 'Open work by place',
  withItsDimensions: {
    'rear axle': 'Rear axle with its dimensions',
    'front end': 'Front end with its dimensions',
  },
  jointsBySystem: 'Joints and what keeps them made, by system',
  numbers: 'Numbers: to which dimension, torque, weight',
  setUpHowItStands: 'Set-up: how it stands, what was changed',
  weakLinksWhatWouldHurt: 'Weak links: what would hurt us',
  labelsForPartsAndBoxes: 'Labels for parts and boxes of spares',
  build: 'Build: parts in and out, dimensions, the kart file',
  anotherKart: 'Another kart: four questions to its first plan',
  nothingLiesOff: 'Nothing lies off and no work stands open.',
  place: (n: number) => `Place ${n}`,
  open: (count: number) => `${count} open`,
} as const;
