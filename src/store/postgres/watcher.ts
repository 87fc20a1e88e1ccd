/** Hears of facts that any server wrote: LISTEN on a connection of its own, which is taken up again when it drops. */
import pg from 'pg';
import type { Place } from './place.ts';

const AGAIN_MS = 1000;

export class Watcher {
  readonly #place: Place;
  readonly #tell: () => void;
  #client: pg.Client | undefined;
  #again: ReturnType<typeof setTimeout> | undefined;
  #wanted = false;

  constructor(place: Place, tell: () => void) {
    this.#place = place;
    this.#tell = tell;
  }

  start(): void {
    if (this.#wanted) return;
    this.#wanted = true;
    void this.#listen();
  }

  async stop(): Promise<void> {
    this.#wanted = false;
    clearTimeout(this.#again);
    await this.#client?.end().catch(() => undefined);
  }

  async #listen(): Promise<void> {
    const client = new pg.Client({ connectionString: this.#place.url, keepAlive: true });
    this.#client = client;
    client.on('notification', this.#tell);
    client.once('error', () => this.#dropped(client));
    client.once('end', () => this.#dropped(client));
    try {
      await client.connect();
      await client.query(`listen ${this.#place.channel}`);
      this.#tell(); // what came before anybody listened
    } catch {
      this.#dropped(client);
    }
  }

  /** Meanwhile whoever asks still gets every fact; only the calling out waits. */
  #dropped(client: pg.Client): void {
    if (this.#client !== client || !this.#wanted) return;
    this.#client = undefined;
    client.end().catch(() => undefined);
    this.#again = setTimeout(() => void this.#listen(), AGAIN_MS);
    this.#again.unref();
  }
}
