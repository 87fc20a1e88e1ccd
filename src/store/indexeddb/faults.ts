/** What a browser's database says, in the words of a person who has to do something about it. */
import { StoreError, type StoreFault } from '../store-error.ts';

type Fault = { readonly fault: StoreFault; readonly what: string; readonly remedy: string };

/** By the name of the exception. Source: Web IDL §3.14 "DOMException", Indexed Database API 3.0 §2.9 and §4. */
const FAULTS: Readonly<Record<string, Fault>> = {
  QuotaExceededError: {
    fault: 'disk full',
    what: 'there is no room left on this device; this was not written',
    remedy: 'free some space or take an export, then do it again; what was kept before is whole',
  },
  VersionError: {
    fault: 'newer format',
    what: 'this book was written by a newer version of the page',
    remedy: 'load the newest page; nothing was touched',
  },
  UnknownError: {
    fault: 'disk error',
    what: 'the device did not do what was asked',
    remedy: 'close other pages, load the page again, then do it again',
  },
  InvalidStateError: {
    fault: 'cannot open',
    what: 'the browser took the book away or forbids it here',
    remedy: 'load the page again; in a private window nothing can be kept',
  },
  SecurityError: {
    fault: 'cannot open',
    what: 'the browser forbids this page to keep anything',
    remedy: 'allow the page to store data, then load it again',
  },
};
const OTHER: Fault = { fault: 'failed', what: 'the book did not do what was asked', remedy: 'load the page again' };

/** Gives a failure of the browser's database its name; any other error passes as it is. */
export function storeError(error: unknown): unknown {
  if (!(error instanceof DOMException)) return error;
  const { fault, what, remedy } = FAULTS[error.name] ?? OTHER;
  return new StoreError(fault, `${what} (${error.name}: ${error.message})`, remedy, error);
}
