/** Second retentions that were made a job and are not there yet, and whether the last of them can be taken back. */
import type { Snapshot } from '../session.ts';

export type Wanted = {
  readonly joint: string;
  readonly retention: string;
  /** The step of the plan that fits it. */
  readonly step: string;
  /** Facts to strike, so that it is as before; undefined where a kart file was filed since, which names it too. */
  readonly takeBack: readonly string[] | undefined;
};

export function wantedIn({ kart, state }: Pick<Snapshot, 'kart' | 'state'>): readonly Wanted[] {
  return Object.values(kart.joints).flatMap(({ id, item }): Wanted[] => {
    const { asked, pass } = state.items[item] ?? {};
    if (asked?.second === undefined || asked.pos < (pass?.pos ?? -1)) return [];
    const { filed } = state;
    // Both were written at once, the file first.
    const takeBack = filed && filed.pos === asked.pos - 1 ? [asked.fact, filed.fact] : undefined;
    return [{ joint: id, retention: asked.second, step: `${kart.items[item]?.action} ${item}`, takeBack }];
  });
}
