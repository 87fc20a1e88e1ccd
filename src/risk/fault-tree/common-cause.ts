/**
 * Common cause: what makes several members fail together becomes an event of its own, so that it is seen among the cut
 * sets, and two retentions made by one pair of hands are not counted as independent.
 */
import type { Basic, FaultTree, Gate } from './model.ts';

export type SharedCause = {
  readonly name: string; // of the new event
  readonly members: readonly string[]; // events of the tree, two or more
  readonly beta: number; // share of the less likely member's failures that it shares, 0 to 1
};

/**
 * The tree with a shared cause among some of its events: each member fails alone or by the cause.
 *   c = β min(p_i);  alone p_i - c
 *   c: chance of the shared cause [1]; p_i: chance of a member from all its causes [1]; β [1]
 * For equal members this is the beta factor: (1 - β) p alone, β p shared. For unequal ones the smaller margin sets the
 * shared part, so that a pair's chance never falls below c. Not known where the chance of a member is not known.
 * Source: Fleming 1975 as in NUREG/CR-4780 (memory); the rule for unequal members is ours and stands in the rows.
 */
export function withSharedCause(tree: FaultTree, { name, members, beta }: SharedCause): FaultTree {
  if (!(beta >= 0 && beta <= 1)) throw new Error(`withSharedCause: beta must lie in 0…1, got ${beta}`);
  if (new Set(members).size < Math.max(2, members.length))
    throw new Error(`withSharedCause: members must be two or more different events, got ${members.join(', ')}`);
  for (const taken of [name, ...members.map(member => orShared(member, name))])
    if (tree.gates.has(taken) || tree.events.has(taken))
      throw new Error(`withSharedCause: name must be new in the tree, got "${taken}"`);
  const chances = members.map(member => chanceOf(tree, member));
  const shared = beta * Math.min(...chances);
  const renamed = new Map(members.map(member => [member, orShared(member, name)]));
  const through = (input: string): string => renamed.get(input) ?? input;
  const events = new Map<string, Basic>(tree.events).set(name, known(shared));
  for (const [n, member] of members.entries()) events.set(member, known((chances[n] ?? Number.NaN) - shared));
  const gates = new Map<string, Gate>(
    [...tree.gates].map(([gate, is]) => [gate, { ...is, inputs: is.inputs.map(through) }]),
  );
  for (const member of members) gates.set(orShared(member, name), { op: 'or', inputs: [member, name] });
  return { top: through(tree.top), gates, events };
}

const orShared = (member: string, cause: string): string => `${member}, alone or by ${cause}`;
const known = (chance: number): Basic => (Number.isNaN(chance) ? undefined : chance);

function chanceOf(tree: FaultTree, member: string): number {
  const chance = tree.events.get(member);
  if (!tree.events.has(member) || typeof chance === 'boolean')
    throw new Error(`withSharedCause: members must be events of the tree with a chance, got "${member}"`);
  return chance ?? Number.NaN;
}
