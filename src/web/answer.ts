/** From a tap at the bench to the fact it writes. Readings go as the text that was typed; the book works out the rest. */
import type { Item, Kart } from '../kart/index.ts';
import type { Step } from '../prep/index.ts';
import { pageWords } from './words/page.ts';
import type { Draft } from './written.ts';

export type Answer =
  | ({ readonly is: 'done'; readonly reading?: string; readonly how?: string; readonly hours?: number } & ReadWith)
  | ({ readonly is: 'fail'; readonly defect: string; readonly reading?: string; readonly photo?: string } & ReadWith)
  | { readonly is: 'not possible'; readonly why: string }
  /** Not now; what it stands for stays due, with the reason. */
  | { readonly is: 'put off'; readonly why: string }
  /** It was moved, and stands at this value now; checking it is another step. */
  | ({ readonly is: 'set'; readonly reading: string } & ReadWith);
type ReadWith = { readonly instrument?: string };

/** Only a step on an item can fail or be impossible; the hand work between has one answer. */
export const isHandling = (step: Step): boolean =>
  step.item === null || step.mends !== null || step.writes === 'fitted';

/** The item of a step that measures what a hand can move: wear has a limit, an adjustment a target with both ends. */
export function adjustable(step: Step, kart: Kart): Item | undefined {
  const item = step.action !== 'measure' || step.item === null ? undefined : kart.items[step.item];
  if (item?.measure === undefined) return undefined;
  const { target, min, max } = item.measure;
  const moves = item.disturbs.length + item.opens.length > 0;
  return moves || (target && min && max) ? item : undefined;
}

/** What becomes due once an item has been set: 'this reading; hub pinch bolts; overall rear width'. */
export function dueAgain(item: Item, kart: Kart): string {
  const ids = [...item.opens.flatMap(j => kart.joints[j]?.item ?? []), ...item.disturbs];
  const titles = ids.flatMap(id => {
    const other = kart.items[id];
    return other === undefined ? [] : `${other.title} (${other.part})`;
  });
  return [pageWords.thisReading, ...new Set(titles)].join('; ');
}

/** A reading typed as a bare number is in the unit that stands beside the field; so are several, with `;` between. */
export const withUnit = (typed: string, unit: string | null): string => {
  const text = typed.trim().replace(/(\s*;)+$/, ''); // the next reading is not typed yet
  if (text === '' || unit === null) return text;
  return /^[+-]?[\d\s.,/⁄½¼¾⅛⅜⅝⅞-]+$/.test(text.split(';').at(-1) ?? '') ? `${text} ${unit}` : text;
};

/** @throws Error when a step that only has one answer is given another. */
export function draftsOf(step: Step, answer: Answer): readonly Draft[] {
  if (answer.is === 'put off') return [putOff(step, answer.why)];
  if (step.mends !== null) return [mendedBy(step, answer)];
  const reading = readingOf(step, answer);
  const look = step.action === 'second-look' ? { secondLook: true } : {};
  if (step.item === null || step.writes === 'taken off' || step.writes === 'fitted' || step.writes === 'put on') {
    if (answer.is !== 'done') throw new Error(`draftsOf: answer to ${step.key} must be done, got ${answer.is}`);
    return [handlingOf(step, answer.hours)];
  }
  if (answer.is === 'set') return [{ kind: 'set', item: step.item, ...reading }];
  if (answer.is === 'fail') {
    const { defect, photo } = answer;
    const fail: Draft = { kind: 'checked', item: step.item, result: 'fail', why: defect, ...reading, ...look };
    // A photo belongs to a find, which then is to mend before the item is looked at again.
    if (photo === undefined) return [fail];
    return [fail, { kind: 'found', part: step.part, item: step.item, defect, grade: step.grade, photo }];
  }
  if (answer.is === 'not possible')
    return [{ kind: 'checked', item: step.item, result: 'not possible', why: answer.why, ...look }];
  if (step.writes === 'made' && step.joint !== null) return [{ kind: 'made', joint: step.joint, ...reading, ...look }];
  return [{ kind: 'checked', item: step.item, result: 'pass', ...reading, ...look }];
}

/**
 * An item that is put off could not be done, so it stands against running with its reason. A first look that passed, a find and
 * hand work wait as they are, and the reason stays in the record.
 */
function putOff(step: Step, why: string): Draft {
  if (isHandling(step) || step.action === 'second-look')
    return {
      kind: 'note',
      text: pageWords.putOffNote(step.title, why),
      ...(step.part === null ? {} : { part: step.part }),
    };
  return { kind: 'checked', item: step.item, result: 'not possible', why: pageWords.putOffReason(why) };
}

function readingOf(step: Step, answer: Answer): { readonly reading?: string | { text: string; instrument: string } } {
  if (!('reading' in answer) || !answer.reading) return {};
  const text = withUnit(answer.reading, step.unit);
  return { reading: answer.instrument ? { text, instrument: answer.instrument } : text };
}

function mendedBy(step: Step, answer: Answer): Draft {
  if (answer.is !== 'done') throw new Error(`draftsOf: answer to ${step.key} must be done, got ${answer.is}`);
  return { kind: 'mended', found: step.mends, how: answer.how ?? '' };
}

/** @param hours that another one which goes on has run before */
function handlingOf(step: Step, hours?: number): Draft {
  if (step.writes === 'put on') return { kind: 'put on', posture: step.posture };
  if (step.writes === 'taken off') return { kind: 'taken off', part: step.part };
  const run = hours === undefined ? {} : { carriedMinutes: Math.round(hours * 60) };
  return { kind: 'fitted', part: step.part, ...(step.fresh ? { fresh: true, ...run } : {}) };
}
