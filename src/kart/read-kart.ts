/** Reads a kart file: its text and the library in, a kart found consistent or every reason why not out. */
import { build, buildDimensions } from './build.ts';
import { checkAccess, checkDisturbs, checkReach, dropUndoneWays } from './check-reach.ts';
import { costsOf } from './costs.ts';
import { engineAndBox } from './engine-and-box.ts';
import { layKart } from './layers.ts';
import { type Library, readLibrary } from './library.ts';
import { livesOfKinds } from './lives.ts';
import type { Kart, RuleSet } from './model.ts';
import { posturesOf } from './postures.ts';
import { type Place, type Problem, Problems, type Report } from './problem.ts';
import { type KartFile, kartShape } from './shapes.ts';
import { child, locate, placeIn, readYaml, type Tree, top } from './source.ts';
import { didYouMean } from './suggest.ts';
import { validate } from './validate.ts';
import { circleInWork } from './work-order.ts';

export type KartRead =
  | { readonly ok: true; readonly kart: Kart; readonly notes: readonly Problem[] }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/**
 * Never throws for what stands in the texts. `problems` holds every error, those of the kart file first, by line;
 * `notes` holds what is allowed but worth a look.
 */
export function readKart(text: string, library: Library): KartRead {
  const problems = new Problems();
  const tree = readYaml(text, undefined, problems.add);
  if (tree === undefined) return { ok: false, problems: problems.errors() };
  validate(kartShape, tree, top(undefined), problems.add);
  const kart = assemble(tree as KartFile, library, problems);
  const errors = problems.errors();
  return kart && errors.length === 0 ? { ok: true, kart, notes: problems.notes() } : { ok: false, problems: errors };
}

function assemble(file: KartFile, library: Library, problems: Problems): Kart | undefined {
  const { kinds, templates, rules, instruments, problems: libraryProblems } = readLibrary(library);
  const report = problems.add;
  problems.addAll(libraryProblems);
  const pick = <T>(key: 'template' | 'rules', id: string | undefined, from: ReadonlyMap<string, T>, place: Place) => {
    const found = id === undefined ? undefined : from.get(id);
    if (id !== undefined && found === undefined)
      report(place, {
        expected: key === 'rules' ? 'a rule set that is known' : 'a template that is known',
        got: `"${id}"`,
        remedy: didYouMean(id, from.keys(), `take "${key}:" out`),
      });
    return found;
  };
  const template = pick('template', file.template, templates, locate(file, top(undefined), ['template']));
  if (file.template !== undefined && template === undefined) return undefined; // all else would only be a consequence
  if (template) problems.addAll(template.problems);
  const holder = file.rules === undefined ? template?.value : file;
  const ruleFile = pick('rules', holder?.rules, rules, locate(holder, top(template?.file), ['rules']));
  if (ruleFile) problems.addAll(ruleFile.problems);

  const layered = layKart(file, template?.value, kinds, report);
  const dimensions = buildDimensions(layered.dimensions, template?.value.dimensions as Tree | undefined, report);
  const built = build(layered, report);
  checkReach(built.parts, built.places, report);
  checkDisturbs(built.items, built.places, report);
  checkAccess(built, built.places, report);
  const items = dropUndoneWays(built, built.places, report);
  const kart: Kart = {
    format: 1,
    name: file.name ?? '',
    ...(file.template !== undefined && { template: file.template }),
    invented: file.invented ?? template?.value.invented ?? false,
    ...(ruleFile && { rules: ruleFile.value }),
    ...(Object.keys(instruments).length > 0 && { instruments }),
    dimensions,
    ...unmeasuredOf(dimensions, file.dimensions as Tree | undefined, template?.value.dimensions as Tree | undefined),
    parts: built.parts,
    joints: built.joints,
    items,
    functions: built.functions,
    ...engineAndBox(layered, report),
    ...livesOfKinds(layered, kinds, report),
    ...costsOf(layered, kinds, report),
    ...posturesOf(layered, report),
  };
  if (Object.keys(kart.parts).length === 0)
    report(top(undefined), {
      expected: 'a kart of at least one part',
      got: 'none: nothing could ever stand against it',
      remedy: 'name a template, "template: six-speed gearbox", or give parts',
    });
  checkUnits(kart, built.places, report);
  checkLimits(kart, layered.dimensions, report);
  if (problems.errors().length === 0) checkOrder(kart, built.places, report);
  return kart;
}

/** What the file leaves to its template, or repeats word for word as a new file does. */
function unmeasuredOf(
  dimensions: Kart['dimensions'],
  file: Tree | undefined,
  template: Tree | undefined,
): Pick<Kart, 'unmeasured'> {
  const names = Object.keys(dimensions).filter(name => {
    const below = child(template, name);
    return below !== undefined && (child(file, name) ?? below) === below;
  });
  return names.length === 0 ? {} : { unmeasured: names };
}

/** With every part off and every item due, there must be an order to do it all in. Told once all else is right. */
function checkOrder(kart: Kart, places: ReadonlyMap<string, Place>, report: Report): void {
  const circle = circleInWork(kart);
  if (circle === undefined) return;
  const named = circle
    .map(step => places.get(step.replace(/^(?:take off|refit|do) /, '')))
    .filter(p => p !== undefined);
  report(named.find(p => p.file === undefined) ?? named[0] ?? top(undefined), {
    expected: 'an order in which everything can be done',
    got: `a loop: ${[...circle, circle[0]].map(step => `"${step}"`).join(' comes before ')}`,
    remedy: 'take out the "disturbs", "needs off", "behind" or "opened by" that is not so in practice',
  });
}

/** A reading, the dimension it is a reading of and the limit it keeps to are of one kind. */
function checkUnits(kart: Kart, places: ReadonlyMap<string, Place>, report: Report): void {
  for (const { id, measure } of Object.values(kart.items)) {
    if (measure === undefined) continue;
    const limit = own(kart.rules?.limits, measure.rule);
    const stated = measure.target ?? measure.min ?? measure.max ?? measure.plausible?.min;
    const others = [
      ['dimension', own(kart.dimensions, measure.dimension)],
      ['rule', limit?.max ?? limit?.min],
    ] as const;
    for (const [key, other] of others)
      if (other !== undefined && stated !== undefined && other.dimension !== stated.dimension)
        report(locate(undefined, places.get(id) ?? top(undefined), ['measure', key]), {
          expected: `a ${other.dimension}, as "${measure[key]}" is`,
          got: `a ${stated.dimension} in ${measure.unit}`,
          remedy: `ask for it in a unit of ${other.dimension}, or name another ${key}`,
        });
  }
}

/** A dimension outside the limit of the same name is a note here: the plan and the release say it again. */
function checkLimits(kart: Kart, written: Tree, report: Report): void {
  for (const [name, value] of Object.entries(kart.dimensions)) {
    const limit = own(kart.rules?.limits, name);
    const bound = limit?.max ?? limit?.min;
    if (limit === undefined || bound === undefined) continue;
    const place = placeIn(written, name) ?? top(undefined);
    const said = limitText(limit, kart.rules);
    if (bound.dimension !== value.dimension)
      report(place, {
        expected: `a ${bound.dimension}, as the limit ${said}`,
        got: value.text,
        remedy: `write it in ${bound.unit} or another unit of ${bound.dimension}`,
      });
    else if (!(value.si <= (limit.max?.si ?? Number.POSITIVE_INFINITY) && value.si >= (limit.min?.si ?? 0)))
      report(place, { expected: said, got: value.text, remedy: 'measure again; bring it inside the limit' }, 'note');
  }
}

const own = <T>(record: Readonly<Record<string, T>> | undefined, key: string | undefined): T | undefined =>
  record !== undefined && key !== undefined && Object.hasOwn(record, key) ? record[key] : undefined;

const limitText = (limit: RuleSet['limits'][string], rules: RuleSet | undefined): string =>
  [limit.min && `at least ${limit.min.text}`, limit.max && `at most ${limit.max.text}`].filter(Boolean).join(', ') +
  (rules ? ` (${rules.id})` : '');
