/**
 * Reads kart files on this device: what was read before is kept, finished; the server is asked where it is in reach, for
 * it has the reader at hand; else the reader is fetched and the file read here, with the server's own library.
 */
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import type { KartRead, KartReader, Own } from '../../app/index.ts';
import { fetchReadKart, type LibraryTexts } from '../../kart/index.ts';
import { Answered, OutOfReach, type Remote } from './remote.ts';

/** Finished karts: of some hundred kilobytes each, and a book seldom asks for an older file. */
const MOST_KEPT = 6;

type Shelved = { readonly build: string; readonly read: KartRead };
type Shelf = { readonly tag: string; readonly texts: LibraryTexts };

export type DeviceReader = KartReader & {
  /** Sees whether the library was corrected on the server; true when what was read before may no longer hold. */
  renewLibrary(): Promise<boolean>;
  /** Kinds, templates and rule sets: those of this device, else the server's. */
  library(): Promise<LibraryTexts>;
};

/** @param build names this version of the program: another one may read a file otherwise */
export function deviceReader(own: Own, remote: Pick<Remote, 'readKart' | 'library'>, build: string): DeviceReader {
  const known = new Map<string, Promise<KartRead>>();
  let turn: Promise<void> = Promise.resolve();

  const read = async (text: string): Promise<KartRead> => {
    const key = `kart ${bytesToHex(sha256(utf8ToBytes(text)))}`;
    const before = (await own.get(key)) as Shelved | undefined;
    if (before?.build === build) return before.read;
    const now = await readAnew(text);
    if (now.ok) await shelve(key, { build, read: now });
    return now;
  };
  /** One at a time: two at once would each write a list without the other. */
  const shelve = (key: string, shelved: Shelved): Promise<void> => {
    const put = turn.then(() => keep(own, key, shelved));
    turn = put.catch(() => undefined);
    return put;
  };
  const readAnew = async (text: string): Promise<KartRead> => {
    try {
      return await remote.readKart(text);
    } catch (error) {
      const shelf = (await own.get('library')) as Shelf | undefined;
      if (error instanceof Answered || shelf === undefined) throw error;
      return (await fetchReadKart())(text, shelf.texts);
    }
  };

  return {
    read(text) {
      const found = known.get(text) ?? read(text);
      known.set(text, found);
      found.catch(() => known.delete(text)); // asked again, it may be in reach
      return found;
    },
    async library() {
      const here = (await own.get('library')) as Shelf | undefined;
      const shelf = here ?? (await remote.library(undefined));
      if (shelf === undefined) throw new OutOfReach('the server did not hand out its library');
      if (here === undefined) await own.put('library', shelf);
      return shelf.texts;
    },
    async renewLibrary() {
      const before = (await own.get('library')) as Shelf | undefined;
      const shelf = await remote.library(before?.tag);
      if (shelf === undefined) return false;
      await own.put('library', shelf);
      if (before === undefined) return false;
      known.clear();
      for (const key of await keptKeys(own)) await own.put(key, undefined);
      return true;
    },
  };
}

const keptKeys = async (own: Own): Promise<readonly string[]> => ((await own.get('karts')) ?? []) as readonly string[];

async function keep(own: Own, key: string, shelved: Shelved): Promise<void> {
  const keys = [key, ...(await keptKeys(own)).filter(other => other !== key)];
  for (const old of keys.splice(MOST_KEPT)) await own.put(old, undefined);
  await own.put(key, shelved);
  await own.put('karts', keys);
}
