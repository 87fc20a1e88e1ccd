/** Laps over HTTP: a log streams through as it is, and is in the book whole or not at all. */
import type { Context } from 'hono';
import { type App, ASKS_AGAIN, type LapsIn } from '../app/index.ts';
import { readTimes } from './body.ts';
import { problem, refused, statusOf } from './problem.ts';
import { logAsk } from './question.ts';

export const isLaps = (path: string): boolean => /^\/api\/karts\/[^/]+\/laps$/.test(path);

/** A log as it is, or times of a stopwatch as JSON. */
export async function lapsIn(c: Context, app: App, kart: string): Promise<LapsIn> {
  if (/^application\/json\b/i.test(c.req.header('content-type') ?? '')) {
    const body = await readTimes(c);
    if (!body.ok) return { kind: 'refused', problems: body.problems };
    const { times, ...said } = body.value;
    return app.lapsByHand(kart, times, said);
  }
  const cancelled = (): boolean => c.req.raw.signal.aborted;
  return app.importLaps(kart, { chunks: piecesOf(c.req.raw.body), cancelled }, logAsk(c));
}

/** Who stops reading early has the rest read and thrown away: a client that is still sending would not hear the answer. */
async function* piecesOf(body: ReadableStream<Uint8Array> | null): AsyncIterable<Uint8Array> {
  const reader = body?.getReader();
  const next = async (): Promise<Uint8Array | undefined> => (await reader?.read())?.value;
  try {
    for (let piece = await next(); piece; piece = await next()) yield piece;
  } finally {
    while (await next());
  }
}

export function lapsAnswer(c: Context, done: LapsIn): Response {
  if (done.kind === 'cancelled')
    return problem(c, 422, [refused('body', 'Expected the whole log, got a part.', 'Send it again.')]);
  if (done.kind === 'refused') {
    const { skipped, layout } = done;
    return problem(c, statusOf(done.problems), done.problems, {
      asksAgain: done.problems.every(p => ASKS_AGAIN.includes(p.code)),
      ...(skipped && { skipped }),
      ...(layout && { layout }),
    });
  }
  const { kind: _, ...rest } = done;
  return c.json(rest, 201);
}
