/** A place in a text of XML, moved on by what is expected there. What is not there is a `Wrong` with its line. */
export type Finding = {
  readonly line: number; // from 1
  readonly expected: string;
  readonly got: string;
  readonly remedy: string;
};
export class Wrong extends Error {
  constructor(readonly finding: Finding) {
    super(finding.expected);
  }
}

const NAME = /[A-Za-z_][\w.-]*/y;
const SPACE = /[ \t\r\n]+/y;

export class Scanner {
  readonly #text: string;
  #at = 0;
  #line = 1;
  #lineAt = 0;

  constructor(text: string) {
    this.#text = text.charCodeAt(0) === 0xfeff ? text.slice(1) : text;
  }

  /** What a sticky pattern finds here, taken. */
  match(pattern: RegExp): string | undefined {
    pattern.lastIndex = this.#at;
    const found = pattern.exec(this.#text)?.[0];
    this.#at += found?.length ?? 0;
    return found;
  }
  is(what: string): boolean {
    return this.#text.startsWith(what, this.#at);
  }
  take(what: string): boolean {
    const is = this.is(what);
    if (is) this.#at += what.length;
    return is;
  }
  expect(what: string, after: string): void {
    if (!this.take(what)) this.wrong(`"${what}" after ${after}`, this.here(), 'correct the markup');
  }
  name(expected: string): string {
    return this.match(NAME) ?? this.wrong(expected, this.here(), 'names are letters, digits, "_", "-" and "."');
  }
  /** Whether there was any. */
  space(): boolean {
    return this.match(SPACE) !== undefined;
  }
  comment(): boolean {
    if (!this.is('<!--')) return false;
    const end = this.#text.indexOf('-->', this.#at + 4);
    if (end < 0) this.wrong('the end of a comment, "-->"', 'the end of the file', 'close the comment');
    this.#at = end + 3;
    return true;
  }
  atEnd(): boolean {
    return this.#at >= this.#text.length;
  }
  here(): string {
    return this.atEnd() ? 'the end of the file' : `"${this.#text.slice(this.#at, this.#at + 20).split('\n')[0]}"`;
  }

  /** Counted on from where it was counted last. */
  line(): number {
    const next = (): number => this.#text.indexOf('\n', this.#lineAt);
    for (let end = next(); end >= 0 && end < this.#at; end = next()) {
      this.#line++;
      this.#lineAt = end + 1;
    }
    return this.#line;
  }
  wrong(expected: string, got: string, remedy: string): never {
    throw new Wrong({ line: this.line(), expected, got, remedy });
  }

  /** Text with its named and numbered characters put in. */
  plain(raw: string): string {
    return raw.replace(/&([^;&]{0,10};?)/g, (all, inside: string) => {
      const numbered = /^#(?:x([0-9a-fA-F]{1,6})|([0-9]{1,7}));$/.exec(inside);
      const code = numbered?.[1] ? Number.parseInt(numbered[1], 16) : Number(numbered?.[2] ?? Number.NaN);
      if (code >= 0x20 && code <= 0x10ffff) return String.fromCodePoint(code);
      const remedy = 'write the character itself; entities are not read here';
      return NAMED.get(inside) ?? this.wrong('one of &amp; &lt; &gt; &quot; &apos;', `"${all}"`, remedy);
    });
  }
}
const NAMED = new Map([
  ['amp;', '&'],
  ['lt;', '<'],
  ['gt;', '>'],
  ['quot;', '"'],
  ['apos;', "'"],
]);
