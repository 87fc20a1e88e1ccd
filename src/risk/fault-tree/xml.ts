/**
 * The little XML that a fault tree needs, read strictly: elements, attributes, text, comments, the five named
 * characters and numbered ones. No document type, no entities of its own, no processing instructions: what could grow
 * while it is read is refused, and so is what is larger or deeper than any tree.
 * Source: Extensible Markup Language (XML) 1.0, W3C, fifth edition (memory).
 */
import { type Finding, Scanner, Wrong } from './xml-scanner.ts';

export type XmlElement = {
  readonly name: string;
  readonly attributes: ReadonlyMap<string, string>;
  readonly children: readonly XmlElement[];
  readonly text: string; // of its own, without that of its children
  readonly line: number; // from 1
};
export type XmlRead = { readonly kind: 'xml'; readonly root: XmlElement } | ({ readonly kind: 'no xml' } & Finding);

export const XML_LIMITS = { characters: 4_000_000, depth: 100, elements: 100_000 } as const;

/** Stops at the first thing that is wrong: after it nothing can be told apart. */
export function readXml(text: string): XmlRead {
  try {
    return { kind: 'xml', root: documentOf(new Scanner(text), text.length) };
  } catch (error) {
    if (error instanceof Wrong) return { kind: 'no xml', ...error.finding };
    throw error;
  }
}

type Open = { name: string; attributes: Map<string, string>; children: XmlElement[]; text: string; line: number };

const DECLARATION = /<\?xml[ \t\r\n][^?<>]*\?>/y;
const TEXT = /[^<]+/y;
const VALUE = /"[^"<]*"|'[^'<]*'/y;

function documentOf(scan: Scanner, length: number): XmlElement {
  if (length > XML_LIMITS.characters)
    scan.wrong(`at most ${XML_LIMITS.characters} characters`, `${length}`, 'split the tree');
  scan.match(DECLARATION);
  spaceAndComments(scan);
  const root = outermost(scan);
  spaceAndComments(scan);
  if (!scan.atEnd()) scan.wrong('nothing after the first element', scan.here(), 'keep one document in a file');
  return root;
}

function spaceAndComments(scan: Scanner): void {
  while (scan.space() || scan.comment());
}

/** The element here with all that is in it, by a list of the open ones: how deep they go is counted, not trusted. */
function outermost(scan: Scanner): XmlElement {
  const open: Open[] = [];
  for (let count = 1; ; ) {
    const inside = open.at(-1);
    const text = inside && scan.match(TEXT);
    if (inside && text !== undefined) inside.text += scan.plain(text);
    else if (inside && scan.comment()) continue;
    else if (inside && scan.take('</')) {
      const above = open.at(-2);
      closed(scan, inside);
      open.pop();
      if (above === undefined) return inside;
      above.children.push(inside);
    } else {
      if (inside && scan.atEnd())
        scan.wrong(
          `</${inside.name}>, opened in line ${inside.line}`,
          scan.here(),
          'close it; the file may be cut short',
        );
      if (open.length === XML_LIMITS.depth)
        scan.wrong(
          `at most ${XML_LIMITS.depth} elements inside each other`,
          'more',
          'give inner gates their own names',
        );
      if (count++ > XML_LIMITS.elements)
        scan.wrong(`at most ${XML_LIMITS.elements} elements`, 'more', 'split the tree');
      const made = opened(scan);
      if (!scan.take('/>')) {
        scan.expect('>', `<${made.name}`);
        open.push(made);
      } else if (inside) inside.children.push(made);
      else return made;
    }
  }
}

/** An element up to what ends its tag. */
function opened(scan: Scanner): Open {
  const remedy = 'document types, entities and instructions are not read here: take them out';
  if (scan.is('<!') || scan.is('<?') || !scan.take('<')) scan.wrong('an element', scan.here(), remedy);
  const line = scan.line();
  const name = scan.name('the name of an element');
  const attributes = new Map<string, string>();
  while (scan.space() && !scan.is('/') && !scan.is('>')) {
    const key = scan.name(`an attribute or the end of <${name}`);
    scan.space();
    scan.expect('=', `the attribute ${key}`);
    scan.space();
    const value = scan.match(VALUE) ?? scan.wrong(`the value of ${key} in quotes`, scan.here(), 'write key="value"');
    if (attributes.has(key)) scan.wrong(`the attribute ${key} once`, 'a second one', 'take one of them out');
    attributes.set(key, scan.plain(value.slice(1, -1)));
  }
  return { name, attributes, children: [], text: '', line };
}

function closed(scan: Scanner, { name, line }: Open): void {
  const got = scan.name('the name of an element');
  if (got !== name)
    scan.wrong(`</${name}>, opened in line ${line}`, `</${got}>`, 'close elements in the order they were opened');
  scan.space();
  scan.expect('>', `</${name}`);
}
