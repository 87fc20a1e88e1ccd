/** Laps out of the book. */
import { lapsOfBook } from '../../app/index.ts';
import { fail } from '../exit.ts';
import { lapListText, lapSessionText } from '../print/laps.ts';
import type { Session } from '../session.ts';
import type { World } from '../world.ts';

type Asking = { readonly json?: boolean; readonly session?: string };

export async function listLaps(world: World, { app, kart, at }: Session, { json, session }: Asking): Promise<void> {
  const all = await lapsOfBook(app, kart, at === undefined ? {} : { at });
  const wanted = session?.trim().toLowerCase();
  const one = all.findLast(({ label, fact }) =>
    [label.toLowerCase(), ...label.toLowerCase().split(' › '), fact].includes(wanted ?? ''),
  );
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
