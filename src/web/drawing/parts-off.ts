import type { Snapshot } from '../session.ts';

/** The parts that lie beside the kart. */
export const partsOff = ({ kart, state }: Snapshot): ReadonlySet<string> =>
  new Set(Object.keys(kart.parts).filter(id => state.parts[id]?.on === false));
