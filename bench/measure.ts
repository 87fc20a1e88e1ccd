/** Taking times and memory. Medians of several runs, for a shared machine hiccups; ratios are what to compare. */

/** Middle of the times, ms, that `work` takes over `runs` runs, after one to warm up. */
export async function median(runs: number, work: () => unknown): Promise<number> {
  const times: number[] = [];
  for (let run = -1; run < runs; run++) {
    const from = performance.now();
    await work();
    if (run >= 0) times.push(performance.now() - from);
  }
  times.sort((a, b) => a - b);
  return times[Math.floor(times.length / 2)] ?? Number.NaN;
}

/** Bytes of heap that what `make` returns keeps alive. Needs node --expose-gc. */
export function kept<T>(make: () => T): { readonly value: T; readonly bytes: number } {
  collect();
  const before = process.memoryUsage().heapUsed;
  const value = make();
  collect();
  return { value, bytes: process.memoryUsage().heapUsed - before };
}

/** Bytes of heap in use at the highest while `work` ran, over what was there before; read once, at its end, before collecting. */
export function used(work: () => unknown): number {
  collect();
  const before = process.memoryUsage().heapUsed;
  work();
  return process.memoryUsage().heapUsed - before;
}

function collect(): void {
  if (!globalThis.gc) throw new Error('bench: expected node --expose-gc; run it with `npm run bench`');
  globalThis.gc();
}

export type Figure = { readonly what: string; readonly value: string; readonly ratio?: string };

export const ms = (value: number): string => `${value < 10 ? value.toFixed(2) : value.toFixed(0)} ms`;
export const megabytes = (bytes: number): string => `${(bytes / 1e6).toFixed(1)} MB`;
export const times = (a: number, b: number, than: string): string => `${Number((a / b).toPrecision(2))} × ${than}`;

/** One line a figure, in columns. */
export function table(figures: readonly Figure[]): string {
  const width = Math.max(...figures.map(f => f.what.length));
  return figures.map(f => `${f.what.padEnd(width)}  ${f.value.padStart(12)}  ${f.ratio ?? ''}`.trimEnd()).join('\n');
}
