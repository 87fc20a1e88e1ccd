/** What a step aims at and what is allowed, in the units the person chose; and as it was given, where that differs. */
import type { Step } from '../../prep/index.ts';
import { inchFraction, limitsInOwnUnit, ownUnit } from '../../quantity/index.ts';
import { aimsWords } from '../words/aims.ts';
import { choice, own } from './choice.ts';

export type Aims = { readonly target: string; readonly allowed: string; readonly given: string };

/** '' where there is none, and for what is allowed where it says the same as the target. */
export function aimsOf({ target, tolerance }: Pick<Step, 'target' | 'tolerance'>): Aims {
  const same = target?.text === tolerance?.text;
  const texts = [target?.text ?? '', same ? '' : (tolerance?.text ?? '')] as const;
  const said = [allowedIn(tolerance, texts[0]), allowedIn(tolerance, texts[1])] as const;
  const given = said[0] === texts[0] && said[1] === texts[1] ? '' : texts.filter(Boolean).join('; ');
  return { target: target === null ? '' : onTape(target, said[0]), allowed: said[1], given };
}

/** On one line: '5.612 in (5 5/8 in); at least 5.571 in (given as ...)'. */
export function aimsSaid(step: Pick<Step, 'target' | 'tolerance'>): string {
  const { target, allowed, given } = aimsOf(step);
  const said = [target, allowed].filter(Boolean).join('; ');
  return given === '' ? said : `${said}, ${aimsWords.givenAs(given)}`;
}

/** Both ends together, each to its strict side; the rest of the text, and a target, to the nearest. */
function allowedIn(tolerance: Step['tolerance'], text: string): string {
  const { min = null, max = null } = tolerance ?? {};
  const shown = limitsInOwnUnit({ min, max }, choice().units);
  const ends = [
    [min?.text, shown.min],
    [max?.text, shown.max],
  ] as const;
  const fixed = min !== null && max !== null && min.si === max.si;
  if (fixed || !ends.some(([written]) => written !== undefined && text.includes(written))) return own(text);
  return ends.reduce((all, [written, said]) => (written && said ? all.replace(written, () => said) : all), text);
}

/** With the nearest mark of a tape, where inches were chosen and the maker wrote millimetres. */
function onTape({ si, unit }: NonNullable<Step['target']>, said: string): string {
  const inches = ownUnit(unit, choice().units) === 'in' && unit !== 'in' && /^[\d.]+ in$/.test(said);
  return inches && si > LEAST ? `${said} (${inchFraction(si, 32).text})` : said;
}
const LEAST = 0.006; // m: below a quarter of an inch nobody reads a tape
