/** Additions of square roots: how quick this machine is just now; and the processor's time, which neighbours blur least. */
export const ROOTS = 20_000_000;

export function squareRoots(): number {
  let sum = 0;
  for (let n = 0; n < ROOTS; n++) sum += Math.sqrt(n);
  return sum;
}

/** Middle of the processor's times, ms, that `work` takes over `runs` runs, after one to warm up. */
export function processor(runs: number, work: () => unknown): number {
  const took = Array.from({ length: runs + 1 }, () => {
    const from = process.cpuUsage();
    work();
    const { user, system } = process.cpuUsage(from);
    return (user + system) / 1000;
  });
  return took.slice(1).toSorted((a, b) => a - b)[runs >> 1] ?? Number.NaN;
}
