/**
 * Writes that come together are committed together: the disk is forced once for all of them, and each is acknowledged after that.
 * Where that fails nothing of it was written, and each is done by itself, so that one does not spoil another's; but where the
 * database went out of reach nobody knows what was written, and each is told so.
 */
import { StoreError } from './store-error.ts';

export type Outcome = { readonly value: unknown } | { readonly error: unknown };
type Waiting<W> = {
  readonly work: W;
  readonly done: (value: never) => void;
  readonly failed: (error: unknown) => void;
};

/** So many at most, so that one group is no long wait for the next. */
const MOST = 64;
/** So often in a row one alone does not wait whether others come: a single writer is not held up by company that it does not have. */
const ALONE = 8;

export class Group<W> {
  readonly #together: (works: readonly W[]) => Promise<readonly Outcome[]>;
  readonly #waiting: Waiting<W>[] = [];
  #running: Promise<void> | undefined;
  #alone = 0;

  /** @param together does every work in one transaction, with an outcome of each; or rejects, and has done none */
  constructor(together: (works: readonly W[]) => Promise<readonly Outcome[]>) {
    this.#together = together;
  }

  /** What the work gives, when it is on the disk. */
  add<T>(work: W): Promise<T> {
    return new Promise<T>((done, failed) => {
      this.#waiting.push({ work, done, failed });
      this.#running ??= this.#run();
    });
  }

  /** When all that was added is done. */
  async settled(): Promise<void> {
    while (this.#running) await this.#running;
  }

  async #run(): Promise<void> {
    while (this.#waiting.length > 0) {
      // What arrives in the same turn of the loop still joins, and whoever only asks has a turn in between.
      if (this.#alone === 0) await new Promise(done => setImmediate(done));
      const some = this.#waiting.splice(0, MOST);
      this.#alone = some.length === 1 ? (this.#alone + 1) % ALONE : 0;
      const together = some.length > 1 && (await this.#tried(some));
      if (!together) for (const one of some) await this.#tried([one]);
    }
    this.#running = undefined;
  }

  /** False when nothing was written and each is to be tried by itself. */
  async #tried(some: readonly Waiting<W>[]): Promise<boolean> {
    try {
      const outcomes = await this.#together(some.map(({ work }) => work));
      for (const [n, one] of some.entries()) tell(one, outcomes[n] as Outcome);
    } catch (error) {
      const unsure = error instanceof StoreError && error.code === 'cannot open';
      if (some.length > 1 && !unsure) return false;
      for (const one of some) one.failed(error);
    }
    return true;
  }
}

function tell<W>({ done, failed }: Waiting<W>, outcome: Outcome): void {
  if ('error' in outcome) failed(outcome.error);
  else done(outcome.value as never);
}
