/** A store that cannot do its work says why and what to do; whatever it was doing was not done at all. */
export type StoreFault =
  | 'disk full'
  | 'busy'
  | 'read only'
  | 'disk error'
  | 'damaged'
  | 'not a book'
  | 'newer format'
  | 'cannot open'
  | 'closed'
  | 'failed';

export class StoreError extends Error {
  override readonly name = 'StoreError';
  readonly code: StoreFault;
  readonly remedy: string;

  constructor(code: StoreFault, message: string, remedy: string, cause?: unknown) {
    super(message, cause === undefined ? {} : { cause });
    this.code = code;
    this.remedy = remedy;
  }
}
