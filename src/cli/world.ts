/** What the command line asks of the machine it runs on. `main.ts` gives the real one. */
import type { App, DemoText, RiskTexts } from '../app/index.ts';
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
  writeNew(path: string, text: string): Promise<boolean>;
  /** Where the shipped JSON Schema of kart files is, seen from a kart file. */
  schemaFor(file: string): string;
  library(): Promise<Library>;
  demo(): Promise<DemoText>;
  /** What changes of the set-up are said to do, as shipped. */
  setupEffects(): Promise<string>;
  /** Starting guesses of lives and retentions, as shipped. */
  riskTexts(): Promise<RiskTexts>;
  /** The book at DATABASE_URL, else in the data folder; `place` names another: a database's address or a folder. */
  open(place?: string): Promise<App>;
  /** A book in memory that holds nothing and is gone afterwards, with a clock of its own if asked. */
  scratch(now?: Date): Promise<App>;
  serve(
    app: App,
    at: { readonly port: number; readonly host: string },
  ): Promise<{ readonly url: string; close(): Promise<void> }>;
  /** Resolves when the person stops the program. */
  stopped(): Promise<void>;
};
