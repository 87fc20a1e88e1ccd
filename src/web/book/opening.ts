/**
 * What the page shows until the book itself has been read: as it stood when this device last looked, if its book has not grown since,
 * else as the server says. It is shown with the moment it is of, and nothing is written on the strength of it.
 */
import { type Opening, toShow } from '../../app/index.ts';
import type { Kart } from '../../kart/index.ts';
import type { DeviceBook } from './open.ts';

export const OPENING = 'opening';

/** What lies beside the book under that name, and the row of its last fact. */
type Glimpse = { readonly value: unknown; readonly row: number };

type Kept = { readonly build: string; readonly row: number; readonly opening: Opening };
type Look = DeviceBook['look'];

/** Whoever ticks one step after another is not kept from it. */
const CALM_MS = 500;
/** A server that takes longer is overtaken by the book. */
const PATIENCE_MS = 10_000;

/** @param build names the version of the page: another one may show something else */
export function keptOpening(seen: Glimpse | undefined, build: string, kart: string): Opening | undefined {
  const kept = seen?.value as Kept | undefined;
  const holds = kept?.build === build && kept.row === seen?.row;
  return holds && (kart === '' || kept.opening.answers?.kart.name === kart) ? kept.opening : undefined;
}

declare global {
  /** Asked for by public/early.js, before the page's own script was there. */
  var earlyOpening: Promise<Response> | undefined;
}

/** What is under way already; it waits no longer than any other. */
function early(kart: string): Promise<Response> | undefined {
  const { earlyOpening } = globalThis;
  if (kart !== '' || earlyOpening === undefined) return undefined;
  const late = new Promise<never>((_, failed) => setTimeout(() => failed(new Error('too late')), PATIENCE_MS));
  return Promise.race([earlyOpening, late]);
}

/** Undefined where the server is out of reach, does not let this device in, or holds no kart. */
export async function serversOpening(kart: string): Promise<Opening | undefined> {
  try {
    const answer = await (early(kart) ??
      fetch(`/api/opening?kart=${encodeURIComponent(kart)}`, { signal: AbortSignal.timeout(PATIENCE_MS) }));
    const opening = answer.ok ? ((await answer.json()) as Opening) : undefined;
    return opening?.answers && opening;
  } catch {
    return undefined;
  }
}

/** The same look; what it saw is kept for the next time. */
export function keepingOpenings(
  look: Look,
  build: string,
  beside: { readonly lastRow: () => Promise<number>; readonly keep: (kept: Kept) => Promise<void> },
): Look {
  let kart: Kart | undefined;
  let timer: ReturnType<typeof setTimeout> | undefined;
  return async (wanted, shown) => {
    const row = await beside.lastRow(); // before the look: a fact that comes amid it makes this opening one of before
    const looked = await look(wanted, shown);
    const { karts, answers } = looked;
    kart = answers?.kart ?? kart;
    if (answers && kart) {
      const opening = { karts, answers: toShow({ ...answers, kart }) };
      clearTimeout(timer);
      timer = setTimeout(() => void beside.keep({ build, row, opening }).catch(() => undefined), CALM_MS); // without room: it opens slower
    }
    return looked;
  };
}
