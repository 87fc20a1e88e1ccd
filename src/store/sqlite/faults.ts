/** What SQLite says, in the words of a person who has to do something about it. */
import { StoreError, type StoreFault } from '../store-error.ts';

type Fault = {
  readonly code: number;
  readonly text: string;
  readonly fault: StoreFault;
  readonly what: string;
  readonly remedy: string;
};

const WAIT = 'close the other program or wait, then do it again';
const BUSY = { fault: 'busy', what: 'another program kept the book locked for too long', remedy: WAIT } as const;

/** Primary result codes with SQLite's own text for each. Source: SQLite documentation, "Result and Error Codes", and sqlite3_errstr(). */
const FAULTS: readonly Fault[] = [
  { code: 5, text: 'database is locked', ...BUSY },
  { code: 6, text: 'database table is locked', ...BUSY },
  {
    code: 8,
    text: 'attempt to write a readonly database',
    fault: 'read only',
    what: 'the book must be writable, and is not',
    remedy: 'allow writing to the file and its folder, then do it again',
  },
  {
    code: 10,
    text: 'disk I/O error',
    fault: 'disk error',
    what: 'the disk did not do what was asked',
    remedy: 'check the disk, copy the book to another one, then do it again',
  },
  {
    code: 11,
    text: 'database disk image is malformed',
    fault: 'damaged',
    what: 'the file of the book is damaged',
    remedy: 'keep the file, and import the last export into a new book',
  },
  {
    code: 13,
    text: 'database or disk is full',
    fault: 'disk full',
    what: 'the disk is full; this was not written',
    remedy: 'free some space, then do it again; what was kept before is whole',
  },
  {
    code: 14,
    text: 'unable to open database file',
    fault: 'cannot open',
    what: 'the file of the book cannot be opened',
    remedy: 'check that its folder is there and may be read and written',
  },
  {
    code: 26,
    text: 'file is not a database',
    fault: 'not a book',
    what: 'the file is no book of this program',
    remedy: 'name the right file; this one was not touched',
  },
];

const OTHER = {
  fault: 'failed',
  what: 'the book did not do what was asked',
  remedy: 'keep the file and report this',
} as const;

/** Gives a failure of SQLite its name; any other error passes as it is. */
export function storeError(error: unknown, path: string): unknown {
  const { code, errcode } = (error ?? {}) as { code?: unknown; errcode?: unknown };
  if (!(error instanceof Error) || code !== 'ERR_SQLITE_ERROR') return error;
  // The low byte is the primary code. Where rows are read the driver gives no number, only SQLite's text.
  const known = FAULTS.find(f =>
    typeof errcode === 'number' ? f.code === (errcode & 0xff) : error.message.includes(f.text),
  );
  const { fault, what, remedy } = known ?? OTHER;
  return new StoreError(fault, `${path}: ${what} (SQLite: ${error.message})`, remedy, error);
}
