/**
 * A fault tree in numbers, smaller and with the same meaning: constants folded, gates with one input passed through,
 * equal gates merged, an "or" under an "or" and an "and" under an "and" drawn up where nothing else uses them.
 */
import type { FaultTree, Gate } from './model.ts';
import { bottomUp } from './walk.ts';

/** 0 … events-1 is an event, from there on a gate. */
export type Ref = number;
export type Network = {
  readonly events: readonly string[];
  /** Gates by number less `events.length`; those that nothing uses any more are undefined. Inputs come before users. */
  readonly gates: readonly (NetGate | undefined)[];
  /** A gate; or whether it always or never happens, where the constants say so. */
  readonly top: Ref | boolean;
};
/** `k` of the inputs bring it about: 1 is "or", all of them is "and". */
export type NetGate = { readonly k: number; readonly inputs: readonly Ref[] };

export function networkOf(tree: FaultTree): Network {
  const events = [...tree.events.keys()];
  const refs = new Map<string, Ref | boolean>(
    [...tree.events].map(([name, is], n) => [name, typeof is === 'boolean' ? is : n]),
  );
  const gates: (NetGate | undefined)[] = [];
  const same = new Map<string, Ref>();
  const base = events.length;
  for (const name of bottomUp(tree)) {
    const gate = tree.gates.get(name);
    if (gate === undefined) throw new Error(`networkOf: tree must define gate ${name}`);
    const folded = fold(gate, refs);
    if (typeof folded !== 'object') {
      refs.set(name, folded);
      continue;
    }
    const key = `${folded.k}:${folded.inputs.join()}`;
    const ref = same.get(key) ?? base + gates.push(folded) - 1;
    same.set(key, ref);
    refs.set(name, ref);
  }
  const top = refs.get(tree.top);
  if (top === undefined) throw new Error(`networkOf: tree must define its top, got ${tree.top}`);
  if (typeof top === 'boolean') return { events, gates: [], top };
  if (top < base) return { events, gates: [{ k: 1, inputs: [top] }], top: base };
  return { events, gates: drawnUp(gates, base, top), top };
}

/** A gate with its constants taken out; a constant or its only input where nothing of it is left. */
function fold(gate: Gate, refs: ReadonlyMap<string, Ref | boolean>): NetGate | Ref | boolean {
  const given = gate.inputs.map(input => refs.get(input));
  const free = given.filter(ref => typeof ref === 'number');
  // Two inputs may have become the same event: counted once by "and" and "or", as often as named by "at least".
  const inputs = gate.op === 'atleast' ? free : [...new Set(free)];
  const happened = given.filter(ref => ref === true).length;
  const never = given.some(ref => ref === false);
  if (gate.op === 'or' && happened > 0) return true;
  if (gate.op === 'and' && never) return false;
  const k = gate.op === 'atleast' ? gate.k - happened : gate.op === 'or' ? 1 : inputs.length;
  if (k <= 0) return true;
  if (k > inputs.length) return false;
  const only = inputs[0];
  if (inputs.length === 1 && only !== undefined) return only;
  const plain = k === 1 || k === inputs.length ? [...new Set(inputs)] : inputs;
  if (plain.length === 1 && only !== undefined) return only;
  return { k: k === 1 ? 1 : k === inputs.length ? plain.length : k, inputs: plain };
}

/** Gates of one kind drawn into the gate above where that is their only user; the rest of the unused are left out. */
function drawnUp(gates: (NetGate | undefined)[], base: number, top: Ref): readonly (NetGate | undefined)[] {
  const users = new Int32Array(gates.length);
  const reached = new Uint8Array(gates.length);
  if (top >= base) reached[top - base] = 1;
  for (let g = gates.length - 1; g >= 0; g--) {
    const gate = gates[g];
    if (gate === undefined || !reached[g]) continue;
    for (const input of gate.inputs) {
      if (input < base) continue;
      reached[input - base] = 1;
      users[input - base] = (users[input - base] ?? 0) + 1;
    }
  }
  for (let g = 0; g < gates.length; g++) {
    const gate = gates[g];
    if (gate === undefined) continue;
    if (!reached[g]) gates[g] = undefined;
    else if (
      gate.inputs.some(input => input >= base && users[input - base] === 1 && alike(gate, gates[input - base]))
    ) {
      const inputs = gate.inputs.flatMap(input => {
        const under = input < base || users[input - base] !== 1 ? undefined : gates[input - base];
        if (under === undefined || !alike(gate, under)) return [input];
        gates[input - base] = undefined;
        return under.inputs;
      });
      const once = [...new Set(inputs)];
      gates[g] = { k: gate.k === 1 ? 1 : once.length, inputs: once };
    }
  }
  return gates;
}

const isOr = ({ k }: NetGate): boolean => k === 1;
const isAnd = ({ k, inputs }: NetGate): boolean => k === inputs.length;
const alike = (a: NetGate, b: NetGate | undefined): boolean =>
  b !== undefined && ((isOr(a) && isOr(b)) || (isAnd(a) && isAnd(b)));
