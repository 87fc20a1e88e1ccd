/** From a tap at the bench to the fact it writes. Readings go as the text that was typed; the book works out the rest. */
import type { Step } from '../prep/index.ts';
import type { Draft } from './server.ts';

export type Answer =
  | { readonly is: 'done'; readonly reading?: string }
  | { readonly is: 'fail'; readonly defect: string; readonly reading?: string }
  | { readonly is: 'not possible'; readonly why: string };

/** Only a step on an item can fail or be impossible; the hand work between has one answer. */
export const isHandling = (step: Step): boolean => step.item === null;

/** A reading typed as a bare number is in the unit that stands beside the field. */
export const withUnit = (typed: string, unit: string | null): string => {
  const text = typed.trim();
  if (text === '' || unit === null) return text;
  return /^[+-]?[\d\s.,/⁄½¼¾⅛⅜⅝⅞-]+$/.test(text) ? `${text} ${unit}` : text;
};

/** @throws Error when a step that only has one answer is given another. */
export function draftsOf(step: Step, answer: Answer): readonly Draft[] {
  const reading = 'reading' in answer && answer.reading ? { reading: withUnit(answer.reading, step.unit) } : {};
  const look = step.action === 'second-look' ? { secondLook: true } : {};
  if (step.item === null || step.writes === 'taken off' || step.writes === 'fitted' || step.writes === 'put on') {
    if (answer.is !== 'done') throw new Error(`draftsOf: answer to ${step.key} must be done, got ${answer.is}`);
    return [handlingOf(step)];
  }
  if (answer.is === 'fail')
    return [{ kind: 'checked', item: step.item, result: 'fail', why: answer.defect, ...reading, ...look }];
  if (answer.is === 'not possible')
    return [{ kind: 'checked', item: step.item, result: 'not possible', why: answer.why, ...look }];
  if (step.writes === 'made' && step.joint !== null) return [{ kind: 'made', joint: step.joint, ...reading, ...look }];
  return [{ kind: 'checked', item: step.item, result: 'pass', ...reading, ...look }];
}

function handlingOf(step: Step): Draft {
  if (step.writes === 'put on') return { kind: 'put on', posture: step.posture };
  if (step.writes === 'taken off') return { kind: 'taken off', part: step.part };
  return { kind: 'fitted', part: step.part, ...(step.fresh ? { fresh: true } : {}) };
}
