/** What the command line asks of the machine it runs on. `main.ts` gives the real one. */
import type { App, BookStore, DemoText, Proof, Register, RiskTexts } from '../app/index.ts';
import type { Library } from '../kart/index.ts';

export type World = {
  readonly env: Readonly<Record<string, string | undefined>>;
  /** Name of the person logged in to the machine. */
  readonly user: string | undefined;
  readonly version: string;
  now(): Date;
  out(text: string): void;
  err(text: string): void;
  /** All of standard input; undefined when it is a terminal. */
  stdin(): Promise<string | undefined>;
  /** Puts a question and gives the line that was typed; there only where a person sits at a terminal. */
  readonly ask: ((question: string) => Promise<string>) | undefined;
  /** Undefined when there is no such file. */
  readFile(path: string): Promise<string | undefined>;
  readBytes(path: string): Promise<Uint8Array | undefined>;
  /** A file as it streams by, and how large it is. */
  readPieces(path: string): Promise<{ readonly bytes: number; readonly pieces: AsyncIterable<Uint8Array> } | undefined>;
  /** False when the file is there already: nothing is overwritten. */
  writeNew(path: string, text: string | AsyncIterable<Uint8Array>): Promise<boolean>;
  /** Where the shipped JSON Schema of kart files is, seen from a kart file. */
  schemaFor(file: string): string;
  library(): Promise<Library>;
  demo(): Promise<DemoText>;
  /** What changes of the set-up are said to do, as shipped. */
  setupEffects(): Promise<string>;
  /** Starting guesses of lives and retentions, as shipped. */
  riskTexts(): Promise<RiskTexts>;
  /** The book at DATABASE_URL, else in the data folder. */
  open(): Promise<App>;
  /** The same as a store, for whoever carries a whole book; `place` names another: a database's address or a folder. */
  store(place?: string): Promise<BookStore>;
  readonly backups: Backups;
  /** A book in memory that holds nothing and is gone afterwards, with a clock of its own if asked. */
  scratch(now?: Date): Promise<App>;
  /** Which devices may come in from the network. */
  devices(): Promise<Register>;
  /** Each register that names devices of this book, and as whose: the book of a team is served from the folder above. */
  registers(): Promise<readonly { readonly register: Register; readonly team: string }[]>;
  /** A code to let one in; nobody guesses it. */
  newCode(): Promise<string>;
  serve(
    app: App,
    at: {
      readonly port: number;
      readonly host: string;
      readonly https: boolean;
      /** Least level of the lines on the error output. */
      readonly log: string;
    },
  ): Promise<Serving>;
  /** Resolves when the person stops the program. */
  stopped(): Promise<void>;
};

export type Serving = {
  readonly url: string;
  /** Addresses for a phone on the same network, the best first; empty on loopback. */
  readonly reached: readonly string[];
  /** With HTTPS: what a phone has to trust, and how it is known. */
  readonly authority?: { readonly fingerprint: string; readonly folder: string };
  close(): Promise<void>;
};

export type Backup = { readonly file: string /** RFC 3339, UTC. */; readonly at: string };

export type Backups = {
  /** Where those lie that are made without a name: KARTWRIGHT_BACKUPS, else `backups` in the data folder. */
  folder(): Promise<string>;
  /** Newest first. */
  list(): Promise<readonly Backup[]>;
  /** A name in the folder for one of this moment. */
  name(now: Date): Promise<string>;
  /** The whole book into a new file, while others write; proved before it gets its name. */
  write(file: string): Promise<Proof>;
  /** One of them, to be read; undefined when there is no such file. */
  open(file: string): Promise<BookStore | undefined>;
  /** One more of each team served from here, in its own folder, by the same rules; which failed, and why. */
  ofTeams(): Promise<{ readonly teams: number; readonly failed: readonly string[] }>;
  /** The newest of the folder, and the newest that lies beside the file, but the file itself: what is known of later. */
  later(file: string): Promise<readonly BookStore[]>;
  remove(backup: Backup): Promise<void>;
  /** Makes one a day in the folder, in a process of its own, until the returned stop; what goes wrong is told on the error output. */
  daily(): Promise<() => void>;
  /** From here on this machine writes under a new name, which is given. */
  renameDevice(): Promise<string>;
};
