/** From the network of a tree to its two diagrams: the exact function, and its minimal cut sets; module by module. */
import { CutSetDiagram } from './cut-set-diagram.ts';
import { type Diagram, diagramOf } from './diagram.ts';
import { Functions } from './functions.ts';
import { modulesOf } from './modules.ts';
import type { Network, Ref } from './network.ts';
import { orderedModules } from './order.ts';

export type Solved = {
  readonly functions: Diagram;
  readonly cutSets: Diagram;
  /** What is asked at each level: an event by its number, or module m as -1 - m. */
  readonly asked: Int32Array;
  /** Level of each event, of each module; -1 where the top does not hang on it. */
  readonly eventLevel: Int32Array;
  readonly moduleLevel: Int32Array;
  /** Module that asks at each level. */
  readonly moduleAt: Int32Array;
};

/** Throws `TooLarge` past `limit` nodes. The top must be a gate. */
export function solve({ events, gates }: Network, top: Ref, limit: number): Solved {
  const base = events.length;
  const modules = orderedModules(gates, base, modulesOf(gates, base, top));
  const levels = new Int32Array(base + gates.length).fill(-1);
  const moduleOf = new Map<Ref, number>();
  const asked: number[] = [];
  const functions = new Functions(limit);
  const roots = modules.map((module, m) => {
    for (const ref of module.asks) levels[ref] = asked.push(ref < base ? ref : -1 - (moduleOf.get(ref) ?? 0)) - 1;
    const made = new Map<Ref, number>(module.asks.map(ref => [ref, functions.event(levels[ref] as number)]));
    let root = 0;
    for (const ref of module.gates) {
      const { k, inputs } = gates[ref - base] ?? { k: 1, inputs: [] };
      root = functions.atLeast(
        k,
        inputs.map(input => made.get(input) ?? 0),
      );
      made.set(ref, root);
      moduleOf.set(ref, m); // the last of them is the module
    }
    return root;
  });
  const cutSets = new CutSetDiagram(functions, limit);
  const sets = roots.map(root => cutSets.minimal(root));
  const solved = {
    functions: diagramOf(functions.nodes, roots),
    cutSets: diagramOf(cutSets.nodes, sets),
    asked: Int32Array.from(asked),
    eventLevel: levels.slice(0, base),
    moduleAt: Int32Array.from(modules.flatMap((module, m) => module.asks.map(() => m))),
    moduleLevel: Int32Array.from(modules, ({ gates: own }) => levels[own.at(-1) ?? 0] as number),
  };
  functions.release();
  cutSets.release();
  return solved;
}
