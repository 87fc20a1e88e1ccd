/** What the sheet of joints by system says. */
export const jointWords = {
  kartFromAbove: 'The kart from above',
  titled: (system: string) => `How it is held: ${system}`,
  drawn: (kart: string, system: string, places: number) =>
    `Kart ${kart} from above with the joints of ${system} at ${places} places, listed in the table`,
  system: 'System',
  sameAsTable: 'The same as a table',
  place: 'Place',
  joint: 'Part and joint',
  keptBy: 'Kept made by',
  stands: 'Stands',
  noSecond: 'no second retention',
  second: (means: string) => `second: ${means}`,
  held: {
    open: 'opened, not made',
    off: 'part lies off',
    retention: 'one retention',
    together: 'a second retention too',
  },
  standing: { open: 'opened and not made', off: 'part lies off' },
  made: (date: string) => `made ${date}`,
  notWritten: '– no record that it was made',
} as const;
