/** The server at the other end of the line: a book to meet, and a reader of kart files. Nothing on the page waits for it. */
import type { BookSide, ChainEnds, KartRead, Problem, Taken } from '../../app/index.ts';
import type { Fact } from '../../book/index.ts';
import type { LibraryTexts } from '../../kart/index.ts';
import { meetingWords } from '../words/meeting.ts';

export type Remote = Pick<BookSide, 'since' | 'take'> & {
  /** What its book holds, and whose it is: see `sameBook`. */
  meet(): Promise<Meeting>;
  putFile(bytes: Uint8Array, mediaType: string): Promise<void>;
  /** Undefined where it keeps no such file. */
  getFile(hash: string): Promise<{ readonly bytes: Uint8Array; readonly mediaType: string } | undefined>;
  readKart(text: string): Promise<KartRead>;
  /** Undefined while it is still the one with this tag. */
  library(tag: string | undefined): Promise<{ readonly tag: string; readonly texts: LibraryTexts } | undefined>;
  /** Calls `news` when its book grew, and when the line is there again; `gone` when it drops. Returns the way to hang up. */
  listen(news: () => void, gone: () => void): () => void;
};

export type Meeting = {
  readonly ends: ChainEnds;
  readonly starts: readonly string[];
  /** Of which team; two teams may have begun from one export. Undefined: an older server, which does not say. */
  readonly team?: string | undefined;
  /** The server's clock, to the second (RFC 9110, section 6.6.1); undefined where it does not say. */
  readonly clock?: string | undefined;
};

/** The server answered, and said no. */
export class Answered extends Error {
  override readonly name = 'Answered';
  constructor(
    readonly status: number,
    readonly problems: readonly Problem[],
  ) {
    super(problems.map(({ message }) => message).join(' '));
  }
}

/** Nobody answered, or not to the end: the network or the server is gone, or too slow. */
export class OutOfReach extends Error {
  override readonly name = 'OutOfReach';
}

/** Long enough for a batch over a poor line; a phone that left the network would wait for ever. */
const PATIENCE_MS = 30_000;

async function ask<T>(url: string, init: RequestInit, read: (response: Response) => Promise<T>): Promise<T> {
  try {
    const response = await fetch(url, { ...init, signal: AbortSignal.timeout(PATIENCE_MS) });
    if (response.ok || response.status === 304) return await read(response);
    const body = (await response.json().catch(() => ({}))) as { problems?: readonly Problem[] };
    throw new Answered(response.status, body.problems ?? [unclear(response)]);
  } catch (error) {
    if (error instanceof Answered) throw error;
    throw new OutOfReach(error instanceof Error ? error.message : String(error), { cause: error });
  }
}

const json = <T>(url: string, init: RequestInit = {}): Promise<T> =>
  ask(url, init, response => response.json() as Promise<T>);

const post = <T>(url: string, body: unknown): Promise<T> =>
  json(url, { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) });

const unclear = ({ status, statusText, url }: Response): Problem => ({
  code: 'book',
  where: url,
  message: meetingWords.serverAnswered(status, statusText),
  remedy: meetingWords.whatWasWrittenIsKept,
});

export const httpRemote: Remote = {
  meet: () =>
    ask('/api/book/ends', {}, async response => ({
      ...((await response.json()) as Omit<Meeting, 'clock'>),
      clock: response.headers.get('date') ?? undefined,
    })),
  since: async numbers => (await post<{ facts: readonly Fact[] }>('/api/book/since', { numbers })).facts,
  async take(facts): Promise<Taken> {
    try {
      return { kind: 'taken', ...(await post<{ added: number; known: number }>('/api/book/take', { facts })) };
    } catch (error) {
      if (error instanceof Answered && error.status === 409) return { kind: 'refused', problems: error.problems };
      throw error;
    }
  },
  async putFile(bytes, mediaType) {
    await json('/api/files', { method: 'PUT', headers: { 'content-type': mediaType }, body: bytes.slice() });
  },
  async getFile(hash) {
    try {
      return await ask(`/api/files/${hash}`, {}, async response => ({
        bytes: new Uint8Array(await response.arrayBuffer()),
        mediaType: response.headers.get('content-type') ?? 'application/octet-stream',
      }));
    } catch (error) {
      if (error instanceof Answered && error.status === 404) return undefined;
      throw error;
    }
  },
  readKart: text => post('/api/kart-file', { text }),
  library: tag =>
    ask('/api/library', tag === undefined ? {} : { headers: { 'if-none-match': tag } }, async response =>
      response.status === 304
        ? undefined
        : { tag: response.headers.get('etag') ?? '', texts: (await response.json()) as LibraryTexts },
    ),
  listen(news, gone) {
    let source: EventSource;
    let timer: ReturnType<typeof setTimeout> | undefined;
    const open = (): void => {
      source = new EventSource('/api/live');
      source.addEventListener('facts', news);
      source.onopen = news; // what came while the line was down
      source.onerror = () => {
        gone();
        if (source.readyState === EventSource.CLOSED) timer = setTimeout(open, PATIENCE_MS); // the browser has given it up
      };
    };
    open();
    return () => {
      clearTimeout(timer);
      source.close();
    };
  },
};
