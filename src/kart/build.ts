/** From layers to the kart: every name resolved, every quantity read, every gap reported. */
import { type Measure, parseQuantity } from '../quantity/index.ts';
import { computedTorque, examineFastener } from './fastener.ts';
import { buildItem, jointCheck } from './items.ts';
import { type LayeredKart, type LayeredPart, refLists, refs } from './layers.ts';
import type { Handling, Item, Joint, KartFunction, Need, Part } from './model.ts';
import { type Names, namesOf } from './names.ts';
import type { Place, Report } from './problem.ts';
import { quantityAt, rangeAt } from './quantities.ts';
import { type HandlingFile, type JointFile, type NeedFile, wholeHandling, wholeJoint } from './shapes.ts';
import { child, locate, placeIn, type Tree, top } from './source.ts';
import { didYouMean } from './suggest.ts';
import { examine } from './validate.ts';
import { alternatives, unique } from './ways.ts';

export type Built = {
  readonly parts: Record<string, Part>;
  readonly joints: Record<string, Joint>;
  readonly items: Record<string, Item>;
  readonly functions: Record<string, KartFunction>;
  /** Where each part, item and joint check was written. */
  readonly places: ReadonlyMap<string, Place>;
};

type Making = { readonly names: Names; readonly report: Report; readonly places: Map<string, Place> };

export function build(kart: LayeredKart, report: Report): Built {
  const making: Making = { names: namesOf(kart, report), report, places: new Map() };
  const parts: Record<string, Part> = {};
  const joints: Record<string, Joint> = {};
  const items: Record<string, Item> = {};
  for (const part of kart.parts.values()) {
    parts[part.name] = buildPart(part, making);
    for (const [name, { value, place }] of part.joints) {
      const id = `${part.name}/${name}`;
      making.places.set(id, place);
      const joint = buildJoint(part, name, value, place, report);
      joints[id] = joint;
      items[id] = jointCheck({ part, joint, value, place, names: making.names, report });
    }
    for (const [key, { value, place }] of part.items) {
      const id = `${part.name}/${key}`;
      if (part.joints.has(key))
        report(place, {
          expected: 'a key that no joint of this part has',
          got: `"${key}", the name of a joint`,
          remedy: 'rename the item; what is checked on the joint belongs under its "check:"',
        });
      making.places.set(id, place);
      items[id] = buildItem({ part, key, value, place, names: making.names, report });
    }
  }
  openJoints(kart, items, making);
  return { parts, joints, items, functions: buildFunctions(kart, report), places: making.places };
}

function buildPart(part: LayeredPart, { names, report, places }: Making): Part {
  const { own, name, place } = part;
  places.set(name, place);
  if (own.system === undefined)
    report(locate(own, place, ['system']), {
      expected: 'a system',
      got: 'nothing',
      remedy: 'write "system:" with the system the part belongs to',
    });
  const one = refs(own, 'behind').flatMap(ref => names.parts(part, ref));
  const many = refLists(own, 'behind one of').map(way => way.flatMap(ref => names.parts(part, ref)));
  const fits: Record<string, Measure> = {};
  for (const key of Object.keys(own.fits ?? {})) {
    const fit = quantityAt(own.fits ?? {}, key, report);
    if (fit) fits[key] = fit;
  }
  const at = own.place ?? {};
  return {
    id: name,
    system: own.system ?? 'bodywork',
    kind: part.kind,
    removable: part.removable,
    behind: alternatives(own.behind ? [one] : many),
    takeOff: handling(part.takeOff.value, part.takeOff.place, part.removable, report),
    refit: handling(part.refit.value, part.refit.place, part.removable, report),
    joints: [...part.joints.keys()].map(joint => `${name}/${joint}`),
    disturbs: unique(part.disturbs.flatMap(ref => names.items(part, ref))),
    fits,
    carries: own.carries ?? [],
    corner: own.corner ?? 'whole',
    place: { x: quantityAt(at, 'x', report, 'length')?.si ?? 0, y: quantityAt(at, 'y', report, 'length')?.si ?? 0 },
    ...(own.maker !== undefined && { maker: own.maker }),
    ...(part.loadPath && { loadPath: part.loadPath }),
  };
}

function handling(value: Partial<HandlingFile>, place: Place, needed: boolean, report: Report): Handling {
  if (needed) examine(wholeHandling, value as Tree, place, report);
  return {
    minutes: value.minutes ?? 0,
    ...(value.people !== undefined && { people: value.people }),
    posture: value.posture ?? 'any',
    tools: value.tools ?? [],
    ...(value.caution !== undefined && { caution: value.caution }),
  };
}

function buildJoint(part: LayeredPart, name: string, file: Partial<JointFile>, place: Place, report: Report): Joint {
  examine(wholeJoint, file as Tree, place, report);
  examineFastener(file, place, report);
  const range = file.torque === 'none' ? undefined : rangeAt(file, 'torque', report, 'torque');
  const written = placeIn(file, 'torque');
  if (range && file.source === undefined)
    report(written ?? place, {
      expected: 'a torque with its source',
      got: 'a torque without',
      remedy: 'write "source:" beside it: the manual and page it stands in, or common practice',
    });
  // A torque of the owner's own does not inherit the source of the one it replaces.
  const inherited = written?.file === undefined && placeIn(file, 'source')?.file !== undefined;
  const torque = range
    ? { ...range, source: inherited ? 'the kart file, no source given' : (file.source ?? '') }
    : computedTorque(file);
  return {
    id: `${part.name}/${name}`,
    part: part.name,
    name,
    kind: file.kind ?? '',
    count: file.count ?? 1,
    ...(file.thread !== undefined && { thread: file.thread }),
    ...(file.class !== undefined && { propertyClass: file.class }),
    ...(torque && { torque }),
    retention: file.retention ?? '',
    ...(file.second !== undefined && file.second !== 'none' && { second: file.second }),
    ...(file.carries && { carries: file.carries }),
    item: `${part.name}/${name}`,
  };
}

/** `opened by` of a joint is written into the `opens` of the items it names. */
function openJoints(kart: LayeredKart, items: Record<string, Item>, { names, report }: Making): void {
  for (const part of kart.parts.values())
    for (const [name, { value }] of part.joints)
      for (const ref of refs(value, 'opened by'))
        for (const id of names.openers(part, ref)) {
          const joint = `${part.name}/${name}`;
          const item = items[id];
          if (item === undefined) continue;
          if (item.joint !== undefined)
            report(ref.place, {
              expected: 'an item that opens the joint',
              got: `"${id}", the check of a joint`,
              remedy: 'name the setting or the work that loosens this joint',
            });
          else items[id] = { ...item, opens: unique([...item.opens, joint]) };
        }
}

function buildFunctions(kart: LayeredKart, report: Report): Record<string, KartFunction> {
  const built: Record<string, KartFunction> = {};
  for (const [name, file] of Object.entries(kart.functions)) {
    const needs = buildNeed(file.needs, placeIn(file, 'needs') ?? top(undefined), kart, report);
    if (needs)
      built[name] = { name, severity: file.severity, ...(file.hazard !== undefined && { hazard: file.hazard }), needs };
    else
      report(
        placeIn(kart.functions, name) ?? top(undefined),
        {
          expected: 'at least one part that it needs',
          got: 'none: all were taken away',
          remedy: 'say which parts carry it now; until then it is not known what would fail it',
        },
        'note',
      );
  }
  for (const part of kart.parts.values())
    for (const ref of refs(part.own, 'carries'))
      if (!Object.hasOwn(kart.functions, ref.text))
        report(
          ref.place,
          {
            expected: 'a function of this kart',
            got: `"${ref.text}"`,
            remedy: didYouMean(ref.text, Object.keys(kart.functions), 'describe it under "functions:"'),
          },
          'note',
        );
  return built;
}

function buildNeed(need: NeedFile, place: Place, kart: LayeredKart, report: Report): Need | undefined {
  if (typeof need === 'string') {
    if (kart.parts.has(need)) return { part: need };
    if (!kart.gone.parts.has(need))
      report(place, {
        expected: 'a part of this kart',
        got: `"${need}", which is not there`,
        remedy: didYouMean(need, kart.parts.keys(), 'correct the name, or describe the part'),
      });
    return undefined;
  }
  const [group = '', members = []] = Object.entries(need)[0] ?? [];
  const built = members
    .map((member, i) => buildNeed(member, locate(child(need, group), place, [i]), kart, report))
    .filter(member => member !== undefined);
  if (built.length === 0) return undefined;
  if (group === 'all of') return { allOf: built };
  if (group === 'any of') return { anyOf: built };
  const k = Number(group.split(' ')[0]);
  if (k > built.length) {
    report(placeIn(need, group) ?? place, {
      expected: `at least ${k} parts for "${group}"`,
      got: `${built.length}`,
      remedy: 'name more parts, or lower the number',
    });
    return undefined;
  }
  return { kOf: k, of: built };
}

/** The dimensions of the kart; one that the template has keeps its kind of unit. */
export function buildDimensions(values: Tree, template: Tree | undefined, report: Report): Record<string, Measure> {
  const built: Record<string, Measure> = {};
  for (const key of Object.keys(values)) {
    const before = template === undefined ? undefined : parseQuantity(child(template, key));
    const value = quantityAt(values, key, report, before?.ok ? before.value.dimension : undefined);
    if (value) built[key] = value;
  }
  return built;
}
