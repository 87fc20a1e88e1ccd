/** Lines of a text that comes in pieces, with their number from 1. What has no end within reason is passed over. */
export const LONGEST_LINE = 65_536;

export type EachLine = (line: string, number: number) => void;

export class Lines {
  readonly #each: EachLine;
  readonly #tooLong: (number: number) => void;
  #rest = '';
  #dropping = false;
  #number = 0;

  constructor(each: EachLine, tooLong: (number: number) => void) {
    this.#each = each;
    this.#tooLong = tooLong;
  }

  feed(text: string): void {
    let from = 0;
    for (let end = text.indexOf('\n'); end >= 0; end = text.indexOf('\n', from)) {
      const piece = text.slice(from, end);
      this.#line(this.#rest === '' ? piece : this.#rest + piece);
      this.#rest = '';
      from = end + 1;
    }
    if (from < text.length && !this.#dropping) this.#rest += text.slice(from);
    if (this.#rest.length > LONGEST_LINE) {
      this.#dropping = true;
      this.#rest = '';
    }
  }

  /** What stands after the last line end, if anything. */
  end(): { readonly line: string; readonly number: number } | undefined {
    const line = this.#rest;
    this.#rest = '';
    if (this.#dropping) this.#tooLong(this.#number + 1);
    return line === '' || this.#dropping ? undefined : { line, number: this.#number + 1 };
  }

  #line(line: string): void {
    this.#number++;
    if (this.#dropping || line.length > LONGEST_LINE) this.#tooLong(this.#number);
    else this.#each(line.endsWith('\r') ? line.slice(0, -1) : line, this.#number);
    this.#dropping = false;
  }
}
