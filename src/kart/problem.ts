/** What is wrong with a file, in one shape for every cause: where, what was expected, what came, what to do. */
export type Place = {
  /** The library file it stands in, e.g. `templates/six-speed.yaml`; undefined for the kart file itself. */
  readonly file: string | undefined;
  readonly line: number; // from 1
  readonly column: number; // from 1
  readonly path: readonly string[]; // ['parts', 'rear hub left', 'behind', '0']
};

export type Problem = {
  readonly file?: string;
  readonly line: number;
  readonly column: number;
  readonly path: string; // 'parts > rear hub left > behind > 0'
  readonly expected: string;
  readonly got: string;
  readonly remedy: string; // what to do, a sentence without its full stop
  readonly message: string; // place, expected and got in one sentence; the remedy comes beside it
  readonly severity: 'error' | 'note';
};

export type Finding = { readonly expected: string; readonly got: string; readonly remedy: string };
export type Report = (place: Place, finding: Finding, severity?: Problem['severity']) => void;

/** Collects problems, each once; the order is that of the files, kart file first. */
export class Problems {
  readonly #seen = new Map<string, Problem>();
  readonly #paths = new Set<string>();

  readonly add: Report = (place, finding, severity = 'error') => {
    const made = problem(place, finding, severity);
    // A value that was wrong, and so was left out, is not also missing.
    if (finding.got === 'nothing' && this.#paths.has(`${place.file}|${made.path}`)) return;
    this.#paths.add(`${place.file}|${made.path}`);
    this.#seen.set(`${place.file}|${place.line}|${place.column}|${made.path}|${made.expected}|${made.got}`, made);
  };

  addAll(problems: readonly Problem[]): void {
    for (const p of problems) {
      this.#paths.add(`${p.file}|${p.path}`);
      this.#seen.set(`${p.file}|${p.line}|${p.column}|${p.path}|${p.expected}|${p.got}`, p);
    }
  }
  errors(): readonly Problem[] {
    return this.#sorted('error');
  }
  notes(): readonly Problem[] {
    return this.#sorted('note');
  }
  #sorted(severity: Problem['severity']): readonly Problem[] {
    return [...this.#seen.values()]
      .filter(p => p.severity === severity)
      .sort((a, b) => compare(a.file ?? '', b.file ?? '') || a.line - b.line || a.column - b.column);
  }
}

const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

export const problem = (place: Place, finding: Finding, severity: Problem['severity'] = 'error'): Problem => {
  const path = place.path.join(' > ');
  const where = `${place.file === undefined ? '' : `${place.file}, `}line ${place.line}, column ${place.column}`;
  return {
    ...(place.file === undefined ? {} : { file: place.file }),
    line: place.line,
    column: place.column,
    path,
    ...finding,
    message: `${where}${path === '' ? '' : `, ${path}`}: expected ${finding.expected}, got ${finding.got}.`,
    severity,
  };
};

/** A value as it is quoted in an error. */
export const show = (value: unknown): string => {
  if (value === undefined || value === null) return 'nothing';
  if (typeof value === 'string') return `"${value.length > 60 ? `${value.slice(0, 60)}…` : value}"`;
  if (typeof value === 'number') return `the bare number ${value}`;
  if (Array.isArray(value)) return 'a list';
  if (typeof value === 'object') return 'a map of keys';
  return String(value);
};
