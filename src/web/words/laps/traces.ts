/** What is said around traces over the distance. */
export const tracesWords = {
  partShown: 'Part of the lap that is shown',
  left: 'Left',
  wider: 'Wider',
  all: 'All',
  nearer: 'Nearer',
  right: 'Right',
  moved: (what: string) => `${what}: arrow keys move, + is nearer, − wider, Home shows all`,
  wholeLap: (length: string) => `Shown: the whole lap, ${length} m.`,
  part: (from: string, to: string, length: string) =>
    `Shown: ${from} to ${to} m of ${length} m. Tables and print hold the whole lap.`,
} as const;
