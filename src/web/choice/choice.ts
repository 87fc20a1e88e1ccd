/**
 * How dates, times of day and sizes read on this device, as the person chose; first as the browser's language has it, sizes as
 * their maker wrote them. One page belongs to one person, so it stands here once and is not handed to every place that writes one.
 */
import {
  figureInOwnUnits,
  type Measure,
  OWN_KINDS,
  OWN_UNITS,
  type OwnKind,
  type OwnUnits,
  ownUnit,
  textInOwnUnits,
} from '../../quantity/index.ts';
import type { Keep } from '../place.ts';
import { type FirstChoice, KNOWN_LANGUAGES } from './languages.ts';

/** 26 Nov 2026 · 2026-11-26 · 11/26/2026 · 26/11/2026 */
export const DATES = ['named', 'year first', 'month first', 'day first'] as const;
export const CLOCKS = ['24 h', '12 h'] as const;
export type Choice = {
  readonly date: (typeof DATES)[number];
  readonly clock: (typeof CLOCKS)[number];
  readonly units: OwnUnits;
};
export type Chosen = 'date' | 'clock' | OwnKind;

let now: Choice = { date: 'named', clock: '24 h', units: {} };
export const choice = (): Choice => now;

/** What is kept; a value that is none of those to choose from counts as not chosen. */
export function readChoice(keep: Keep, language: string): void {
  const kept = (what: Chosen): string => keep.get(`own ${what}`);
  const first = firstIn(keep, language);
  now = {
    date: DATES.find(one => one === kept('date')) ?? first.date,
    clock: CLOCKS.find(one => one === kept('clock')) ?? first.clock,
    units: Object.fromEntries(
      OWN_KINDS.flatMap(kind => {
        const unit = OWN_UNITS[kind].choices.find(one => one === kept(kind));
        return unit === undefined ? [] : [[kind, unit]];
      }),
    ),
  };
}

/** @param value '' is what comes without a choice */
export function choose(keep: Keep, language: string, what: Chosen, value: string): void {
  keep.set(`own ${what}`, value);
  readChoice(keep, language);
}

/** The unit that was chosen for what is written in this one. */
export const ownUnitOf = (unit: string): string => ownUnit(unit, now.units);

/** A figure in the unit that was chosen. */
export const ownFigure = (figure: Pick<Measure, 'si' | 'unit' | 'text'>): string => figureInOwnUnits(figure, now.units);

/** A text with its sizes in the units that were chosen. */
export const own = (text: string): string => textInOwnUnits(text, now.units);

/** A language that is not known here is asked of the browser once. */
function firstIn(keep: Keep, language: string): FirstChoice {
  const known = KNOWN_LANGUAGES.get(language);
  if (known) return known;
  const slot = `own ${language}`;
  const [date, clock] = keep.get(slot).split(', ');
  const kept = { date: DATES.find(one => one === date), clock: CLOCKS.find(one => one === clock) };
  if (kept.date && kept.clock) return { date: kept.date, clock: kept.clock };
  const found = choiceIn(language);
  keep.set(slot, `${found.date}, ${found.clock}`);
  return found;
}

/** The order of a date and the hours of a day in a language; where the day comes first, its month is named. */
export function choiceIn(language: string): FirstChoice {
  const day = Date.UTC(2026, 10, 26, 14, 5);
  const first = new Intl.DateTimeFormat(language, { year: 'numeric', month: 'numeric', day: 'numeric' })
    .formatToParts(day)
    .find(({ type }) => type !== 'literal')?.type;
  const { hour12 } = new Intl.DateTimeFormat(language, { hour: 'numeric' }).resolvedOptions();
  return {
    date: first === 'month' ? 'month first' : first === 'year' ? 'year first' : 'named',
    clock: hour12 ? '12 h' : '24 h',
  };
}
