/** Checks, joints and settings: the item is there, the part is on, the value can be, and a pass is one. */
import { inOrder, type Reading } from '../book/index.ts';
import type { Item } from '../kart/index.ts';
import { limitsOf } from '../prep/index.ts';
import type { Check, Context } from './context.ts';
import { judgeReading } from './judge.ts';
import { type Problem, refuse } from './problem.ts';
import { inside, limitsInWords, said } from './reading.ts';
import { suggestion } from './words.ts';

export function itemKnown(id: string, { kart, where }: Context): readonly Problem[] {
  if (kart.items[id]) return [];
  return [
    refuse(
      'unknown item',
      `${where}.item`,
      `Expected an item of kart "${kart.name}", got "${id}".`,
      `Use part/item as in the plan.${suggestion(id, Object.keys(kart.items))}`,
    ),
  ];
}

export const checkedRight: Check<'checked'> = (payload, context) => {
  const item = context.kart.items[payload.item];
  if (!item) return itemKnown(payload.item, context);
  const problems = [...reasonGiven(payload, context), ...valueCanBe(item, payload.reading, context)];
  if (item.joint !== undefined && payload.result === 'pass') problems.push(...partOn(item.part, context));
  if (payload.result === 'pass') problems.push(...passIsOne(item, payload, context));
  if (payload.secondLook) problems.push(...secondLookIsOne(item, context));
  return problems;
};

export const madeRight: Check<'made'> = (payload, context) => {
  const joint = context.kart.joints[payload.joint];
  const item = joint && context.kart.items[joint.item];
  if (!joint || !item) return jointKnown(payload.joint, context);
  const problems = [...partOn(joint.part, context), ...valueCanBe(item, payload.reading, context)];
  problems.push(...passIsOne(item, payload, context));
  if (payload.secondLook) problems.push(...secondLookIsOne(item, context));
  return problems;
};

export const loosenedRight: Check<'loosened'> = (payload, context) =>
  context.kart.joints[payload.joint] ? [] : jointKnown(payload.joint, context);

export const setRight: Check<'set'> = (payload, context) => {
  const item = context.kart.items[payload.item];
  return item ? valueCanBe(item, payload.reading, context) : itemKnown(payload.item, context);
};

export function jointKnown(id: string, { kart, where }: Context): readonly Problem[] {
  return [
    refuse(
      'unknown joint',
      `${where}.joint`,
      `Expected a joint of kart "${kart.name}", got "${id}".`,
      `Use part/joint as in the plan.${suggestion(id, Object.keys(kart.joints))}`,
    ),
  ];
}

function partOn(id: string, { state, where }: Context): readonly Problem[] {
  if (state.parts[id]?.on !== false) return [];
  return [
    refuse(
      'part is off',
      where,
      `Expected ${id} to be on the kart before its joint is made, and it is off.`,
      'Record first that it was fitted.',
    ),
  ];
}

function reasonGiven(payload: { result: string; why?: string | undefined }, { where }: Context): readonly Problem[] {
  if (payload.result === 'pass' || payload.why !== undefined) return [];
  const asked = payload.result === 'fail' ? 'what is wrong' : 'why it could not be done';
  return [
    refuse('why missing', `${where}.why`, `Expected ${asked} with "${payload.result}", got nothing.`, `Say ${asked}.`),
  ];
}

type Value = { readonly si: number; readonly text: string; readonly unit: string };

/** A value further out than a hand could bring it is a slip more often than a find: it is asked again, not refused. */
function valueCanBe(item: Item, reading: Value | undefined, { sure, where }: Context): readonly Problem[] {
  const plausible = item.measure?.plausible;
  if (!reading || sure || !plausible || inside(reading.si, plausible)) return [];
  return [
    refuse(
      'far outside',
      `${where}.reading`,
      `Expected ${item.title} ${limitsInWords(plausible)}, got ${said(reading, item)}.`,
      'Measure again; if it is what you read, record the same once more as sure.',
    ),
  ];
}

function passIsOne(
  item: Item,
  payload: { readonly reading?: Reading | undefined; readonly secondLook?: boolean | undefined },
  { kart, where }: Context,
): readonly Problem[] {
  const { reading } = payload;
  if (!reading) {
    if (item.action !== 'measure' || !item.measure || payload.secondLook) return [];
    return [
      refuse(
        'reading missing',
        `${where}.reading`,
        `Expected the value that was measured for ${item.title}, got none.`,
        `Give it in ${item.measure.unit}, or say that it was not possible and why.`,
      ),
    ];
  }
  const limits = limitsOf(kart, item);
  if (inside(reading.si, limits)) return [];
  const move = judgeReading(kart, item, reading)?.move;
  return [
    refuse(
      'outside limits',
      `${where}.reading`,
      `Expected ${limitsInWords(limits)} for a pass of ${item.title}, got ${said(reading, item)}.`,
      move
        ? `${move} Then measure again; or record it as a fail with what is wrong.`
        : 'Record it as a fail with what is wrong, or correct it and measure again.',
    ),
  ];
}

const samePerson = (a: string, b: string): boolean => a.trim().toLowerCase() === b.trim().toLowerCase();

/** Alone, common practice: another time, half an hour or more, or after another job; or a walk-round begun by a note of its own. */
const ALONE = { waited: 30, walkRound: 10 } as const; // minutes since the first look; within ten, risk counts both looks as one

/** A second look is another look: there is a first one that passed, and the same hand did something else in between. */
function secondLookIsOne(item: Item, { state, facts, at, by, where }: Context): readonly Problem[] {
  const seen = state.items[item.id];
  const first = seen?.pass;
  if (!first || (seen.fail && seen.fail.pos > first.pos))
    return [
      refuse(
        'no first look',
        `${where}.secondLook`,
        `Expected a first look that passed ${item.title} before its second look, and there is none that counts.`,
        'Record this as the first look; the second is due after it.',
      ),
    ];
  const theirs = inOrder(facts.filter(fact => samePerson(fact.by, by) && !state.struck[fact.id]));
  const look = theirs.findIndex(fact => fact.id === first.fact);
  if (look < 0) return [];
  const since = theirs.slice(look + 1);
  const minutes = (Date.parse(at) - Date.parse(first.at)) / 60_000;
  const begun = since.length > 0 && minutes >= ALONE.walkRound;
  if (since.some(({ kind }) => kind !== 'note') || begun || minutes >= ALONE.waited) return [];
  return [
    refuse(
      'same tap twice',
      `${where}.secondLook`,
      `Expected another person, or a walk-round of its own later, and ${by} passed ${item.title} a moment ago.`,
      `Let someone else look. Alone: do other work first, or begin a separate walk-round with a note and look again ${ALONE.walkRound} minutes after the first look; after ${ALONE.waited} minutes it counts by itself.`,
    ),
  ];
}
