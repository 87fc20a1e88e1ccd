/** Laps out of the book. */
import { goesBy, lapsOfBook, seasonOf, sessionSheetOf } from '../../app/index.ts';
import { fail } from '../exit.ts';
import { lapListText, lapSessionText } from '../print/laps.ts';
import { seasonText, sessionSheetText } from '../print/session-sheet.ts';
import type { Session } from '../session.ts';
import type { World } from '../world.ts';

type Asking = { readonly json?: boolean; readonly session?: string };

export async function listLaps(world: World, { app, kart, at }: Session, { json, session }: Asking): Promise<void> {
  const all = await lapsOfBook(app, kart, at === undefined ? {} : { at });
  const one =
    session === undefined ? undefined : all.findLast(({ label, fact }) => fact === session || goesBy(label, session));
  if (session !== undefined && one === undefined)
    return fail(
      'unknown event',
      '--session',
      `Expected a session with laps, got "${session}".`,
      all.length === 0
        ? 'No laps are in the book.'
        : `The last: ${all
            .slice(-5)
            .map(({ label }) => label)
            .join(', ')}.`,
    );
  const sessions = one === undefined ? all : [one];
  if (json) world.out(`${JSON.stringify({ sessions })}\n`);
  else world.out(one === undefined ? lapListText(sessions) : lapSessionText(one));
}

export async function printSession(world: World, { app, kart, at }: Session, { json, session }: Asking): Promise<void> {
  const ask = { ...(at !== undefined && { at }), ...(session !== undefined && { session }) };
  const sheet = await sessionSheetOf(app, kart, ask);
  world.out(json ? `${JSON.stringify(sheet)}\n` : sessionSheetText(sheet));
}

export async function printSeason(world: World, { app, kart, at }: Session, { json }: Asking): Promise<void> {
  const season = await seasonOf(app, kart, at === undefined ? {} : { at });
  world.out(json ? `${JSON.stringify(season)}\n` : seasonText(season));
}
