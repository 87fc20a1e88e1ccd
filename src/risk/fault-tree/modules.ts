/**
 * Modules: gates whose events occur nowhere else in the tree, so that each can be solved alone and then stands in the
 * gate above as one event. Found in linear time by the dates of first and last visit of one depth-first walk.
 * Source: Dutuit and Rauzy 1996, IEEE Transactions on Reliability 45, "A linear-time algorithm to find modules of fault trees" (memory).
 */
import type { NetGate, Ref } from './network.ts';

/** For each gate (by number less `base`) whether it is a module. The top gate always is. */
export function modulesOf(gates: readonly (NetGate | undefined)[], base: number, top: Ref): Uint8Array {
  const size = base + gates.length;
  const [first, second, last] = [new Int32Array(size), new Int32Array(size), new Int32Array(size)];
  let date = 0;
  const open: Ref[] = [];
  const at = new Int32Array(gates.length);
  const visit = (ref: Ref): void => {
    date++;
    last[ref] = date;
    if (first[ref] !== 0) return;
    first[ref] = date;
    second[ref] = date;
    if (ref >= base) open.push(ref);
  };
  visit(top);
  for (let ref = open.at(-1); ref !== undefined; ref = open.at(-1)) {
    const g = ref - base;
    const next = gates[g]?.inputs[at[g] ?? 0];
    at[g] = (at[g] ?? 0) + 1;
    if (next !== undefined) visit(next);
    else {
      second[ref] = last[ref] = ++date;
      open.pop();
    }
  }
  return enclosed(gates, base, { first, second, last });
}

type Dates = { readonly first: Int32Array; readonly second: Int32Array; readonly last: Int32Array };

/** A gate is a module when all below it is met first after it is entered and last before it is left. */
function enclosed(gates: readonly (NetGate | undefined)[], base: number, { first, second, last }: Dates): Uint8Array {
  const is = new Uint8Array(gates.length);
  const [earliest, latest] = [Int32Array.from(first), Int32Array.from(last)];
  for (let g = 0; g < gates.length; g++) {
    const gate = gates[g];
    const own = base + g;
    if (gate === undefined || first[own] === 0) continue;
    let [low, high] = [Number.POSITIVE_INFINITY, 0];
    for (const input of gate.inputs) {
      low = Math.min(low, earliest[input] ?? 0);
      high = Math.max(high, latest[input] ?? 0);
    }
    if (low > (first[own] ?? 0) && high < (second[own] ?? 0)) is[g] = 1;
    earliest[own] = Math.min(low, first[own] ?? 0);
    latest[own] = Math.max(high, last[own] ?? 0);
  }
  return is;
}
