/**
 * A fault tree in XML after the Open-PSA Model Exchange Format 2.0: <opsa-mef>, <define-fault-tree>, <model-data>,
 * <define-gate> with and, or, atleast and formulas inside each other, <define-basic-event> with <float> or <int>,
 * <define-house-event> with <constant>. Labels and attributes are passed over. What would need "not", other
 * expressions or names with scopes is refused, not guessed. Names are taken as they are written.
 * Source: Open-PSA Model Exchange Format, open standard (seen in files that follow it; chapters not verified).
 */
import { type InputProblem, problems } from '../../numbers/index.ts';
import { type Draft, type TreeRead, treeOf } from './draft.ts';
import type { Basic, Gate } from './model.ts';
import { readXml, type XmlElement } from './xml.ts';

/** Never throws on what comes from outside. A line of the file is the path of each problem. */
export function readMef(text: string): TreeRead {
  const read = readXml(text);
  if (read.kind === 'no xml') {
    const { line, expected, got, remedy } = read;
    return problems({ path: `line ${line}`, expected, got, remedy });
  }
  const reader = new MefReader();
  reader.model(read.root);
  return treeOf({ top: undefined, gates: reader.gates, events: reader.events }, reader.against);
}

const OPS = ['and', 'or', 'atleast'] as const;
const REFERENCES = ['gate', 'basic-event', 'house-event', 'event'];
const PASSED_OVER = ['label', 'attributes'];
const EVENTS = ['define-basic-event', 'define-house-event'];

class MefReader {
  readonly gates: Draft['gates'][number][] = [];
  readonly events: Draft['events'][number][] = [];
  readonly against: InputProblem[] = [];

  model(root: XmlElement): void {
    if (root.name === 'opsa-mef') this.#inside(root, ['define-fault-tree', 'model-data']);
    else this.#wrong(root, '<opsa-mef> around the whole tree', `<${root.name}>`, 'write it as the format has it');
  }

  #inside(element: XmlElement, known: readonly string[]): void {
    for (const child of this.#content(element)) {
      if (!known.includes(child.name)) {
        const expected = known.map(name => `<${name}>`).join(', ');
        this.#wrong(child, expected, `<${child.name}>`, 'take it out: only fault trees are read here');
      } else if (child.name === 'define-gate') this.#gate(child);
      else if (child.name === 'define-basic-event') this.#event(child, this.#chance(child));
      else if (child.name === 'define-house-event')
        this.#event(child, { is: this.#constant(this.#one(child) ?? child) });
      else this.#inside(child, child.name === 'model-data' ? EVENTS : ['define-gate', ...EVENTS]);
    }
  }

  #gate(element: XmlElement): void {
    const name = this.#named(element);
    const formula = this.#one(element);
    if (formula === undefined)
      this.#wrong(element, `a formula in gate "${name}"`, 'none', 'add and, or or atleast with its inputs');
    else if (REFERENCES.includes(formula.name))
      this.#define(element, name, { op: 'or', inputs: [this.#named(formula)] });
    else this.#formula(formula, name);
  }

  /** A formula becomes a gate with this name; the formulas inside it gates named after it. */
  #formula(element: XmlElement, name: string): void {
    const op = OPS.find(known => known === element.name);
    if (op === undefined) {
      const remedy = 'a failure never helps in these trees: say it with and, or, atleast';
      this.#wrong(element, `and, or or atleast in gate "${name}"`, `<${element.name}>`, remedy);
      this.#event(element, { is: undefined }, name); // so that it is not also missed elsewhere
      return;
    }
    const inputs = this.#content(element).map((child, n) => {
      if (REFERENCES.includes(child.name)) return this.#named(child);
      const inner = `${name} input ${n + 1}`;
      if (child.name === 'constant') this.#event(child, { is: this.#constant(child) }, inner);
      else this.#formula(child, inner);
      return inner;
    });
    this.#define(element, name, op === 'atleast' ? { op, k: whole(element), inputs } : { op, inputs });
  }

  #define({ line }: XmlElement, name: string, is: Gate): void {
    this.gates.push({ name, is, where: `line ${line}` });
  }

  #event(element: XmlElement, value: { is: Basic; written?: string }, name = this.#named(element)): void {
    this.events.push({ name, ...value, where: `line ${element.line}` });
  }

  /** Undefined where none is given: that is allowed, and the chance of the top is then not known. */
  #chance(element: XmlElement): { is: Basic; written?: string } {
    const expression = this.#one(element);
    if (expression === undefined) return { is: undefined };
    const written = expression.attributes.get('value') ?? '';
    if (expression.name === 'float' || expression.name === 'int')
      return { is: DECIMAL.test(written) ? Number(written) : Number.NaN, written: `"${written.slice(0, 40)}"` };
    const remedy = 'work it out first: rates and times are not read here';
    this.#wrong(expression, 'a chance as <float value="…"/>', `<${expression.name}>`, remedy);
    return { is: undefined };
  }

  #constant(element: XmlElement): Basic {
    const value = element.attributes.get('value') ?? '';
    if (element.name === 'constant' && (value === 'true' || value === 'false')) return value === 'true';
    const expected = '<constant value="true"/> or <constant value="false"/>';
    this.#wrong(element, expected, `<${element.name}> with "${value}"`, 'say which of the two it is');
    return undefined;
  }

  /** The one element inside; undefined where there is none. */
  #one(element: XmlElement): XmlElement | undefined {
    const [first, ...more] = this.#content(element);
    if (more.length > 0)
      this.#wrong(element, `one element inside <${element.name}>`, `${more.length + 1}`, 'keep or join them');
    return first;
  }

  /** What is in an element, without what says nothing about the tree. */
  #content(element: XmlElement): readonly XmlElement[] {
    const text = element.text.trim();
    if (text !== '')
      this.#wrong(element, `elements inside <${element.name}>`, `"${text.slice(0, 40)}"`, 'take the text out');
    return element.children.filter(({ name }) => !PASSED_OVER.includes(name));
  }

  #named(element: XmlElement): string {
    const name = element.attributes.get('name') ?? '';
    if (name === '') this.#wrong(element, `a name of <${element.name}>`, 'none', 'add name="…"');
    return name;
  }

  #wrong({ line }: XmlElement, expected: string, got: string, remedy: string): void {
    this.against.push({ path: `line ${line}`, expected, got, remedy });
  }
}

const DECIMAL = /^\s*[+-]?(\d+(\.\d*)?|\.\d+)([eE][+-]?\d+)?\s*$/;
const whole = (element: XmlElement): number => {
  const least = element.attributes.get('min')?.trim() ?? '';
  return /^\d{1,6}$/.test(least) ? Number(least) : Number.NaN;
};
