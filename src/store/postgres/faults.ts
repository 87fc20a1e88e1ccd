/** What PostgreSQL and the line to it say, in the words of a person who has to do something about it. */
import { StoreError, type StoreFault } from '../store-error.ts';

type Fault = { readonly when: RegExp; readonly fault: StoreFault; readonly what: string; readonly remedy: string };

/** By SQLSTATE, else by the error code of the system. Source: PostgreSQL 15 documentation, appendix A; errno(3). */
const FAULTS: readonly Fault[] = [
  {
    when: /^53100$/,
    fault: 'disk full',
    what: 'the disk of the database is full; this was not written',
    remedy: 'free some space there, then do it again; what was kept before is whole',
  },
  {
    when: /^(53|57014|55P03|40001|40P01)/,
    fault: 'busy',
    what: 'the database is too busy',
    remedy: 'wait, then do it again; nothing was written',
  },
  {
    when: /^(25006|42501)$/,
    fault: 'read only',
    what: 'the book must be writable, and is not for this user',
    remedy: 'give the user of DATABASE_URL the right to create and write in this database',
  },
  {
    when: /^(28|3D)/,
    fault: 'cannot open',
    what: 'the database does not let this user in',
    remedy: 'correct user, password and database in DATABASE_URL',
  },
  {
    when: /^(08|57P|ECONN|EPIPE|ENOTFOUND|ETIMEDOUT|EHOST|EAI_AGAIN|ENOENT)/,
    fault: 'cannot open',
    what: 'the database is out of reach',
    remedy: 'see that it runs and that DATABASE_URL names it; what was acknowledged is kept',
  },
  {
    when: /^XX00[12]$/,
    fault: 'damaged',
    what: 'the database is damaged',
    remedy: 'keep it as it is, and restore the last backup into a new one',
  },
];
const OTHER = { fault: 'failed', what: 'the database did not do what was asked', remedy: 'look into its log' } as const;
/** What the driver says without a code when the other end is gone. */
const LOST = /Connection terminated|Client has encountered a connection error|timeout (exceeded|expired)/;

/** Gives a failure of the database its name; any other error passes as it is. `where` holds no password. */
export function storeError(error: unknown, where: string): unknown {
  if (!(error instanceof Error) || error instanceof StoreError) return error;
  const { code } = error as { code?: unknown };
  const given = typeof code === 'string' ? code : LOST.test(error.message) ? 'ECONNRESET' : undefined;
  if (given === undefined || !/^([0-9A-Z]{5}|E[A-Z_]+)$/.test(given)) return error;
  const { fault, what, remedy } = FAULTS.find(({ when }) => when.test(given)) ?? OTHER;
  return new StoreError(fault, `${where}: ${what} (${error.message || given})`, remedy, error);
}
