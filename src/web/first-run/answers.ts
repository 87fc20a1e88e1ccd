/** What was answered so far, as it was typed: from there to what the book is told, or to what is wrong with which question. */
import { type Beginning, beginningProblems, type Problem } from '../../app/index.ts';
import { parseQuantity } from '../../quantity/index.ts';
import { withUnit } from '../answer.ts';
import type { Keep } from '../place.ts';
import { firstRunWords } from '../words/first-run.ts';

export const QUESTIONS = ['template', 'name', 'event', 'hours'] as const;
export type Question = (typeof QUESTIONS)[number];

export type Typed = {
  readonly question: Question;
  readonly template: string;
  readonly name: string;
  readonly event: string;
  readonly day: string; // 2026-12-05
  readonly minutes: string; // empty: not known
  readonly noEvent: boolean;
  readonly hours: string;
  readonly parts: readonly string[]; // new at the rebuild
};

/** Running of a long day with practice, heats and final, taken where nobody knows: more lapses in it, so more is due. Common practice. */
export const LONG_DAY_MIN = 180;
/** When the first session of a day usually is; common practice. */
const FIRST_SESSION = '09:00';
const SLOT = 'first run';
const SATURDAY = 6;

export function firstAnswers(now: Date, karts: readonly string[]): Typed {
  const day = new Date(now.getFullYear(), now.getMonth(), now.getDate() + ((SATURDAY - now.getDay() + 7) % 7 || 7));
  return {
    question: 'template',
    template: '',
    name: freeName(karts),
    event: firstRunWords.nextEvent,
    day: dayText(day),
    minutes: '',
    noEvent: false,
    hours: '',
    parts: [],
  };
}

export function keptAnswers(keep: Keep, otherwise: Typed): Typed {
  try {
    const kept: unknown = JSON.parse(keep.get(SLOT) || 'null');
    return typeof kept === 'object' && kept !== null ? { ...otherwise, ...kept } : otherwise;
  } catch {
    return otherwise; // something else wrote there
  }
}

export const keepAnswers = (keep: Keep, typed: Typed | undefined): void =>
  keep.set(SLOT, typed === undefined ? '' : JSON.stringify(typed));

/** Which question a refusal is about. */
export const questionOf = ({ where }: Problem): Question =>
  where === 'name' || where === 'template'
    ? where
    : where === 'event' || where === 'from' || where === 'minutes'
      ? 'event'
      : where === 'hours'
        ? 'hours'
        : 'name'; // of the kart file as a whole

export type Read = { readonly said: Beginning; readonly problems: readonly Problem[] };

/** @param unknownHours nobody knows them: what was typed of them does not count */
export function readAnswers(
  typed: Typed,
  how: {
    readonly taken: readonly string[];
    readonly now: Date;
    readonly sure: boolean;
    readonly unknownHours: boolean;
  },
): Read {
  const { template, name, event, day, noEvent } = typed;
  const minutes =
    noEvent || typed.minutes.trim() === ''
      ? LONG_DAY_MIN
      : timeIn(typed.minutes, 'min', 'minutes', firstRunWords.itsRunning);
  const hours = how.unknownHours ? undefined : timeIn(typed.hours, 'h', 'hours', firstRunWords.theHours);
  const from = new Date(`${day}T${FIRST_SESSION}`); // by the clock of this device
  const said: Beginning = {
    template,
    name,
    ...(!noEvent && {
      event: {
        event,
        from: Number.isNaN(from.getTime()) ? day : from.toISOString(),
        minutes: typeof minutes === 'number' ? minutes : LONG_DAY_MIN,
      },
    }),
    ...(typeof hours === 'number' && { rebuilt: { hours, parts: typed.parts } }),
  };
  const unread = [minutes, hours].filter((one): one is Problem => typeof one === 'object');
  return { said, problems: [...beginningProblems(said, how), ...unread] };
}

/** '3', '3,5', '2 h 30 min' or '90 min'; a number alone is in `unit`. */
function timeIn(text: string, unit: 'min' | 'h', where: string, what: string): number | Problem {
  const read = parseQuantity(withUnit(text, unit), 'time');
  if (read.ok) return read.value.si / (unit === 'min' ? 60 : 3600);
  return {
    code: 'wrong shape',
    where,
    message: firstRunWords.expected(what, text.trim() === '' ? firstRunWords.nothing : `“${text.trim().slice(0, 40)}”`),
    remedy: firstRunWords.numberIsIn(unit),
  };
}

export function freeName(karts: readonly string[]): string {
  for (let n = 1; ; n++) {
    const name = firstRunWords.firstName(n);
    if (!karts.includes(name)) return name;
  }
}

const dayText = (day: Date): string =>
  `${day.getFullYear()}-${String(day.getMonth() + 1).padStart(2, '0')}-${String(day.getDate()).padStart(2, '0')}`;
