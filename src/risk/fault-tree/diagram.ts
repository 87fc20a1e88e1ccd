/** A finished decision diagram with nothing in it that is not needed: what chances, counts and lists are read from. */
import { type Nodes, ONE, ZERO } from './nodes.ts';

/**
 * Nodes below before nodes above; 0 and 1 are the ends. The modules stand one after the other and a module's root is
 * its last node, so that one run from first to last meets every module before the one that asks for it.
 */
export type Diagram = {
  readonly level: Int32Array;
  readonly high: Int32Array;
  readonly low: Int32Array;
  readonly roots: Int32Array; // by module; the last is the top
};

/** What of `nodes` is below the roots of the modules, numbered anew. */
export function diagramOf(nodes: Nodes, roots: readonly number[]): Diagram {
  const used = new Uint8Array(nodes.size);
  for (const root of roots) used[root] = 1;
  used[ZERO] = used[ONE] = 1;
  for (let n = nodes.size - 1; n > ONE; n--)
    if (used[n]) used[nodes.high[n] as number] = used[nodes.low[n] as number] = 1;
  const number = new Int32Array(nodes.size);
  let size = 0;
  for (let n = 0; n < nodes.size; n++) if (used[n]) number[n] = size++;
  const [level, high, low] = [new Int32Array(size), new Int32Array(size), new Int32Array(size)];
  for (let n = 2; n < nodes.size; n++) {
    if (!used[n]) continue;
    const at = number[n] as number;
    level[at] = nodes.level[n] as number;
    high[at] = number[nodes.high[n] as number] as number;
    low[at] = number[nodes.low[n] as number] as number;
  }
  return { level, high, low, roots: Int32Array.from(roots, root => number[root] as number) };
}
