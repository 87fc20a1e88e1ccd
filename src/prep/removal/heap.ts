/** A binary heap: the least comes out first. */
export type Heap<T> = { readonly push: (value: T) => void; readonly pop: () => T | undefined };

export const heap = <T>(compare: (a: T, b: T) => number): Heap<T> => {
  const items: T[] = [];
  const less = (a: number, b: number): boolean => compare(items[a] as T, items[b] as T) < 0;
  const swap = (a: number, b: number): void => {
    const kept = items[a] as T;
    items[a] = items[b] as T;
    items[b] = kept;
  };
  return {
    push: value => {
      items.push(value);
      for (let at = items.length - 1; at > 0; ) {
        const up = (at - 1) >> 1;
        if (!less(at, up)) return;
        swap(at, up);
        at = up;
      }
    },
    pop: () => {
      const first = items[0];
      const last = items.pop();
      if (items.length === 0 || last === undefined) return first;
      items[0] = last;
      for (let at = 0; ; ) {
        let least = at;
        for (const child of [2 * at + 1, 2 * at + 2]) if (child < items.length && less(child, least)) least = child;
        if (least === at) return first;
        swap(at, least);
        at = least;
      }
    },
  };
};
