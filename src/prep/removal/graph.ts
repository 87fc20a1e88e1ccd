/**
 * The question as numbers. Nodes below `cost.length` are parts, the others are what is asked for; every node of `open`
 * needs one of its ways wholly off. A part without an entry in `ways` comes off freely. What is paid stands in no way.
 */
export type Way = readonly number[];

export type Graph = {
  readonly cost: readonly number[];
  readonly open: ReadonlySet<number>;
  readonly ways: ReadonlyMap<number, readonly Way[]>;
};

/** Ways of a node that is not yet reached; none means that it needs nothing. */
export const waysOf = (graph: Graph, node: number): readonly Way[] => graph.ways.get(node) ?? [];

/** The nodes that some choice of ways may need, what is open included; each after all it needs, circles cut anywhere. */
export const needed = (graph: Graph): readonly number[] => {
  const order: number[] = [];
  const seen = new Set<number>();
  for (const start of graph.open) {
    if (seen.has(start)) continue;
    seen.add(start);
    const stack = [{ node: start, next: waysOf(graph, start).flat(), at: 0 }];
    for (let top = stack.at(-1); top; top = stack.at(-1)) {
      const part = top.next[top.at++];
      if (part === undefined) {
        order.push(top.node);
        stack.pop();
      } else if (!seen.has(part)) {
        seen.add(part);
        stack.push({ node: part, next: waysOf(graph, part).flat(), at: 0 });
      }
    }
  }
  return order;
};

/** Independent pieces: what no way ties together can be decided apart. */
export const pieces = (graph: Graph): readonly Graph[] => {
  const nodes = needed(graph);
  const leader = new Map(nodes.map(n => [n, n]));
  const find = (n: number): number => {
    let at = n;
    for (let up = leader.get(at) ?? at; up !== at; up = leader.get(at) ?? at) {
      leader.set(at, leader.get(up) ?? up);
      at = up;
    }
    return at;
  };
  for (const n of nodes) for (const way of waysOf(graph, n)) for (const p of way) leader.set(find(p), find(n));
  const parted = new Map<number, { open: Set<number>; ways: Map<number, readonly Way[]> }>();
  for (const n of nodes) {
    const key = find(n);
    const piece = parted.get(key) ?? { open: new Set<number>(), ways: new Map<number, readonly Way[]>() };
    parted.set(key, piece);
    if (graph.open.has(n)) piece.open.add(n);
    const ways = graph.ways.get(n);
    if (ways) piece.ways.set(n, ways);
  }
  return [...parted.values()].map(piece => ({ cost: graph.cost, ...piece }));
};
