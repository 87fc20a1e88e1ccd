/**
 * In which order a module asks its events, on which the size of its diagram hangs: depth first from its gate, at each
 * gate first what is used in several places, then the larger branch. Found by trying eleven such rules on the trees of
 * the bench; no rule is best for all.
 */
import type { NetGate, Ref } from './network.ts';

type Module = {
  /** Events and modules it is made of, in the order they are asked. */
  readonly asks: readonly Ref[];
  /** Its gates, inputs before users; the last is the module itself. */
  readonly gates: readonly Ref[];
};

/** Every module, those it is made of before it. */
export function orderedModules(gates: readonly (NetGate | undefined)[], base: number, isModule: Uint8Array) {
  const rank = ranks(gates, base, isModule);
  const modules: Module[] = [];
  for (let g = 0; g < gates.length; g++) {
    if (!isModule[g]) continue;
    const seen = new Set<Ref>();
    const asks: Ref[] = [];
    const own: Ref[] = [];
    const visit = (ref: Ref): void => {
      if (seen.has(ref)) return;
      seen.add(ref);
      if (ref < base || (isModule[ref - base] && ref !== base + g)) {
        asks.push(ref);
        return;
      }
      const inputs = [...(gates[ref - base]?.inputs ?? [])];
      for (const input of inputs.sort((a, b) => (rank[b] ?? 0) - (rank[a] ?? 0))) visit(input);
      own.push(ref);
    };
    visit(base + g);
    modules.push({ asks, gates: own });
  }
  return modules;
}

/** What is visited first has the higher rank: number of leaves below, a module counting as one, over all what is shared. */
function ranks(gates: readonly (NetGate | undefined)[], base: number, isModule: Uint8Array): Float64Array {
  const leaves = new Float64Array(base + gates.length).fill(1);
  const users = new Int32Array(base + gates.length);
  gates.forEach((gate, g) => {
    if (gate === undefined) return;
    let below = 0;
    for (const input of gate.inputs) {
      users[input] = (users[input] ?? 0) + 1;
      below += input >= base && isModule[input - base] ? 1 : (leaves[input] ?? 0);
    }
    leaves[base + g] = Math.min(below, MANY); // a branch met twice counts twice: doubling may not run away
  });
  return leaves.map((below, ref) => {
    const size = ref >= base && isModule[ref - base] ? 1 : below;
    return (users[ref] ?? 0) > 1 ? 2 * MANY + size : size;
  });
}
const MANY = 1e9;
