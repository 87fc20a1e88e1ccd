/**
 * The elements of an XML text that comes in pieces, one after the other and read strictly. No document type and no
 * entity of its own: what could grow while it is read, or reach outside the file, is refused.
 * Source: Extensible Markup Language (XML) 1.0, W3C, fifth edition (memory).
 */
import type { LogProblem } from '../../model.ts';

export type XmlEvents = {
  /** Name without its prefix; the attributes as written, for `attributeOf`. */
  readonly open: (name: string, attributes: string) => void;
  readonly text: (text: string) => void;
  readonly close: (name: string) => void;
};

export const XML_LIMITS = { token: 65_536, depth: 64 } as const;

const TAG = /^([A-Za-z_][\w.-]*(?::[A-Za-z_][\w.-]*)?)((?:\s+[\w.:-]+\s*=\s*(?:"[^"<]*"|'[^'<]*'))*)\s*(\/?)$/;
const UNKNOWN_ENTITY = /&(?!(?:amp|lt|gt|quot|apos|#\d{1,7}|#x[0-9a-fA-F]{1,6});)/;
const REMEDY = 'save the track again as GPX 1.1; what stood before this line is used';

export class XmlPull {
  readonly #events: XmlEvents;
  #buffer = '';
  #at = 0;
  #line = 1; // of what was counted up to
  #counted = 0;
  #open: string[] = [];
  #rooted = false;
  problem: LogProblem | undefined;

  constructor(events: XmlEvents) {
    this.#events = events;
  }

  feed(text: string): void {
    if (this.problem) return;
    this.line();
    this.#buffer = this.#at < this.#buffer.length ? this.#buffer.slice(this.#at) + text : text;
    this.#at = 0;
    this.#counted = 0;
    while (this.problem === undefined && this.#token());
    if (this.problem) return;
    if (this.#buffer.length - this.#at > XML_LIMITS.token) this.#wrong('a shorter piece', 'one without an end');
  }
  end(): void {
    if (this.problem) return;
    const rest = this.#buffer.slice(this.#at).trim();
    const inside = this.#open.at(-1);
    if (inside !== undefined) this.#wrong(`the end of <${inside}>`, 'the end of the file');
    else if (rest !== '') this.#wrong('nothing after the last element', `"${rest.slice(0, 20)}"`);
    else if (!this.#rooted) this.#wrong('an element', 'the end of the file');
  }
  /** Of the place reached, from 1; counted on from where it was counted last. */
  line(): number {
    const next = (): number => this.#buffer.indexOf('\n', this.#counted);
    for (let end = next(); end >= 0 && end < this.#at; end = next()) {
      this.#line++;
      this.#counted = end + 1;
    }
    return this.#line;
  }

  /** One token taken; false when the rest of it is yet to come. */
  #token(): boolean {
    const buffer = this.#buffer;
    const start = buffer.indexOf('<', this.#at);
    if (start < 0) return false;
    if (start - this.#at > XML_LIMITS.token) return this.#wrong('a shorter text', 'a longer one');
    if (start > this.#at && !this.#text(buffer.slice(this.#at, start))) return false;
    this.#at = start;
    const second = buffer[start + 1];
    if (second === '!') return this.#declared(start);
    if (second === '?') return this.#past('?>', start);
    const end = tagEnd(buffer, start);
    if (end < 0) return false;
    const closing = second === '/';
    if (end - start > XML_LIMITS.token) return this.#wrong('a shorter tag', 'a longer one');
    const done = closing ? this.#close(buffer.slice(start + 2, end)) : this.#tag(buffer.slice(start + 1, end));
    if (done) this.#at = end + 1;
    return done;
  }

  #text(text: string): boolean {
    if (this.#open.length === 0)
      return text.trim() === '' || this.#wrong('an element', `"${text.trim().slice(0, 20)}"`);
    if (text.includes('&') && UNKNOWN_ENTITY.test(text))
      return this.#wrong('one of &amp; &lt; &gt; &quot; &apos;', 'another entity: they are not read');
    this.#events.text(text);
    return true;
  }

  #declared(start: number): boolean {
    const buffer = this.#buffer;
    if (buffer.startsWith('<!--', start)) return this.#past('-->', start);
    if (buffer.startsWith('<![CDATA[', start)) {
      const end = buffer.indexOf(']]>', start);
      if (end >= 0) this.#events.text(buffer.slice(start + 9, end));
      return this.#past(']]>', start);
    }
    const mayBecome = ['<!--', '<![CDATA['].some(each => each.startsWith(buffer.slice(start)));
    return !mayBecome && this.#wrong('elements', 'a document type or entity: they are not read');
  }

  #past(what: string, start: number): boolean {
    const end = this.#buffer.indexOf(what, start);
    if (end < 0) return false;
    if (end - start > XML_LIMITS.token) return this.#wrong('a shorter piece', 'a longer one');
    this.#at = end + what.length;
    return true;
  }

  #tag(inside: string): boolean {
    const found = TAG.exec(inside);
    if (!found) return this.#wrong('an element, its attributes in quotes', `"<${inside.slice(0, 40)}>"`);
    const [, name = '', attributes = '', empty] = found;
    if (this.#open.length === 0 && this.#rooted) return this.#wrong('nothing after the first element', `<${name}>`);
    if (this.#open.length === XML_LIMITS.depth) return this.#wrong(`at most ${XML_LIMITS.depth} elements deep`, 'more');
    this.#rooted = true;
    this.#events.open(local(name), attributes);
    if (empty) this.#events.close(local(name));
    else this.#open.push(name);
    return true;
  }

  #close(inside: string): boolean {
    const name = inside.trimEnd();
    const open = this.#open.at(-1);
    if (name !== open) return this.#wrong(open ? `</${open}>` : 'an element', `</${name.slice(0, 40)}>`);
    this.#open.pop();
    this.#events.close(local(name));
    return true;
  }

  #wrong(expected: string, got: string): false {
    this.problem = { line: this.line(), expected, got, remedy: REMEDY };
    return false;
  }
}

/** Where the ">" stands that ends a tag, outside of quotes; -1 when it has not come yet. */
function tagEnd(text: string, start: number): number {
  let end = text.indexOf('>', start);
  for (let from = start, quote = 0; end >= 0; end = text.indexOf('>', end + 1)) {
    for (let at = from; at < end; at++) {
      const code = text.charCodeAt(at);
      if (quote !== 0) quote = code === quote ? 0 : quote;
      else if (code === 0x22 || code === 0x27) quote = code;
    }
    if (quote === 0) return end;
    from = end;
  }
  return -1;
}

const local = (name: string): string => name.slice(name.indexOf(':') + 1);

const ATTRIBUTE = /([\w.:-]+)\s*=\s*("[^"]*"|'[^']*')/g;

/** The value of an attribute as written; undefined when it is not there. */
export function attributeOf(attributes: string, name: string): string | undefined {
  ATTRIBUTE.lastIndex = 0;
  for (let found = ATTRIBUTE.exec(attributes); found; found = ATTRIBUTE.exec(attributes))
    if (found[1] === name) return found[2]?.slice(1, -1);
  return undefined;
}
