/**
 * What stands against doing what was asked. The code is the same on every face: one line in a terminal,
 * problem+json over HTTP, a sentence on a screen.
 */
export const CODES = [
  'wrong shape', // a key, a type or a length that no fact of this kind has
  'unknown kart',
  'unknown part',
  'unknown joint',
  'unknown item',
  'unknown fact',
  'unknown event',
  'unknown file',
  'kart file', // the text of a kart file does not read
  'in the future',
  'not a time',
  'runs backwards', // an hour meter, or an event that ends before it starts
  'times overlap', // two times to work in
  'already on',
  'already off',
  'not removable',
  'way in still on', // what must be off first is on
  'part is off',
  'reading', // not a quantity, or not of this item's dimension
  'reading missing',
  'far outside', // asked again: the same with `sure` is recorded as said
  'outside limits', // a pass with a value that is none
  'why missing',
  'no first look',
  'same tap twice',
  'already struck',
  'already mended',
  'not fit', // signing against the record, asked again
  'stands otherwise', // what stands open is not what the signer was shown
  'signature missing',
  'already in the book', // a log, or laps of a run; asked again
  'already ran', // a session that is logged without laps; asked again
  'no laps', // nothing crosses the gate; asked again
  'log', // a file that holds no drive
  'nothing to record',
  'not allowed', // by the role of a device, or by its code
  'book', // the store or an import refused
] as const;
export type Code = (typeof CODES)[number];

export type Problem = {
  readonly code: Code;
  /** Where: 'facts[2].reading', or the line of a file. */
  readonly where: string;
  /** What was expected and what came, one sentence. */
  readonly message: string;
  /** What to do, one sentence in the imperative. */
  readonly remedy: string;
};

/** Codes that are asked again rather than refused: the same command with `sure: true` goes through. */
export const ASKS_AGAIN: readonly Code[] = ['far outside', 'not fit', 'already in the book', 'already ran', 'no laps'];

/** Thrown by queries that cannot answer; each face catches it once, at its edge. */
export class Refusal extends Error {
  constructor(readonly problems: readonly Problem[]) {
    super(problems.map(problem => `${problem.message} ${problem.remedy}`).join('\n'));
    this.name = 'Refusal';
  }
}

export const refuse = (code: Code, where: string, message: string, remedy: string): Problem => ({
  code,
  where,
  message,
  remedy,
});

type InKartFile = {
  readonly file?: string; // of the library; absent for the kart file itself
  readonly path: string;
  readonly line: number;
  readonly column: number;
  readonly expected: string;
  readonly got: string;
  readonly remedy: string;
};

/** What stands against a kart file, as every other problem is said. */
export const fromKartFile = (one: InKartFile, where = placeOf(one)): Problem =>
  refuse('kart file', where, `Expected ${one.expected}, got ${one.got}.`, sentence(one.remedy));

const placeOf = ({ file, line, column, path }: InKartFile): string =>
  `${file === undefined ? '' : `${file}, `}line ${line}, column ${column}${path === '' ? '' : ` (${path})`}`;

/** 'do this' → 'Do this.' */
export const sentence = (text: string): string =>
  text.charAt(0).toUpperCase() + text.slice(1) + (/[.?!]$/.test(text) ? '' : '.');
