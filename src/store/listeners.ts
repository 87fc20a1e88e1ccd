/** Those who want to know that facts arrived. A listener that throws does not keep the others from hearing. */
export class Listeners {
  readonly #all = new Set<{ readonly call: () => void }>();

  get any(): boolean {
    return this.#all.size > 0;
  }

  /** Returns the unsubscribe. */
  add(call: () => void): () => void {
    const entry = { call };
    this.#all.add(entry);
    return () => this.#all.delete(entry);
  }

  /** Calls back soon, never inside the append that caused it. */
  tell(): void {
    for (const { call } of this.#all) queueMicrotask(call);
  }

  clear(): void {
    this.#all.clear();
  }
}
