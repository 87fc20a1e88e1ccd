/** What is said where a person chooses how dates, times and sizes are written. */
export const choiceWords = {
  title: 'Dates, times and units',
  keptHere: 'Kept on this device; what another device shows is its own affair.',
  date: 'A date',
  named: '26 Nov 2026',
  'year first': '2026-11-26',
  'month first': '11/26/2026',
  'day first': '26/11/2026',
  clock: 'The time of day',
  '24 h': '14:05',
  '12 h': '2:05 pm',
  size: 'Sizes of parts',
  distance: 'Distances and heights',
  torque: 'Torque',
  pressure: 'Pressure of tyres and fluids',
  temperature: 'Temperature',
  mass: 'Mass',
  volume: 'Volume',
  speed: 'Speed',
  asGiven: 'as it was given',
  bookKeeps:
    'The book keeps every reading as it was taken. A limit that is shown in another unit is rounded to its strict side; whether a value lies inside is judged by the true one. Sentences that say why, cautions and what an answer means keep the unit they were written in.',
} as const;
