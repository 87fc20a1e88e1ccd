/**
 * How often a retention let go, by its owner's record: every joint it holds, on every kart, is one record, and starting guess and record are
 * weighed together. Which of two retentions was found gone is read from the words of the find: the second where they name it
 * and not the first, else the first.
 */
import { type JointRecord, jointRecords, type KartBook, type LetGo, rateOver } from '../../life/index.ts';
import { type Catalogue, namedBy, type Retention } from '../retentions/index.ts';
import { guessed, likelyOf } from './likely.ts';
import type { Likely } from './model.ts';

export type Role = 'first' | 'second';
export type Held = { readonly likely: Likely; readonly own: boolean };
/** Undefined where nobody guessed how it does in that role. */
export type RetentionRecord = (retention: Retention, role: Role) => Held | undefined;

export function retentionRecord(books: readonly KartBook[], catalogue: Catalogue): RetentionRecord {
  const counted = countsOf(jointRecords(books), catalogue);
  const factor = catalogue['trusted to a factor of'];
  const { weight } = catalogue['own record'];
  return (retention, role) => {
    const mean = retention.chance[role];
    if (mean === undefined) return undefined;
    const { times, events } = counted.get(keyOf(retention, role)) ?? NONE;
    if (events === 0)
      return { likely: guessed(mean, factor, `Only our starting guess: ${catalogue.source}.`), own: false };
    const rate = rateOver({ mean, sureAs: weight }, { times, events });
    const own = rate.ownShare > 0.5;
    const record = `${retention.name} on every kart: ${lookedAfter(events)}, and it had let go ${timesOf(times)}`;
    const basis = own
      ? `From your own record: ${record}; starting guess: ${catalogue.source}.`
      : `Mostly our starting guess: ${record}. Guess: ${catalogue.source}.`;
    return { likely: likelyOf(rate, basis), own };
  };
}

type Count = { readonly times: number; readonly events: number };
const NONE: Count = { times: 0, events: 0 };
const keyOf = (retention: Retention, role: Role): string => `${role} ${retention.name}`;

function countsOf(records: readonly JointRecord[], catalogue: Catalogue): ReadonlyMap<string, Count> {
  const counts = new Map<string, Count>();
  const add = (retention: Retention, role: Role, times: number, events: number): void => {
    const key = keyOf(retention, role);
    const before = counts.get(key) ?? NONE;
    counts.set(key, { times: before.times + times, events: before.events + events });
  };
  for (const { joint, all, filed } of records) {
    const [first, second] = [
      namedBy(joint.retention, 'first', catalogue),
      joint.second === undefined ? undefined : namedBy(joint.second, 'second', catalogue),
    ];
    const other = second?.is === 'holds' ? second.retention : undefined;
    const isSecond = (one: LetGo): boolean =>
      other !== undefined && !one.whole && names(one.says, other, joint, catalogue);
    if (first.is === 'holds') add(first.retention, 'first', all.letGo.filter(one => !isSecond(one)).length, all.events);
    if (other) add(other, 'second', filed.letGo.filter(one => one.whole || isSecond(one)).length, filed.events);
  }
  return counts;
}

/** Do the words of a find name the second of a joint, and not its first? */
function names(says: string, second: Retention, joint: JointRecord['joint'], catalogue: Catalogue): boolean {
  const [first, found] = [namedBy(joint.retention, 'first', catalogue), namedBy(says, 'second', catalogue)];
  if (found.is !== 'holds' || found.retention.way !== second.way) return false;
  if (first.is !== 'holds') return true;
  if (found.retention.name === first.retention.name) return false;
  const asFirst = namedBy(besides(says, found.retention.words), 'first', catalogue);
  return !(asFirst.is === 'holds' && asFirst.retention.way === first.retention.way);
}

/** What is left of a text: the clip in 'second clip' is no other clip. */
const besides = (says: string, words: readonly string[]): string =>
  words.reduce((rest, word) => rest.split(word.toLowerCase()).join(' '), says.toLowerCase());

const lookedAfter = (events: number): string =>
  events === 1 ? '1 event looked at after' : `${events} events looked at after`;
const timesOf = (times: number): string => (times === 0 ? 'never' : times === 1 ? 'once' : `${times} times`);
