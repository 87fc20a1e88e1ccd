/** How often one address may ask: a bucket that fills at a steady rate and holds a burst. */
export type Rate = { readonly perSecond: number; readonly burst: number };
type Bucket = { tokens: number; at: number };

/** So many addresses are remembered; the longest silent is forgotten first, and comes back with a full bucket. */
const MOST = 5000;

export class Buckets {
  readonly #rate: Rate;
  readonly #now: () => number;
  readonly #all = new Map<string, Bucket>();

  /** @param now milliseconds */
  constructor(rate: Rate, now: () => number) {
    this.#rate = rate;
    this.#now = now;
  }

  /** 0 when it may go on, else after how many seconds it may. */
  take(key: string): number {
    const now = this.#now();
    const { perSecond, burst } = this.#rate;
    const known = this.#all.get(key) ?? { tokens: burst, at: now };
    const tokens = Math.min(burst, known.tokens + (Math.max(0, now - known.at) / 1000) * perSecond);
    this.#all.delete(key); // the newest last
    this.#all.set(key, { tokens: tokens >= 1 ? tokens - 1 : tokens, at: now });
    const [longest] = this.#all.keys();
    if (this.#all.size > MOST && longest !== undefined) this.#all.delete(longest);
    return tokens >= 1 ? 0 : Math.ceil((1 - tokens) / perSecond);
  }
}
