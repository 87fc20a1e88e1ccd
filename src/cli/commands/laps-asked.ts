/** Questions to the laps of the book: two compared, and whether a change helped. */
import { compareLaps, helpedOf } from '../../app/index.ts';
import { fail } from '../exit.ts';
import { comparedText, helpedText } from '../print/lap-questions.ts';
import type { Session } from '../session.ts';
import type { World } from '../world.ts';

export type Helping = { readonly json?: boolean; readonly worth?: string; readonly matters?: string };

export async function printCompared(
  world: World,
  { app, kart, at }: Session,
  { a, b, json }: { readonly a: string; readonly b: string; readonly json: boolean | undefined },
): Promise<void> {
  const answer = await compareLaps(app, kart, { a, b, ...(at !== undefined && { at }) });
  world.out(json ? `${JSON.stringify(answer)}\n` : comparedText(answer));
}

export async function printHelped(
  world: World,
  { app, kart, at }: Session,
  { change, json, worth, matters }: Helping & { readonly change: string | undefined },
): Promise<void> {
  const answer = await helpedOf(app, kart, {
    ...(at !== undefined && { at }),
    ...(change !== undefined && { change }),
    ...(worth !== undefined && { worth: secondsOf('worth', worth) }),
    ...(matters !== undefined && { matters: secondsOf('matters', matters) }),
  });
  world.out(json ? `${JSON.stringify(answer)}\n` : helpedText(answer));
}

function secondsOf(name: string, text: string): number {
  const value = Number(/^(\d+(?:\.\d+)?) ?s$/.exec(text.trim())?.[1] ?? Number.NaN);
  if (value > 0) return value;
  return fail('wrong shape', `--${name}`, `Expected seconds a lap, got "${text}".`, 'Write 0.1 s.');
}
