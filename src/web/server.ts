/** The page's only way to the server: a few requests, and their refusals as values. */
import type { KartLine, KartReader, Kept, Problem, SecondWanted } from '../app/index.ts';
import type { Fact } from '../book/index.ts';
import type { Kart } from '../kart/index.ts';
import type { KartBook } from '../life/index.ts';

/** A payload as a face hands it in: readings may still be the text the person typed. */
export type Draft = Readonly<Record<string, unknown>> & { readonly kind: string };

export type Written =
  | { readonly kind: 'written'; readonly facts: readonly Fact[] }
  /** `asksAgain`: the same once more with `sure` is recorded as it was said. */
  | { readonly kind: 'refused'; readonly problems: readonly Problem[]; readonly asksAgain: boolean };

export type Release = {
  readonly signer: string;
  readonly statement: string;
  readonly sure: boolean;
  readonly event?: string;
};

export type Server = {
  karts(): Promise<readonly KartLine[]>;
  facts(kart: string, after: number): Promise<readonly Kept[]>;
  write(kart: string, payloads: readonly Draft[], more: { by: string; sure?: boolean; at?: string }): Promise<Written>;
  sign(kart: string, release: Release): Promise<Written>;
  /** One more answer about a kart, for what this device cannot work out from its own facts; what is left out is not asked. */
  answer<T>(kart: string, what: string, ask: Readonly<Record<string, string>>): Promise<T>;
  /** Another kart of the book, with all its facts. */
  book(kart: string): Promise<KartBook>;
  /** A second retention that is wanted: a job of the plan from then on. */
  wantSecond(kart: string, wanted: SecondWanted): Promise<Written>;
  /** A look at whatever is of the kind of what a fact says failed: due from then on, on every kart. */
  askForLooks(kart: string, wanted: { fact: string; all: boolean; by: string }): Promise<Written>;
  /** Keeps the bytes in the book; resolves to their hash. */
  putFile(bytes: Blob): Promise<string>;
  /** Reads a kart file by asking for the finished kart; the text itself is never parsed here. */
  reader(kart: string): KartReader;
  /** Calls `arrived` when the book grew, `line` when the connection opens or drops. Returns the way to hang up. */
  listen(arrived: () => void, line: (up: boolean) => void): () => void;
  isDown(error: unknown): boolean;
  problems(error: unknown): readonly Problem[];
};

class Answered extends Error {
  constructor(
    readonly status: number,
    readonly problems: readonly Problem[],
    readonly asksAgain: boolean,
  ) {
    super(problems.map(p => p.message).join(' '));
    this.name = 'Answered';
  }
}

const path = (...parts: string[]): string => `/api/${parts.map(encodeURIComponent).join('/')}`;

async function ask<T>(url: string, init?: RequestInit): Promise<T> {
  const response = await fetch(url, init);
  if (response.ok) return (await response.json()) as T;
  const body = (await response.json().catch(() => ({}))) as { problems?: Problem[]; asksAgain?: boolean };
  throw new Answered(response.status, body.problems ?? [unclear(response)], body.asksAgain === true);
}

const unclear = (response: Response): Problem => ({
  code: 'book',
  where: response.url,
  message: `The server answered ${response.status} ${response.statusText}.`,
  remedy: 'Nothing was recorded. Look at the terminal it runs in, and try again.',
});

async function send(url: string, body: unknown): Promise<Written> {
  try {
    const { facts } = await ask<{ facts: readonly Fact[] }>(url, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(body),
    });
    return { kind: 'written', facts };
  } catch (error) {
    if (error instanceof Answered) return { kind: 'refused', problems: error.problems, asksAgain: error.asksAgain };
    throw error;
  }
}

export const httpServer: Server = {
  karts: async () => (await ask<{ karts: readonly KartLine[] }>(path('karts'))).karts,
  facts: async (kart, after) =>
    (await ask<{ facts: readonly Kept[] }>(`${path('karts', kart, 'facts')}?after=${after}`)).facts,
  write: (kart, payloads, more) => send(path('karts', kart, 'facts'), { payloads, ...more }),
  sign: (kart, release) => send(path('karts', kart, 'release'), release),
  answer: (kart, what, given) => ask(`${path('karts', kart, what)}?${new URLSearchParams(given)}`),
  book: async kart => ({
    kart: await ask<Kart>(path('karts', kart)),
    facts: (await ask<{ facts: readonly Kept[] }>(`${path('karts', kart, 'facts')}?after=0`)).facts.map(
      ({ fact }) => fact,
    ),
  }),
  wantSecond: (kart, wanted) => send(path('karts', kart, 'second-retention'), wanted),
  askForLooks: (kart, wanted) => send(path('karts', kart, 'alike'), wanted),
  putFile: async bytes =>
    (
      await ask<{ hash: string }>(path('files'), {
        method: 'PUT',
        headers: { 'content-type': bytes.type || 'application/octet-stream' },
        body: bytes,
      })
    ).hash,
  reader(kart) {
    const known = new Map<string, Promise<Kart>>();
    return {
      async read(text) {
        const found = known.get(text) ?? ask<Kart>(path('karts', kart));
        known.set(text, found);
        return { ok: true, kart: await found, notes: [] };
      },
    };
  },
  listen(arrived, line) {
    const source = new EventSource('/api/live');
    source.addEventListener('facts', arrived);
    source.onopen = () => {
      line(true);
      arrived(); // what came while the line was down
    };
    source.onerror = () => line(false);
    return () => source.close();
  },
  isDown: error => !(error instanceof Answered) && error instanceof TypeError,
  problems: error =>
    error instanceof Answered
      ? error.problems
      : [
          {
            code: 'book',
            where: 'server',
            message: `The server did not answer: ${error instanceof Error ? error.message : String(error)}.`,
            remedy: 'Nothing was recorded. See that it still runs, then press again.',
          },
        ],
};
