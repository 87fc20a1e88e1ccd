/** The track sheet: asked, and told as JSON or as plain lines. */
import { subjects } from '../../numbers/index.ts';
import type { TrackAsk, TrackPart } from '../../prep/index.ts';
import { fail } from '../exit.ts';
import { cardOf, cardText } from '../print/card.ts';
import { trackText } from '../print/track.ts';
import type { Session } from '../session.ts';
import type { World } from '../world.ts';
import type { Asking } from './track.ts';

export async function askTrack(world: World, { app, kart, at }: Session, asking: Asking): Promise<void> {
  const { laps, wet, wanted, explain, json } = asking;
  const sheet = await app.track(kart, {
    ...(at === undefined ? {} : { at }),
    ...(laps === undefined ? {} : { laps: lapsOf(laps) }),
    ...(wet === undefined ? {} : { wet }),
    ...(wanted === undefined ? {} : { wanted: wantedOf(wanted) }),
  });
  if (json) {
    const cards = sheet.parts.flatMap(part => subjectOf(part).map(cardOf));
    world.out(`${JSON.stringify({ ...sheet, ...(explain && { cards }) })}\n`);
    return;
  }
  world.out(trackText(sheet));
  if (explain) for (const part of sheet.parts) for (const one of subjectOf(part)) world.out(`\n${cardText(one)}`);
}

const subjectOf = ({ subject }: TrackPart) => subjects.filter(({ name }) => name === subject);

/** A number is handed on as it is: how many laps a session may have is the app's to say. */
function lapsOf(text: string): number {
  if (/^-?\d+(\.\d+)?$/.test(text.trim())) return Number(text);
  return fail(
    'wrong shape',
    '--laps',
    `Expected a whole number of laps, got "${text}".`,
    'Write it in digits, like 12.',
  );
}

function wantedOf(text: string): NonNullable<TrackAsk['wanted']> {
  const [, engineSpeed, speed] = /^\s*(.+?)\s+at\s+(.+?)\s*$/i.exec(text) ?? [];
  if (engineSpeed !== undefined && speed !== undefined) return { engineSpeed, speed };
  return fail(
    'wrong shape',
    '--wanted',
    `Expected an engine speed at a speed, got "${text}".`,
    'Write it like "12800 rpm at 115 km/h".',
  );
}
