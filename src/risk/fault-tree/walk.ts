/** The gates of a tree from the leaves up, without recursion: a chain of gates may be longer than the stack is deep. */
import type { Gate } from './model.ts';

type Gates = { readonly gates: ReadonlyMap<string, Gate> };

/** Gates that the top uses, each after those it uses itself. The tree must be free of loops. */
export const bottomUp = ({ gates, top }: Gates & { readonly top: string }): readonly string[] =>
  walk(gates, [top]).order;

/** Ways round that the gates make, the first few, as names from one gate back to itself; empty in a sound tree. */
export const loops = ({ gates }: Gates): readonly (readonly string[])[] => walk(gates, [...gates.keys()]).loops;
const FEW = 5;

function walk(gates: ReadonlyMap<string, Gate>, from: readonly string[]) {
  const order: string[] = [];
  const found: (readonly string[])[] = [];
  const state = new Map<string, 'open' | 'done'>();
  for (const start of from) {
    const path: { readonly name: string; readonly inputs: readonly string[]; at: number }[] = [];
    const enter = (name: string): void => {
      const gate = gates.get(name);
      if (gate === undefined || state.get(name) === 'done') return;
      if (state.get(name) === 'open') {
        if (found.length === FEW) return;
        const names = path.map(step => step.name);
        found.push([...names.slice(names.indexOf(name)), name]);
        return;
      }
      state.set(name, 'open');
      path.push({ name, inputs: gate.inputs, at: 0 });
    };
    enter(start);
    for (let step = path.at(-1); step !== undefined; step = path.at(-1)) {
      const next = step.inputs[step.at++];
      if (next !== undefined) enter(next);
      else {
        state.set(step.name, 'done');
        order.push(step.name);
        path.pop();
      }
    }
  }
  return { order, loops: found };
}
