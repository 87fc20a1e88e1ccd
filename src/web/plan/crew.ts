/** Who works on the kart and which times there are, as said on this device; a kart each. */
import type { PlanAsk } from '../../app/index.ts';
import { moment } from '../../app/index.ts';
import type { Keep } from '../place.ts';

export type Time = {
  readonly minutes: number; // above 0
  /** The instant at which it begins; left out, it counts from when the plan is made. */
  readonly from?: string;
};
export type Crew = {
  readonly people: number; // 1 to 3
  /** Of each person; '' where none was given. */
  readonly names: readonly string[];
  readonly times: readonly Time[];
};

/** One person and no end to the evening: what holds until somebody says otherwise. */
export const ALONE: Crew = { people: 1, names: [], times: [] };
export const isAlone = ({ people, times }: Crew): boolean => people === 1 && times.length === 0;

const keyOf = (kart: string): string => `crew ${kart}`;
export const keepCrew = (keep: Keep, kart: string, crew: Crew): void =>
  keep.set(keyOf(kart), JSON.stringify(crew) === JSON.stringify(ALONE) ? '' : JSON.stringify(crew));

/** What this device keeps may be of an older page, or mangled: then nobody has said anything. */
export function keptCrew(keep: Keep, kart: string): Crew {
  try {
    const { people, names, times } = JSON.parse(keep.get(keyOf(kart))) as Crew;
    const right =
      [1, 2, 3].includes(people) &&
      names.every(name => typeof name === 'string') &&
      times.every(({ minutes, from }) => minutes > 0 && (from === undefined || moment(from) !== undefined));
    return right ? { people, names, times } : ALONE;
  } catch {
    return ALONE;
  }
}

/** What is left of the times, in the order in which they come. */
export function timesLeft({ times }: Crew, now: string): readonly Time[] {
  return times
    .flatMap((time): readonly Time[] => {
      if (time.from === undefined || time.from >= now) return [time];
      const minutes = Math.floor(time.minutes - (Date.parse(now) - Date.parse(time.from)) / 60_000);
      return minutes > 0 ? [{ minutes, from: now }] : [];
    })
    .toSorted((a, b) => ((a.from ?? now) < (b.from ?? now) ? -1 : (a.from ?? now) > (b.from ?? now) ? 1 : 0));
}

/** Times that are all over leave no time, which is not the same as time without end. */
export const askOf = (crew: Crew, now: string): PlanAsk => ({
  people: crew.people,
  ...(crew.times.length === 0 ? {} : { windows: orNone(timesLeft(crew, now)) }),
});
const orNone = (times: readonly Time[]): readonly Time[] => (times.length === 0 ? [{ minutes: 0 }] : times);

/** 'J. Moor', or 'person 2' where no name was given. */
export const nameOf = ({ names }: Crew, person: number): string => names[person - 1]?.trim() || `person ${person}`;

const TIME = /^(?:(\d+(?:[.,]\d+)?)\s*h(?:ours?)?)?\s*(?:(\d+)\s*min(?:utes?)?)?$/i;
/** '3 h', '90 min', '1 h 30 min'; undefined for anything else, a bare number too, which may be either. */
export function minutesOf(typed: string): number | undefined {
  const [whole, hours, minutes] = TIME.exec(typed.trim()) ?? [];
  if (!whole) return undefined;
  const sum = Math.round(Number((hours ?? '0').replace(',', '.')) * 60 + Number(minutes ?? 0));
  return sum > 0 && sum <= 7 * 24 * 60 ? sum : undefined;
}
