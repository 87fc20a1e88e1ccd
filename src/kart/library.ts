/** The kinds, templates and rule sets that a kart file may name: plain texts handed in, read once and kept. */
import type { Limit, RuleSet } from './model.ts';
import { type Problem, Problems, type Report, show } from './problem.ts';
import { quantityAt } from './quantities.ts';
import { type KindFile, kindsShape, type RulesFile, rulesShape, type TemplateFile, templateShape } from './shapes.ts';
import { child, placeIn, readYaml, type Tree, top } from './source.ts';
import { validate } from './validate.ts';

/** File name → YAML text, in each of the three folders of `data/`. */
export type Library = {
  readonly kinds: Readonly<Record<string, string>>;
  readonly templates: Readonly<Record<string, string>>;
  readonly rules: Readonly<Record<string, string>>;
};

export type LibraryFile<T> = { readonly file: string; readonly value: T; readonly problems: readonly Problem[] };

export type ReadLibrary = {
  readonly kinds: ReadonlyMap<string, KindFile>;
  readonly templates: ReadonlyMap<string, LibraryFile<TemplateFile>>;
  readonly rules: ReadonlyMap<string, LibraryFile<RuleSet>>;
  /** What is wrong with the kinds, and with files that say not even their own name. */
  readonly problems: readonly Problem[];
};

const known = new WeakMap<Library, ReadLibrary>();

/** Reads every text of the library; the same object is read only once. Never throws for what stands in the texts. */
export function readLibrary(library: Library): ReadLibrary {
  const before = known.get(library);
  if (before) return before;
  const problems = new Problems();
  const made: ReadLibrary = {
    kinds: readKinds(library.kinds, problems.add),
    templates: readFiles(library.templates, 'templates', 'template', problems, (tree, file, report) => {
      validate(templateShape, tree, top(file), report);
      return tree as TemplateFile;
    }),
    rules: readFiles(library.rules, 'rules', 'id', problems, (tree, file, report) => {
      validate(rulesShape, tree, top(file), report);
      return ruleSet(tree as RulesFile, report);
    }),
    problems: problems.errors(),
  };
  const result = { ...made, problems: problems.errors() };
  known.set(library, result);
  return result;
}

const byName = (files: Readonly<Record<string, string>>): [string, string][] =>
  Object.entries(files).sort(([a], [b]) => (a < b ? -1 : 1));

function readKinds(files: Readonly<Record<string, string>>, report: Report): ReadonlyMap<string, KindFile> {
  const kinds = new Map<string, KindFile>();
  for (const [name, text] of byName(files)) {
    const file = `kinds/${name}`;
    const tree = readYaml(text, file, report);
    if (tree === undefined) continue;
    validate(kindsShape, tree, top(file), report);
    for (const [kind, value] of Object.entries(tree as Record<string, KindFile>)) {
      if (kinds.has(kind))
        report(placeIn(tree, kind) ?? top(file), {
          expected: 'each kind once',
          got: `a second "${kind}"`,
          remedy: 'give one of the two another name',
        });
      else kinds.set(kind, value);
    }
  }
  return kinds;
}

function readFiles<T>(
  files: Readonly<Record<string, string>>,
  folder: string,
  idKey: string,
  all: Problems,
  read: (tree: Tree, file: string, report: Report) => T,
): ReadonlyMap<string, LibraryFile<T>> {
  const found = new Map<string, LibraryFile<T>>();
  for (const [name, text] of byName(files)) {
    const file = `${folder}/${name}`;
    const own = new Problems();
    const tree = readYaml(text, file, own.add);
    const id = child(tree, idKey);
    if (tree === undefined || typeof id !== 'string' || found.has(id)) {
      all.addAll(own.errors());
      if (tree !== undefined)
        all.add(top(file), {
          expected: `"${idKey}:" with a name of its own`,
          got: show(id),
          remedy: `write "${idKey}:" with a name that no other file has`,
        });
      continue;
    }
    const value = read(tree, file, own.add);
    found.set(id, { file, value, problems: own.errors() });
  }
  return found;
}

function ruleSet(file: RulesFile, report: Report): RuleSet {
  const limits: Record<string, Limit> = {};
  for (const [key, limit] of Object.entries(file.limits ?? {})) {
    const min = quantityAt(limit, 'min', report);
    const max = quantityAt(limit, 'max', report, min?.dimension);
    limits[key] = {
      ...(min && { min }),
      ...(max && { max }),
      ...(limit.text !== undefined && { text: limit.text }),
      source: limit.source,
    };
  }
  return { id: file.id, body: file.body, year: file.year, note: file.note, limits };
}
