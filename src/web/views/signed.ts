import type { Release } from '../../book/index.ts';
import type { Snapshot } from '../session.ts';

/** The last release, while it is the last thing that happened. */
export function signedSince({ state }: Pick<Snapshot, 'state'>): Release | undefined {
  const last = state.releases.at(-1);
  return last !== undefined && last.fact === state.last?.fact ? last : undefined;
}
