/** The kinds, templates and rule sets that a kart file may name: plain texts handed in, read once and kept. */
import type { z } from 'zod';
import { instrumentFrom } from './instruments.ts';
import type { Instrument, Limit, RuleSet } from './model.ts';
import { type Packed, pack, unpack } from './pack.ts';
import { type Problem, Problems, type Report, show } from './problem.ts';
import { quantityAt } from './quantities.ts';
import {
  type InstrumentFile,
  instrumentsShape,
  type KindFile,
  kindsShape,
  type RulesFile,
  rulesShape,
  type TemplateFile,
  templateShape,
} from './shapes.ts';
import { child, placeIn, readYaml, type Tree, top } from './source.ts';
import { validate } from './validate.ts';

/** File name → YAML text, in each folder of `data/`. */
export type LibraryTexts = {
  readonly kinds: Readonly<Record<string, string>>;
  readonly templates: Readonly<Record<string, string>>;
  readonly rules: Readonly<Record<string, string>>;
  readonly instruments?: Readonly<Record<string, string>>;
};

/** 'kinds/brakes.yaml' → its text read before, and found to have the right shape. */
export type Packs = Readonly<Record<string, Packed>>;
export type Library = LibraryTexts & { readonly packs?: Packs };

export type LibraryFile<T> = { readonly file: string; readonly value: T; readonly problems: readonly Problem[] };

export type ReadLibrary = {
  readonly kinds: ReadonlyMap<string, KindFile>;
  readonly templates: ReadonlyMap<string, LibraryFile<TemplateFile>>;
  readonly rules: ReadonlyMap<string, LibraryFile<RuleSet>>;
  readonly instruments: Readonly<Record<string, Instrument>>;
  /** What is wrong with the kinds and instruments, and with files that say not even their own name. */
  readonly problems: readonly Problem[];
};

const known = new WeakMap<Library, ReadLibrary>();

/** Reads every text of the library; the same object is read only once. Never throws for what stands in the texts. */
export function readLibrary(library: Library): ReadLibrary {
  const before = known.get(library);
  if (before) return before;
  const problems = new Problems();
  const { packs = {} } = library;
  const made: ReadLibrary = {
    kinds: readNamed<KindFile>(library.kinds, { folder: 'kinds', shape: kindsShape, packs }, problems.add),
    instruments: readInstruments(library, packs, problems.add),
    templates: readFiles(library.templates, { ...TEMPLATES, packs }, problems, tree => tree as TemplateFile),
    rules: readFiles(library.rules, { ...RULES, packs }, problems, (tree, report) =>
      ruleSet(tree as RulesFile, report),
    ),
    problems: problems.errors(),
  };
  const result = { ...made, problems: problems.errors() };
  known.set(library, result);
  return result;
}

/** Every text of the library that is right as it stands, ready to be read without its YAML. */
export function packLibrary(library: LibraryTexts): Packs {
  const packs: Record<string, Packed> = {};
  for (const [folder, shape] of [
    ['kinds', kindsShape],
    ['templates', templateShape],
    ['rules', rulesShape],
    ['instruments', instrumentsShape],
  ] as const)
    for (const [name, text] of byName(library[folder] ?? {})) {
      const file = `${folder}/${name}`;
      const problems = new Problems();
      const tree = readYaml(text, file, problems.add);
      if (tree === undefined) continue;
      validate(shape, tree, top(file), problems.add);
      if (problems.errors().length === 0 && problems.notes().length === 0) packs[file] = pack(tree);
    }
  return packs;
}

const byName = (files: Readonly<Record<string, string>>): [string, string][] =>
  Object.entries(files).sort(([a], [b]) => (a < b ? -1 : 1));

function readInstruments(library: LibraryTexts, packs: Packs, report: Report): Readonly<Record<string, Instrument>> {
  const shelf = { folder: 'instruments', shape: instrumentsShape, packs };
  const files = readNamed<InstrumentFile>(library.instruments ?? {}, shelf, report);
  const read = [...files].map(([name, file]) => instrumentFrom(name, file, report));
  return Object.fromEntries(read.flatMap(one => (one === undefined ? [] : [[one.name, one]])));
}

/** Files that are each a map of names, laid together. */
function readNamed<T>(
  files: Readonly<Record<string, string>>,
  { folder, shape, packs }: { readonly folder: string; readonly shape: z.ZodType; readonly packs: Packs },
  report: Report,
): ReadonlyMap<string, T> {
  const found = new Map<string, T>();
  for (const [name, text] of byName(files)) {
    const file = `${folder}/${name}`;
    const packed = packs[file];
    const tree = packed === undefined ? readYaml(text, file, report) : unpack(packed, file);
    if (tree === undefined) continue;
    if (packed === undefined) validate(shape, tree, top(file), report);
    for (const [key, value] of Object.entries(tree as Record<string, T>)) {
      if (found.has(key))
        report(placeIn(tree, key) ?? top(file), {
          expected: `each of the ${folder} once`,
          got: `a second "${key}"`,
          remedy: 'give one of the two another name',
        });
      else found.set(key, value);
    }
  }
  return found;
}

type Shelved = { readonly folder: string; readonly idKey: string; readonly shape: z.ZodType };
const TEMPLATES: Shelved = { folder: 'templates', idKey: 'template', shape: templateShape };
const RULES: Shelved = { folder: 'rules', idKey: 'id', shape: rulesShape };

function readFiles<T>(
  files: Readonly<Record<string, string>>,
  { folder, idKey, shape, packs }: Shelved & { readonly packs: Packs },
  all: Problems,
  read: (tree: Tree, report: Report) => T,
): ReadonlyMap<string, LibraryFile<T>> {
  const found = new Map<string, LibraryFile<T>>();
  for (const [name, text] of byName(files)) {
    const file = `${folder}/${name}`;
    const own = new Problems();
    const packed = packs[file];
    const tree = packed === undefined ? readYaml(text, file, own.add) : unpack(packed, file);
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
    if (packed === undefined) validate(shape, tree, top(file), own.add);
    const value = read(tree, own.add);
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
