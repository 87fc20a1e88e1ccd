/** The items of a part, and the check that every joint owes. */
import { type Dimension, findUnit, UNITS } from '../quantity/index.ts';
import { parseLapse } from './lapse.ts';
import { type LayeredPart, overlay, refLists, refs } from './layers.ts';
import type { Item, ItemMeasure, Joint } from './model.ts';
import type { Names } from './names.ts';
import { type Place, type Report, show } from './problem.ts';
import { quantityAt, rangeAt } from './quantities.ts';
import { type ItemFile, type JointFile, wholeItem } from './shapes.ts';
import { locate, placeIn, type Tree } from './source.ts';
import { didYouMean } from './suggest.ts';
import { examine } from './validate.ts';
import { alternatives, unique } from './ways.ts';

type Making<T> = {
  readonly part: LayeredPart;
  readonly value: Partial<T>;
  readonly place: Place;
  readonly names: Names;
  readonly report: Report;
};

export function buildItem(making: Making<ItemFile> & { readonly key: string }): Item {
  const { part, key, value, place, names, report } = making;
  examine(wholeItem, value as Tree, place, report);
  const measure = value.measure && buildMeasure(value.measure, placeIn(value, 'measure') ?? place, report);
  return {
    id: `${part.name}/${key}`,
    key,
    part: part.name,
    system: part.own.system ?? 'bodywork',
    title: value.title ?? key,
    action: value.action ?? 'look',
    how: value.how ?? '',
    accept: value.accept ?? '',
    source: value.source ?? '',
    grade: value.grade ?? 'safety',
    when: (value.when ?? []).map(parseLapse),
    minutes: value.minutes ?? 0,
    ...(value.people !== undefined && { people: value.people }),
    posture: value.posture ?? 'any',
    needsOff: alternatives(refLists(value, 'needs off').map(way => way.flatMap(ref => names.parts(part, ref)))),
    complete: value.complete ?? false,
    disturbs: unique(refs(value, 'disturbs').flatMap(ref => names.items(part, ref))),
    opens: unique(refs(value, 'opens').flatMap(ref => names.joints(part, ref))),
    secondLook: value['second look'] ?? false,
    ...(measure && { measure }),
    tools: value.tools ?? [],
    consumables: value.consumables ?? [],
    ...(value.caution !== undefined && { caution: value.caution }),
    ...(value.reason !== undefined && { reason: value.reason }),
  };
}

/** The check of a joint: what its `check:` says, over what every joint owes. */
export function jointCheck(making: Making<JointFile> & { readonly joint: Joint }): Item {
  const { part, value, place, joint, names, report } = making;
  const { torque, second, name } = joint;
  const single = torque !== undefined && torque.min.si === torque.max.si;
  const range =
    torque &&
    (single ? torque.max.text : `${torque.min.text} to ${torque.max.text}${torque.computed ? ', computed' : ''}`);
  const pieces = joint.count > 1 ? `all ${joint.count}` : 'it';
  const owed: ItemFile = {
    title: `${name.charAt(0).toUpperCase()}${name.slice(1)} made${second === undefined ? '' : ', second retention in place'}`,
    action: torque ? 'torque' : 'secure',
    how: torque
      ? `pull ${pieces} to the torque, then look at the retention`
      : `fit the retention on ${pieces}, then pull at it by hand`,
    accept: [range, joint.retention, second && `${second} in place`].filter(Boolean).join('; '),
    source: torque?.source || value.source || 'common practice',
    grade: 'safety',
    when: ['each event', 'disturbed'],
    minutes: 1,
    'second look': false,
    ...(torque?.computed && { caution: torque.computed.join(' ') }),
    ...(torque && {
      measure: {
        unit: torque.max.unit,
        ...(single ? { target: torque.max.text } : { min: torque.min.text, max: torque.max.text }),
      },
    }),
  };
  const check = placeIn(value, 'check') ?? place;
  const file = overlay(owed as Tree, (value.check ?? {}) as Tree) as Partial<ItemFile>;
  return { ...buildItem({ part, key: name, value: file, place: check, names, report }), joint: joint.id };
}

function buildMeasure(
  file: NonNullable<Partial<ItemFile>['measure']>,
  place: Place,
  report: Report,
): ItemMeasure | undefined {
  const unit = findUnit(file.unit ?? '');
  if (file.unit === undefined) return undefined; // reported by the shape
  if (unit === undefined) {
    report(locate(file, place, ['unit']), {
      expected: 'a unit that is known',
      got: show(file.unit),
      remedy: didYouMean(file.unit, new Set(UNITS.map(u => u.symbol)), 'use mm, N·m, bar or another unit in use'),
    });
    return undefined;
  }
  const dimension: Dimension = unit.dimension;
  const target = quantityAt(file, 'target', report, dimension);
  const min = quantityAt(file, 'min', report, dimension);
  const max = quantityAt(file, 'max', report, dimension);
  const plausible = rangeAt(file, 'plausible', report, dimension);
  const rising = [plausible?.min, min, target, max, plausible?.max].filter(m => m !== undefined);
  for (const [i, low] of rising.entries()) {
    const high = rising[i + 1];
    if (high !== undefined && low.si > high.si)
      report(place, {
        expected: 'plausible range, min, target and max in rising order',
        got: `${low.text} before ${high.text}`,
        remedy: 'correct the one that is wrong',
      });
  }
  return {
    unit: unit.symbol,
    ...(target && { target }),
    ...(min && { min }),
    ...(max && { max }),
    ...(plausible && { plausible }),
    ...(file.rule !== undefined && { rule: file.rule }),
    ...(file.number !== undefined && { number: file.number }),
    ...(file.dimension !== undefined && { dimension: file.dimension }),
  };
}
