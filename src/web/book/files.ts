/** Photos and logs: which files facts name, sending them, and fetching those of others while nobody waits. */
import type { App } from '../../app/index.ts';
import type { Fact } from '../../book/index.ts';
import { OutOfReach, type Remote } from './remote.ts';

type Files = Pick<App, 'getFile' | 'putFile'>;

/** Of the newest facts; older ones come when they are looked at. */
const MOST_FETCHED = 30;

/** The files that facts name, each once. */
function filesOf(facts: readonly Fact[]): readonly string[] {
  const named = facts.flatMap(fact => {
    const hash = fact.kind === 'laps' && fact.fileKept !== false ? fact.file : 'photo' in fact ? fact.photo : undefined;
    return hash === undefined ? [] : [hash];
  });
  return [...new Set(named)];
}

/** The same bytes twice are kept once. */
export async function sendFiles(app: Files, remote: Pick<Remote, 'putFile'>, facts: readonly Fact[]): Promise<void> {
  for (const hash of filesOf(facts)) {
    const file = await app.getFile(hash);
    if (file) await remote.putFile(file.bytes, file.mediaType);
  }
}

/** One file, kept from then on; undefined when it is neither here nor to be had. */
export async function fileFrom(
  app: Files,
  remote: Pick<Remote, 'getFile'>,
  hash: string,
): Promise<{ readonly bytes: Uint8Array; readonly mediaType: string } | undefined> {
  const here = await app.getFile(hash);
  if (here) return here;
  try {
    const there = await remote.getFile(hash);
    if (there) await app.putFile(there.bytes, there.mediaType);
    return there;
  } catch (error) {
    if (error instanceof OutOfReach) return undefined;
    throw error;
  }
}

/** @returns fetches what the newest facts name and this device lacks; each is asked for once */
export function fetchingFiles(
  app: Files & Pick<App, 'karts' | 'facts'>,
  remote: Pick<Remote, 'getFile'>,
): () => Promise<void> {
  const seen = new Set<string>();
  return async () => {
    const lines = await Promise.all((await app.karts()).map(({ name }) => app.facts(name)));
    const facts = lines.flat().map(({ fact }) => fact);
    const newest = filesOf(facts.toSorted((a, b) => (a.at < b.at ? 1 : -1))).slice(0, MOST_FETCHED);
    for (const hash of newest.filter(one => !seen.has(one))) {
      seen.add(hash);
      await fileFrom(app, remote, hash);
    }
  };
}
