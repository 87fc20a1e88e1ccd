/**
 * What work has left open on the kart: parts off, joints opened and not made, tools used and not counted since. Each has to
 * be named by whoever signs.
 */
import type { Mark, State } from '../book/index.ts';
import type { Item, Kart } from '../kart/index.ts';
import { openedBy } from '../life/index.ts';

export type OpenPlace = { readonly on: string; readonly text: string; readonly at: string; readonly by: string };
export type OpenOnKart = {
  readonly off: readonly OpenPlace[];
  /** On a part that is on the kart; the joints of one that is off come with it. */
  readonly halfDone: readonly OpenPlace[];
  readonly tools: readonly string[];
};

/** The item whose pass says that every tool is accounted for, in whatever part the kart file keeps it. */
const COUNT = 'tools counted';

export function openOnKart(kart: Kart, state: State): OpenOnKart {
  const parts = Object.values(kart.parts);
  const off = parts.flatMap(({ id }) => {
    const seen = state.parts[id];
    return seen?.on === false && seen.off ? [placeOf(id, `${id} is off`, seen.off)] : [];
  });
  const halfDone = Object.values(kart.joints).flatMap(({ id, part, name }) => {
    const opened = state.parts[part]?.on === false ? undefined : openedBy(kart, state, id);
    return opened ? [placeOf(id, `${part}: ${name} opened and not made`, opened)] : [];
  });
  return { off, halfDone, tools: toolsOut(kart, state) };
}

const placeOf = (on: string, text: string, { at, by }: Mark): OpenPlace => ({ on, text, at, by });

/** Named by what was done since they were last counted, or the kart was signed for. */
function toolsOut(kart: Kart, state: State): readonly string[] {
  const counted = Object.values(kart.items).filter(({ key }) => key === COUNT);
  const since = Math.max(
    state.releases.at(-1)?.pos ?? -1,
    ...counted.map(({ id }) => state.items[id]?.pass?.pos ?? -1),
  );
  const used = new Set<string>();
  const add = (mark: Mark | undefined, tools: readonly string[]): void => {
    if (mark && mark.pos > since) for (const tool of tools) used.add(tool);
  };
  for (const { id, takeOff, refit } of Object.values(kart.parts)) {
    add(state.parts[id]?.off, takeOff.tools);
    add(state.parts[id]?.back, refit.tools);
  }
  for (const item of Object.values(kart.items)) add(lastOf(item, state), item.tools);
  return [...used].sort();
}

/** The last time somebody worked at it, whatever came of it. */
function lastOf({ id }: Item, state: State): Mark | undefined {
  const seen = state.items[id];
  return [seen?.pass, seen?.fail, seen?.set]
    .filter(mark => mark !== undefined)
    .sort((a, b) => b.pos - a.pos)
    .at(0);
}

/** As it is written into the release, beside what the fitness lists. */
export const toolsNamed = ({ tools }: OpenOnKart): readonly string[] =>
  tools.length === 0 ? [] : [`tools not counted since they were used: ${tools.join(', ')}`];
