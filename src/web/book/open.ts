/** The book of this device: the whole program runs on it here; the server is met when it is in reach. */
import {
  type App,
  type BookStore,
  type Clock,
  createApp,
  type FirstAnswers,
  firstAnswers,
  type KartLine,
  kartAmong,
  type Own,
} from '../../app/index.ts';
import type { Kart, LibraryTexts } from '../../kart/index.ts';
import { fetchingFiles, fileFrom } from './files.ts';
import { deviceReader } from './reader.ts';
import type { Remote } from './remote.ts';
import { createSync, type Sync } from './sync.ts';

/** Files are fetched when nobody has written anything for so long. */
const CALM_MS = 1000;

/** What is shown already: nothing is worked out again while the kart has just as many facts. */
export type Shown = { readonly kart: string; readonly facts: number };
export type Looked = {
  readonly karts: readonly KartLine[];
  /** The one that was wanted, else the first. */
  readonly kart?: KartLine;
  /** Left out where what is shown still holds; the kart itself only where it is another than the last that was handed out. */
  readonly answers?: Omit<FirstAnswers, 'kart'> & { readonly kart?: Kart };
};

export type DeviceBook = {
  readonly app: App;
  readonly sync: Sync;
  /** False where the browser keeps nothing: what is written lives until the page is closed. */
  readonly kept: boolean;
  /** A photo or a log; fetched and kept when it is only on the server. Undefined when it cannot be had. */
  file(hash: string): Promise<Blob | undefined>;
  /** Events ahead of a kart and the service each asks for, as an iCalendar file. */
  calendar(kart: string): Promise<string>;
  /** What kart files are read with. */
  library(): Promise<LibraryTexts>;
  /** The karts, and what a page shows of one of them: the first of those wanted that is here. */
  look(wanted: readonly string[], shown?: Shown): Promise<Looked>;
  /** Calls back when the page should look again: facts came in, or karts read otherwise. */
  onNews(listener: () => void): () => void;
};

export type BookParts = {
  readonly store: BookStore & { readonly own: Own };
  readonly kept: boolean;
  readonly remote: Remote;
  readonly clock: Clock;
  /** Bytes nobody can guess. */
  readonly random: (bytes: number) => Uint8Array;
  /** Names this version of the program. */
  readonly build: string;
};

export async function openDeviceBook({ store, kept, remote, clock, random, build }: BookParts): Promise<DeviceBook> {
  const { own } = store;
  // Beside the facts: whoever loses these must not go on under the same name.
  const device = await nameOf(own, random);
  const reader = deviceReader(own, remote, build);
  const app = createApp({
    store,
    clock,
    ids: { next: () => uuid(random(16)), salt: () => hex(random(16)) },
    reader,
    device,
  });
  const sync = await createSync({ app, own, remote, clock });
  const news = new Set<() => void>();
  const tell = (): void => {
    for (const each of news) each();
  };
  sync.onArrived(tell);
  const fetching = fetchingFiles(app, remote);
  let calm: ReturnType<typeof setTimeout> | undefined;
  const fetchFiles = (): void => {
    clearTimeout(calm);
    calm = setTimeout(() => void fetching().catch(() => undefined), CALM_MS); // who looks at one asks again, and is told
  };
  sync.onArrived(fetchFiles);
  const stopWaiting = sync.onChange(() => {
    if (sync.state().is !== 'all sent') return;
    stopWaiting();
    fetchFiles();
    // Out of reach or without room: it is looked for again when the page is loaded.
    reader.renewLibrary().then(
      isOther => isOther && tell(),
      () => undefined,
    );
  });
  let handed: Kart | undefined;
  return {
    app,
    sync,
    kept,
    calendar: async kart => (await import('./calendar.ts')).calendarOf(app, kart),
    library: reader.library,
    async look(wanted, shown) {
      const karts = await app.karts();
      const line = kartAmong(karts, wanted);
      if (line === undefined) return { karts };
      if (shown?.kart === line.name && shown.facts === line.facts) return { karts, kart: line };
      const { kart, ...answers } = await firstAnswers(app, line.name);
      const known = kart === handed;
      handed = kart;
      return { karts, kart: line, answers: known ? answers : { ...answers, kart } };
    },
    onNews(listener) {
      news.add(listener);
      return () => news.delete(listener);
    },
    async file(hash) {
      const file = await fileFrom(app, remote, hash);
      return file && new Blob([file.bytes.slice()], { type: file.mediaType });
    },
  };
}

/** The name of this device, made with its first book. Rejects where there is no room even for that. */
export const nameOf = async (own: Own, random: BookParts['random']): Promise<string> =>
  (await own.first('device', `page-${hex(random(6))}`)) as string;

const hex = (bytes: Uint8Array): string => [...bytes].map(byte => byte.toString(16).padStart(2, '0')).join('');

/** Version 4 of RFC 9562, section 5.4; the browser's own is missing where a page comes over plain HTTP. */
function uuid(bytes: Uint8Array): string {
  const marked = bytes.map((byte, i) => (i === 6 ? (byte & 0x0f) | 0x40 : i === 8 ? (byte & 0x3f) | 0x80 : byte));
  return hex(marked).replace(/^(.{8})(.{4})(.{4})(.{4})/, '$1-$2-$3-$4-');
}
