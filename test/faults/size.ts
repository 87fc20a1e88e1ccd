/** How hard to try: a little with every `npm test`, all of it with `npm run faults`. */
const long = process.env.KARTWRIGHT_FAULTS === 'long';
export const tries = <T>(short: T, whole: T): T => (long ? whole : short);

/** Said after a trial, so that a person sees what was tried. */
export const report = (what: string): void => console.log(`faults: ${what}`);

/** Of a long trial, each tenth: whoever waits sees that it goes on, and who breaks it off how far it came. */
export function onTheWay(what: string, done: number, of: number): void {
  if (long && done < of && done % Math.ceil(of / 10) === 0) report(`${what}: ${done} of ${of}`);
}

/** The same numbers from 0 up to 1 for the same seed: Park and Miller's minimal standard generator (Comm. ACM 31, 1988). */
export function randoms(seed: number): () => number {
  let state = (seed % 2147483646) + 1;
  return () => {
    state = (state * 48271) % 2147483647;
    return (state - 1) / 2147483646;
  };
}

/** Seed of everything random here; KARTWRIGHT_SEED names another. */
export const SEED = Number(process.env.KARTWRIGHT_SEED ?? 20261126);
