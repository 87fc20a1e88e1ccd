/** What SQLite says, in the words of a person who has to do something about it. */
import { StoreError, type StoreFault } from '../store-error.ts';

/** Primary result codes. Source: SQLite documentation, "Result and Error Codes", section 3. */
const FAULTS: Readonly<Record<number, readonly [StoreFault, string, string]>> = {
  5: ['busy', 'another program kept the book locked for too long', 'close the other program or wait, then do it again'],
  8: [
    'read only',
    'the book must be writable, and is not',
    'allow writing to the file and its folder, then do it again',
  ],
  10: [
    'disk error',
    'the disk did not do what was asked',
    'check the disk, copy the book to another one, then do it again',
  ],
  11: ['damaged', 'the file of the book is damaged', 'keep it, and import the last export into a new book'],
  13: [
    'disk full',
    'the disk is full; this was not written',
    'free some space, then do it again; what was kept before is whole',
  ],
  14: [
    'cannot open',
    'the file of the book cannot be opened',
    'check that its folder is there and may be read and written',
  ],
  26: ['not a book', 'the file is no book of this program', 'name the right file; this one was not touched'],
};

/** Gives a failure its name; a fault of ours passes as it is. */
export function storeError(error: unknown, path: string): unknown {
  const code = (error as { errcode?: unknown } | null)?.errcode;
  if (typeof code !== 'number') return error;
  // The low byte is the primary code; 6 (a table locked within one process) is told as 5.
  const primary = (code & 0xff) === 6 ? 5 : code & 0xff;
  const [fault, what, remedy] = FAULTS[primary] ?? ['failed', 'the book did not do what was asked', 'report this'];
  return new StoreError(fault, `${path}: ${what} (SQLite: ${(error as Error).message})`, remedy, error);
}
