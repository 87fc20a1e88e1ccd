/** What meters the fuel at which throttle, and what is done there. Sources: throttle-zones, jet-caution. */
export type Zone = { readonly part: string; readonly throttle: readonly [number, number]; readonly work: string };

/** Throttle opening 0 to 1; neighbours overlap. */
export const ZONES: readonly Zone[] = [
  {
    part: 'pilot jet and air screw',
    throttle: [0, 0.25],
    work: 'Idle and the first quarter: set the air screw warm for a clean pick-up; on most carburettors in is richer.',
  },
  {
    part: 'slide cutaway',
    throttle: [0.125, 0.5],
    work: 'An eighth to half: the cutaway; a higher one is leaner.',
  },
  {
    part: 'needle',
    throttle: [0.25, 0.75],
    work: 'A quarter to three quarters: the needle; clip one groove down lifts it and is richer.',
  },
  { part: 'main jet', throttle: [0.75, 1], work: 'Three quarters to full: the main jet.' },
];

export const zonesAt = (throttle: number): readonly Zone[] =>
  ZONES.filter(({ throttle: [from, to] }) => throttle >= from && throttle <= to);
