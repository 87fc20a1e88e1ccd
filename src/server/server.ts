/**
 * The HTTP face: every route asks `app` and nothing else, and answers what the command line answers with --json.
 * No socket here, so the routes are tested by handing requests in.
 */
import { createHash } from 'node:crypto';
import { type Context, Hono } from 'hono';
import { streamSSE } from 'hono/streaming';
import {
  type App,
  ASKS_AGAIN,
  askForLooks,
  calendarOf,
  compareLaps,
  helpedOf,
  lapsOfBook,
  lifeOf,
  livesAsked,
  MOST_KEPT,
  openingOf,
  predictLaps,
  type Recorded,
  Refusal,
  type RiskTexts,
  seasonOf,
  sessionSheetOf,
  sheetOf,
  sparesOf,
  takeAlong,
  tarOf,
  wantSecond,
  weakLinksOf,
  whatElse,
} from '../app/index.ts';
import type { LibraryTexts } from '../kart/index.ts';
import { readKartText, readLooks, readRelease, readSecond, readSince, readTake, readWrite } from './body.ts';
import { headers, onlyHosts, onlyOwnPage } from './guard.ts';
import { isLaps, lapsAnswer, lapsIn } from './laps.ts';
import { compareAsk, helpedAsk } from './laps-question.ts';
import { tooLarge } from './limit.ts';
import type { Page } from './pages.ts';
import { problem, refused, statusOf } from './problem.ts';
import {
  alikeAsk,
  askOf,
  atOf,
  count,
  lifeAsk,
  planAsk,
  predictAsk,
  sheetAsk,
  sparesAsk,
  trackAsk,
  weakAsk,
} from './question.ts';

export type ServerParts = {
  /** The built web page by path; empty: only the API. */
  readonly pages?: ReadonlyMap<string, Page>;
  /** Host names besides loopback that may be asked for. */
  readonly hosts?: readonly string[] | (() => readonly string[]);
  /** Text of what changes of the set-up are said to do; left out: the set-up sheet says nothing of it. */
  readonly setupEffects?: () => Promise<string>;
  /** Starting guesses of lives and retentions; left out: there are no weak links to ask for. */
  readonly riskTexts?: () => Promise<RiskTexts>;
  /** Kinds, templates and rule sets, for a device that reads kart files by itself; left out: it cannot. */
  readonly library?: () => Promise<LibraryTexts>;
  /** Whose book it is; left out or '': that of this machine. */
  readonly team?: string;
  /** When the server is about to stop: lines that stay open are closed. */
  readonly stopping?: AbortSignal;
  /** Told of what went wrong inside; left out: the terminal is. */
  readonly failed?: (error: unknown) => void;
};

const JSON_BYTES = 1_000_000; // a batch of facts; a kart file alone is allowed 2 MB of text only on the command line
const BATCH_BYTES = 5_000_000; // 500 facts of another book, kart files among them
const FILE_BYTES = MOST_KEPT; // a log of eight hours at 25 fixes a second; as much as the book keeps of one
const BEAT_MS = 25_000; // proxies and phones drop a silent line after 30 to 60 s
const FILE_TYPES = /^(image\/(jpeg|png|webp|heic|gif)|text\/csv|text\/plain|application\/(gpx\+xml|octet-stream))$/;

export function createServer(app: App, parts: ServerParts = {}): Hono {
  const server = new Hono();
  server.use(headers, onlyHosts(parts.hosts), onlyOwnPage);
  server.use('/api/*', async (c, next) => {
    await next();
    c.header('cache-control', 'no-store');
  });
  server.use('/api/files', tooLarge(FILE_BYTES));
  server.use('/api/karts/:name/laps', tooLarge(FILE_BYTES));
  server.use('/api/karts/*', (c, next) => (isLaps(c.req.path) ? next() : tooLarge(JSON_BYTES)(c, next)));
  server.use('/api/book/*', tooLarge(BATCH_BYTES));
  server.use('/api/kart-file', tooLarge(BATCH_BYTES));

  server.get('/api/opening', async c => c.json(await openingOf(app, c.req.query('kart') ?? '')));
  server.get('/api/karts', async c => c.json({ karts: await app.karts(atOf(c)) }));
  server.get('/api/karts/:name', async c => c.json(await app.kart(c.req.param('name'), atOf(c))));
  server.get('/api/karts/:name/due', async c => c.json(await app.due(c.req.param('name'), askOf(c))));
  server.get('/api/karts/:name/fitness', async c => c.json(await app.fitness(c.req.param('name'), askOf(c))));
  server.get('/api/karts/:name/plan', async c => c.json(await app.plan(c.req.param('name'), planAsk(c))));
  server.get('/api/karts/:name/replan', async c =>
    c.json(await app.replan(c.req.param('name'), c.req.query('since') ?? '', planAsk(c))),
  );
  server.get('/api/karts/:name/setup', async c =>
    c.json(await sheetOf(app, c.req.param('name'), sheetAsk(c), await parts.setupEffects?.())),
  );
  server.get('/api/karts/:name/calendar', async c =>
    c.body(await calendarOf(app, c.req.param('name'), atOf(c)), 200, {
      'content-type': 'text/calendar; charset=utf-8',
      'content-disposition': 'attachment; filename="kartwright.ics"',
    }),
  );
  server.get('/api/karts/:name/track', async c => c.json(await app.track(c.req.param('name'), trackAsk(c))));
  const { riskTexts } = parts;
  if (riskTexts) {
    server.get('/api/karts/:name/weak-links', async c =>
      c.json(await weakLinksOf(app, c.req.param('name'), weakAsk(c), await riskTexts())),
    );
    server.get('/api/karts/:name/alike', async c =>
      c.json(await whatElse(app, c.req.param('name'), alikeAsk(c), await riskTexts())),
    );
    server.post('/api/karts/:name/alike', async c => {
      const body = await readLooks(c);
      if (!body.ok) return problem(c, 422, body.problems);
      return answer(c, await askForLooks(app, c.req.param('name'), body.value, await riskTexts()));
    });
    server.get('/api/karts/:name/life', async c => {
      const [name, part, { priors }] = [c.req.param('name'), c.req.query('part'), await riskTexts()];
      if (part === undefined) return c.json(await livesAsked(app, name, lifeAsk(c), priors));
      return c.json(await lifeOf(app, name, part, lifeAsk(c), priors));
    });
    server.get('/api/karts/:name/spares', async c =>
      c.json(await sparesOf(app, c.req.param('name'), sparesAsk(c), (await riskTexts()).priors)),
    );
    server.post('/api/karts/:name/second-retention', async c => {
      const body = await readSecond(c);
      if (!body.ok) return problem(c, 422, body.problems);
      return answer(c, await wantSecond(app, c.req.param('name'), body.value, await riskTexts()));
    });
  }
  server.get('/api/karts/:name/facts', async c =>
    c.json({ facts: await app.kept(c.req.param('name'), count(c, 'after') ?? 0) }),
  );
  server.post('/api/karts/:name/facts', async c => {
    const body = await readWrite(c);
    if (!body.ok) return problem(c, 422, body.problems);
    const { payloads, ...written } = body.value;
    return answer(c, await app.record(c.req.param('name'), payloads, written));
  });
  server.post('/api/karts/:name/release', async c => {
    const body = await readRelease(c);
    if (!body.ok) return problem(c, 422, body.problems);
    return answer(c, await app.release(c.req.param('name'), body.value));
  });

  server.get('/api/karts/:name/laps', async c =>
    c.json({ sessions: await lapsOfBook(app, c.req.param('name'), atOf(c)) }),
  );
  server.get('/api/karts/:name/laps/sheet', async c => {
    const session = c.req.query('session');
    return c.json(
      await sessionSheetOf(app, c.req.param('name'), { ...atOf(c), ...(session !== undefined && { session }) }),
    );
  });
  server.get('/api/karts/:name/season', async c => c.json(await seasonOf(app, c.req.param('name'), atOf(c))));
  server.get('/api/karts/:name/laps/predict', async c =>
    c.json(await predictLaps(app, c.req.param('name'), predictAsk(c))),
  );
  server.get('/api/karts/:name/laps/compare', async c =>
    c.json(await compareLaps(app, c.req.param('name'), compareAsk(c))),
  );
  server.get('/api/karts/:name/laps/helped', async c => c.json(await helpedOf(app, c.req.param('name'), helpedAsk(c))));
  server.post('/api/karts/:name/laps', async c => lapsAnswer(c, await lapsIn(c, app, c.req.param('name'))));

  server.post('/api/kart-file', async c => {
    const body = await readKartText(c);
    return body.ok ? c.json(await app.read(body.value.text)) : problem(c, 422, body.problems);
  });
  const { library } = parts;
  if (library)
    server.get('/api/library', async c => {
      const { kinds, templates, rules, instruments } = await library();
      const text = JSON.stringify({ kinds, templates, rules, instruments });
      const tag = `"${createHash('sha256').update(text).digest('hex')}"`;
      const known = c.req.header('if-none-match')?.replace(/^W\//, ''); // weak once it was compressed (RFC 9110, 13.1.2)
      if (known === tag) return c.body(null, 304, { etag: tag });
      return c.body(text, 200, { etag: tag, 'content-type': 'application/json' });
    });

  server.put('/api/files', async c => {
    const type = (c.req.header('content-type') ?? '').split(';')[0]?.trim().toLowerCase() ?? '';
    if (!FILE_TYPES.test(type))
      return problem(c, 415, [
        refused(
          'content-type',
          `Expected a photo or a lap file, got ${type || 'no type'}.`,
          'Send it with its type, for example image/jpeg.',
        ),
      ]);
    const bytes = new Uint8Array(await c.req.arrayBuffer());
    if (bytes.length === 0)
      return problem(c, 422, [
        refused('body', 'Expected the bytes of a file, got none.', 'Send the file as the body.'),
      ]);
    return c.json({ hash: await app.putFile(bytes, type) }, 201);
  });
  server.get('/api/files/:hash{[0-9a-f]{64}}', async c => {
    const file = await app.getFile(c.req.param('hash'));
    if (file === undefined)
      return problem(c, 404, [
        {
          code: 'unknown file',
          where: c.req.path,
          message: `Expected the hash of a kept file, got ${c.req.param('hash')}.`,
          remedy: 'Put the file first; the answer holds its hash.',
        },
      ]);
    return c.body(new Uint8Array(file.bytes), 200, { 'content-type': file.mediaType, 'content-disposition': 'inline' });
  });

  server.get('/api/book/ends', async c =>
    c.json({ ends: await app.ends(), starts: await app.starts(), team: parts.team ?? '' }),
  );
  server.post('/api/book/since', async c => {
    const body = await readSince(c);
    if (!body.ok) return problem(c, 422, body.problems);
    return c.json({ facts: await app.since(body.value.numbers) });
  });
  server.post('/api/book/take', async c => {
    const body = await readTake(c);
    if (!body.ok) return problem(c, 422, body.problems);
    const taken = await app.take(body.value.facts);
    if (taken.kind === 'refused') return problem(c, 409, taken.problems);
    return c.json({ added: taken.added, known: taken.known });
  });

  server.get('/api/export', async c =>
    c.body(await app.exportBook(), 200, {
      'content-type': 'application/jsonl; charset=utf-8',
      'content-disposition': 'attachment; filename="kartwright-book.jsonl"',
    }),
  );
  server.get('/api/export/files', c => {
    const person = c.req.query('person');
    const files = takeAlong(app, { ...(person && { person }) });
    const body = streamed(tarOf(files, new Date()));
    return c.body(body, 200, {
      'content-type': 'application/x-tar',
      'content-disposition': 'attachment; filename="kartwright.tar"',
    });
  });
  server.get('/api/live', c => live(c, app, parts.stopping));

  server.get('*', c => {
    const page = parts.pages?.get(c.req.path);
    if (page === undefined) return unknownAddress(server, c);
    return c.body(page.bytes, 200, { 'content-type': page.type, 'cache-control': page.cache });
  });
  server.notFound(c => unknownAddress(server, c));
  server.onError((error, c) => {
    if (error instanceof Refusal) return problem(c, statusOf(error.problems), error.problems);
    (parts.failed ?? console.error)(error);
    return problem(c, 500, [
      {
        code: 'book',
        where: c.req.path,
        message: `The server failed: ${error.message}.`,
        remedy: 'Nothing was recorded. Look at its terminal, and try again.',
      },
    ]);
  });
  return server;
}

function unknownAddress(server: Hono, c: Context): Response {
  const { method, path } = c.req;
  const methods = METHODS.filter(one => isRoute(server, one, path));
  if (methods.length === 0 || methods.includes(method))
    return problem(c, 404, [
      refused('address', `Expected an address of this server, got ${method} ${path}.`, 'See the README of src/server.'),
    ]);
  c.header('allow', methods.join(', '));
  return problem(c, 405, [
    refused('method', `Expected ${methods.join(' or ')} for ${path}, got ${method}.`, 'See the README of src/server.'),
  ]);
}
const METHODS = ['GET', 'POST', 'PUT'];
/** Has the address a route of its own, besides what looks at every request and the pages? */
const isRoute = (server: Hono, method: string, path: string): boolean =>
  server.router.match(method, path)[0].some(([[, route]]) => route.method === method && route.path !== '*');

/** Says `facts` whenever the book grew, from this process or another, until the page hangs up. */
function live(c: Context, app: App, stopping?: AbortSignal): Response {
  return streamSSE(c, async stream => {
    let wake = (): void => undefined;
    let news = false;
    const stop = app.watch(() => {
      news = true;
      wake();
    });
    let open = true;
    const hangUp = (): void => {
      open = false;
      stop();
      wake();
    };
    stream.onAbort(hangUp);
    stopping?.addEventListener('abort', hangUp, { once: true });
    await stream.writeSSE({ event: 'open', data: '' });
    while (open && !stream.closed) {
      await new Promise<void>(done => {
        const timer = setTimeout(done, BEAT_MS);
        wake = () => {
          clearTimeout(timer);
          done();
        };
        if (news) wake();
      });
      if (!open) break;
      await stream.writeSSE({ event: news ? 'facts' : 'beat', data: '' });
      news = false;
    }
    stopping?.removeEventListener('abort', hangUp);
  });
}

/** A piece at a time, as fast as the other end takes them. */
const streamed = (pieces: AsyncGenerator<Uint8Array<ArrayBuffer>>): ReadableStream<Uint8Array<ArrayBuffer>> =>
  new ReadableStream({
    async pull(controller) {
      const { done, value } = await pieces.next();
      if (done) controller.close();
      else controller.enqueue(value);
    },
    cancel: async () => void (await pieces.return(undefined)),
  });

function answer(c: Context, result: Recorded): Response {
  if (result.kind === 'recorded') {
    const { facts, judgements } = result;
    return c.json({ facts, ...(judgements && { judgements }) }, 201);
  }
  return problem(c, statusOf(result.problems), result.problems, {
    asksAgain: result.problems.every(p => ASKS_AGAIN.includes(p.code)),
  });
}
