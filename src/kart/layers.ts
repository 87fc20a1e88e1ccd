/**
 * Lays a kart file over its template and both over the kinds: maps key by key, everything else whole, `none` takes
 * away, `disturbs` of a part adds up (a disturbance that somebody knew of is never lost by overriding).
 */
import type { Place, Report } from './problem.ts';
import type {
  BoxFile,
  CostsFile,
  EngineFile,
  FunctionFile,
  HandlingFile,
  ItemFile,
  JointFile,
  KartFile,
  KindFile,
  LifeFile,
  PartFile,
  PosturesFile,
  TemplateFile,
} from './shapes.ts';
import { child, isTree, locate, placeIn, setPlace, type Tree, top } from './source.ts';
import { didYouMean } from './suggest.ts';

/** Keys whose map is one value, not settings to be mixed with those below. */
const WHOLE: ReadonlySet<string> = new Set(['needs', 'torque']);

export type Ref = { readonly text: string; readonly place: Place };
export type Layered<T> = { readonly value: T; readonly place: Place };

export type LayeredPart = {
  readonly name: string;
  readonly place: Place;
  readonly kind: string;
  readonly removable: boolean;
  readonly loadPath: KindFile['load path'];
  readonly own: PartFile; // template and kart file
  readonly takeOff: Layered<Partial<HandlingFile>>;
  readonly refit: Layered<Partial<HandlingFile>>;
  readonly disturbs: readonly Ref[];
  readonly joints: ReadonlyMap<string, Layered<Partial<JointFile>>>;
  readonly items: ReadonlyMap<string, Layered<Partial<ItemFile>>>;
};

/** What was taken away on purpose, or is broken and was reported: naming it is no further error. */
export type Gone = {
  readonly parts: Set<string>;
  readonly kinds: Set<string>;
  readonly keys: Set<string>; // of items
  readonly ids: Set<string>; // of items and joints
};

export type LayeredKart = {
  readonly parts: ReadonlyMap<string, LayeredPart>;
  readonly gone: Gone;
  readonly dimensions: Tree;
  readonly functions: Readonly<Record<string, FunctionFile>>;
  readonly engine: EngineFile;
  readonly box: BoxFile;
  readonly lives: Readonly<Record<string, LifeFile>>;
  readonly costs: CostsFile;
  readonly postures: PosturesFile;
};

/** Puts `over` on `base`; neither is changed, and every key keeps the place it came from. */
export function overlay(base: Tree, over: Tree): Tree {
  const result: Tree = {};
  for (const layer of [base, over])
    for (const [key, value] of Object.entries(layer)) {
      const below = child(result, key);
      result[key] = !WHOLE.has(key) && isTree(below) && isTree(value) ? overlay(below, value) : value;
      setPlace(result, key, placeIn(layer, key));
    }
  for (const [one, other] of [
    ['behind', 'behind one of'],
    ['behind one of', 'behind'],
  ] as const)
    if (one in over && !(other in over)) delete result[other];
  return result;
}

type Layer = Tree | undefined;

/** Lays named things over one another; `none` takes away what lies below. */
function fold(layers: readonly Layer[], report: Report): { kept: Map<string, Layered<Tree>>; gone: Set<string> } {
  const kept = new Map<string, Layered<Tree>>();
  const gone = new Set<string>();
  for (const layer of layers)
    for (const [name, value] of Object.entries(layer ?? {})) {
      const place = placeIn(layer ?? {}, name) ?? top(undefined);
      const below = kept.get(name);
      if (isTree(value)) {
        kept.set(name, { value: below ? overlay(below.value, value) : value, place });
        gone.delete(name);
      } else if (below) {
        kept.delete(name);
        gone.add(name);
      } else
        report(place, {
          expected: 'the name of something to take away',
          got: `"${name}", which is not there`,
          remedy: didYouMean(name, kept.keys(), 'take the line out'),
        });
    }
  return { kept, gone };
}

export function layKart(
  file: KartFile,
  template: TemplateFile | undefined,
  kinds: ReadonlyMap<string, KindFile>,
  report: Report,
): LayeredKart {
  const gone: Gone = { parts: new Set(), kinds: new Set(), keys: new Set(), ids: new Set() };
  const parts = new Map<string, LayeredPart>();
  const layers = [template?.parts as Layer, file.parts as Layer];
  const folded = fold(layers, report);
  const mark = (part: LayeredPart): void => {
    gone.parts.add(part.name);
    gone.kinds.add(part.kind);
    for (const key of part.items.keys()) gone.keys.add(key);
  };
  for (const [name, { value, place }] of folded.kept) {
    const own = value as PartFile;
    const kind = own.kind === undefined ? undefined : kinds.get(own.kind);
    if (kind === undefined) {
      report(locate(value, place, ['kind']), {
        expected: 'a kind that is known',
        got: own.kind === undefined ? 'nothing' : `"${own.kind}"`,
        remedy:
          own.kind === undefined
            ? didYouMean(name, Object.keys(template?.parts ?? {}), 'write "kind:" with the name of a kind')
            : didYouMean(own.kind, kinds.keys(), 'use a kind of the library, or add one to it'),
      });
      gone.parts.add(name);
      continue;
    }
    const below = child(template?.parts, name);
    parts.set(name, layPart(name, place, own, kind, [below, child(file.parts, name)].filter(isTree), gone, report));
  }
  const quiet: Report = () => {};
  for (const name of folded.gone) {
    const was = child(template?.parts, name) as PartFile | undefined;
    const kind = was?.kind === undefined ? undefined : kinds.get(was.kind);
    gone.parts.add(name);
    if (was && kind) mark(layPart(name, top(undefined), was, kind, [was as Tree], gone, quiet));
  }
  return {
    parts,
    gone,
    dimensions: overlay((template?.dimensions ?? {}) as Tree, (file.dimensions ?? {}) as Tree),
    functions: overlay((template?.functions ?? {}) as Tree, (file.functions ?? {}) as Tree) as Record<
      string,
      FunctionFile
    >,
    engine: overlay((template?.engine ?? {}) as Tree, (file.engine ?? {}) as Tree) as EngineFile,
    box: overlay((template?.box ?? {}) as Tree, (file.box ?? {}) as Tree) as BoxFile,
    lives: overlay((template?.lives ?? {}) as Tree, (file.lives ?? {}) as Tree) as Record<string, LifeFile>,
    costs: overlay((template?.costs ?? {}) as Tree, (file.costs ?? {}) as Tree) as CostsFile,
    postures: overlay((template?.postures ?? {}) as Tree, (file.postures ?? {}) as Tree) as PosturesFile,
  };
}

function layPart(
  name: string,
  place: Place,
  own: PartFile,
  kind: KindFile,
  layers: readonly Tree[],
  gone: Gone,
  report: Report,
): LayeredPart {
  const joints = fold([kind.joints as Layer, ...layers.map(l => l.joints as Layer)], report);
  const items = fold([kind.items as Layer, ...layers.map(l => l.items as Layer)], report);
  for (const joint of joints.gone) gone.ids.add(`${name}/${joint}`);
  for (const item of items.gone) {
    gone.ids.add(`${name}/${item}`);
    gone.keys.add(item);
  }
  const handling = (key: 'take off' | 'refit'): Layered<Partial<HandlingFile>> => ({
    value: overlay((kind[key] ?? {}) as Tree, (own[key] ?? {}) as Tree),
    place: placeIn(own, key) ?? placeIn(kind, key) ?? { ...place, path: [...place.path, key] },
  });
  return {
    name,
    place,
    kind: own.kind ?? '',
    removable: own.removable ?? kind.removable ?? true,
    loadPath: kind['load path'],
    own,
    takeOff: handling('take off'),
    refit: own.refit || kind.refit ? handling('refit') : handling('take off'),
    disturbs: [kind as Tree, ...layers].flatMap(layer => refs(layer, 'disturbs')),
    joints: joints.kept as ReadonlyMap<string, Layered<Partial<JointFile>>>,
    items: items.kept as ReadonlyMap<string, Layered<Partial<ItemFile>>>,
  };
}

/** The names in a list, each with its place. */
export function refs(holder: object, key: string): readonly Ref[] {
  const list = child(holder, key);
  if (!Array.isArray(list)) return [];
  return list.map((text, i) => ({
    text: String(text),
    place: locate(list, placeIn(holder, key) ?? top(undefined), [i]),
  }));
}

/** The same for a list of lists. */
export function refLists(holder: object, key: string): readonly (readonly Ref[])[] {
  const list = child(holder, key);
  if (!Array.isArray(list)) return [];
  return list.map((inner: unknown[], n) =>
    inner.map((text, i) => ({ text: String(text), place: locate(inner, placeIn(list, n) ?? top(undefined), [i]) })),
  );
}
