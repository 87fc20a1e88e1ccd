/** The entries that belong to no step of the plan: what each asks, and from what was typed to the fact it writes. */
import type { Problem } from '../app/index.ts';
import { CORNERS, GRADES } from '../kart/index.ts';
import { parseQuantity } from '../quantity/index.ts';
import { withUnit } from './answer.ts';
import { photoWords } from './words/photo.ts';
import { recordWords } from './words/record.ts';
import type { Draft } from './written.ts';

export type Field = {
  /** Name of the value; a refusal of the book whose place ends in it is shown beside the field. */
  readonly key: string;
  readonly label: string;
  readonly is:
    | 'line'
    | 'words'
    | 'count'
    | 'hours'
    | 'minutes'
    | 'moment'
    | 'tick'
    | 'ticks'
    | 'photo'
    | 'choice'
    | 'pick';
  readonly must?: boolean;
  readonly hint?: string;
  /** Of a choice: value and how it reads. One that is no must also offers to say nothing. */
  readonly choices?: readonly (readonly [value: string, text: string])[];
  /** Of a choice that is no must: how saying nothing reads; 'none' when left out. */
  readonly none?: string;
  /** Of a pick or ticks: among what; `own joint`: of the part that was picked. */
  readonly of?: 'part' | 'joint' | 'own joint' | 'find' | 'function';
};

type Value = string | number | boolean | readonly string[];
type Values = Readonly<Record<string, Value | undefined>>;

export type Entry = {
  readonly kind: 'ran' | 'event' | 'failed' | 'found' | 'mended' | 'loosened' | 'set-up' | 'note';
  readonly title: string;
  readonly fields: readonly Field[];
  /** Asked in so many steps, each with the keys of its fields; left out: all at once. */
  readonly steps?: readonly (readonly [title: string, keys: readonly string[]])[];
  /** When the values are not simply the keys of the fact. */
  readonly payload?: (values: Values) => Draft;
};

const when: Field = { key: 'at', label: recordWords.whenIfNotJustNow, is: 'moment' };
const laps: Field = { key: 'laps', label: recordWords.laps, is: 'count' };
const wet: Field = { key: 'wet', label: recordWords.itWasWet, is: 'tick' };

const HIT: readonly Field[] = [
  {
    key: 'severity',
    label: recordWords.impact,
    is: 'choice',
    choices: [
      ['knock', recordWords.aKnock],
      ['hit', recordWords.aHit],
      ['crash', recordWords.aCrash],
    ],
  },
  {
    key: 'corner',
    label: recordWords.whereItWasHit,
    is: 'choice',
    none: 'choose',
    choices: CORNERS.map(c => [c, c === 'whole' ? recordWords.atNoOneCorner : c]),
  },
];
/** Of what could have let go: no joint of it. */
export const PART_ITSELF = recordWords.partItself;

export const ENTRIES: readonly Entry[] = [
  {
    kind: 'ran',
    title: 'A run',
    fields: [
      { key: 'minutes', label: recordWords.minutesEngineRan, is: 'minutes', must: true },
      laps,
      wet,
      ...HIT,
      { key: 'event', label: recordWords.event, is: 'choice' },
      { key: 'session', label: recordWords.session, is: 'line', hint: recordWords.asYouCallItHeat },
      { key: 'meterHours', label: recordWords.hourMeterReadsNow, is: 'hours' },
      when,
    ],
    payload: ({ severity, corner, ...rest }) => ({
      kind: 'ran',
      ...rest,
      ...(severity === undefined ? {} : { impact: { corner, severity } }),
    }),
  },
  {
    kind: 'failed',
    title: recordWords.failureWhileItRan,
    steps: [
      [recordWords.whatFailed, ['part', 'joint', 'how']],
      [recordWords.whereAndWhen, ['event', 'session', 'lap', 'after', 'at']],
      [recordWords.whatItDid, ['lost', 'stopped', 'severity', 'corner']],
      [recordWords.whatWouldHaveHeld, ['wouldHaveHeld', 'photo']],
    ],
    fields: [
      { key: 'part', label: recordWords.whichPart, is: 'pick', of: 'part', must: true },
      { key: 'joint', label: recordWords.whatOfItLetGo, is: 'pick', of: 'own joint', must: true },
      { key: 'how', label: recordWords.whatWasSeen, is: 'words', must: true, hint: recordWords.pinGoneClipOnFloor },
      { key: 'event', label: recordWords.event, is: 'choice' },
      { key: 'session', label: recordWords.session, is: 'line', hint: recordWords.asYouCallItHeat },
      { key: 'lap', label: recordWords.lap, is: 'count' },
      { key: 'after', label: recordWords.howLongItHadRun, is: 'hours' },
      { key: 'lost', label: recordWords.whatWasLost, is: 'ticks', of: 'function' },
      { key: 'stopped', label: recordWords.itStoppedKart, is: 'tick' },
      ...HIT,
      {
        key: 'wouldHaveHeld',
        label: recordWords.whatWouldHaveHeld,
        is: 'words',
        hint: recordWords.strapRoundClevisLook,
      },
      { key: 'photo', label: photoWords.photo, is: 'photo' },
      when,
    ],
    payload: ({ joint, after, severity, corner, ...rest }) => ({
      kind: 'failed',
      ...rest,
      ...(joint === PART_ITSELF ? {} : { joint }),
      ...(after === undefined ? {} : { afterMinutes: Number(after) * 60 }),
      ...(severity === undefined ? {} : { impact: { corner, severity } }),
    }),
  },
  {
    kind: 'found',
    title: recordWords.defectFound,
    fields: [
      { key: 'part', label: recordWords.onWhichPart, is: 'pick', of: 'part', must: true },
      { key: 'defect', label: recordWords.whatIsWrong, is: 'words', must: true },
      { key: 'grade', label: recordWords.whatItTouches, is: 'choice', must: true, choices: GRADES.map(g => [g, g]) },
      { key: 'photo', label: photoWords.photo, is: 'photo' },
      when,
    ],
  },
  {
    kind: 'mended',
    title: recordWords.defectMended,
    fields: [
      { key: 'found', label: recordWords.whichFind, is: 'pick', of: 'find', must: true },
      { key: 'how', label: recordWords.howItWasMended, is: 'words', must: true },
      when,
    ],
  },
  {
    kind: 'event',
    title: recordWords.eventToCome,
    fields: [
      { key: 'event', label: recordWords.name, is: 'line', must: true },
      { key: 'from', label: recordWords.firstTimeOnTrack, is: 'moment', must: true },
      { key: 'until', label: recordWords.lastTimeOnTrack, is: 'moment' },
      { key: 'track', label: recordWords.track, is: 'line' },
      {
        key: 'minutes',
        label: recordWords.runningExpected,
        is: 'minutes',
        must: true,
        hint: recordWords.everySessionTogether,
      },
      { ...laps, label: recordWords.lapsExpected },
      { ...wet, label: recordWords.itMayBeWet },
    ],
  },
  {
    kind: 'loosened',
    title: recordWords.jointOpened,
    fields: [
      { key: 'joint', label: recordWords.whichJoint, is: 'pick', of: 'joint', must: true },
      { key: 'why', label: recordWords.why, is: 'line' },
      when,
    ],
  },
  {
    kind: 'set-up',
    title: recordWords.setUpChange,
    fields: [
      { key: 'setting', label: recordWords.what, is: 'line', must: true, hint: recordWords.mainJetRearSprocket },
      { key: 'to', label: recordWords.to, is: 'line', must: true },
      { key: 'why', label: recordWords.why, is: 'line' },
      when,
    ],
    payload: ({ setting, to, ...rest }) => ({ kind: 'set-up', changes: { [String(setting)]: to }, ...rest }),
  },
  {
    kind: 'note',
    title: 'A note',
    fields: [
      { key: 'text', label: recordWords.whatToRemember, is: 'words', must: true },
      { key: 'part', label: recordWords.onPart, is: 'pick', of: 'part' },
      when,
    ],
  },
];

/** What stands in the fields, by key; a tick is 'yes'. */
export type Typed = Readonly<Record<string, string>>;
export type Drafted =
  | { readonly ok: true; readonly draft: Draft; readonly at?: string }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** The fields of a step: those that what was said so far asks for. */
export function fieldsOf(entry: Entry, step: number, typed: Typed): readonly Field[] {
  const keys = entry.steps?.[step]?.[1];
  return entry.fields.filter(({ key, of }) => {
    if (keys && !keys.includes(key)) return false;
    if (key === 'corner') return (typed.severity ?? '') !== '';
    return of !== 'own joint' || (typed.part ?? '') !== '';
  });
}

/** The fact an entry writes, or everything that is missing or no number, each at its field. */
export function entryDraft(entry: Entry, typed: Typed): Drafted {
  const { values, problems } = readFields(entry.fields, typed);
  if (problems.length > 0) return { ok: false, problems };
  const { at, ...rest } = values;
  const draft = entry.payload?.(rest) ?? { kind: entry.kind, ...rest };
  return { ok: true, draft, ...(at === undefined ? {} : { at: String(at) }) };
}

/** What is missing or no number among some fields. */
export function readFields(fields: readonly Field[], typed: Typed): { values: Values; problems: readonly Problem[] } {
  const values: Record<string, Value> = {};
  const problems: Problem[] = [];
  for (const field of fields) {
    const text = (typed[field.key] ?? '').trim();
    const asked = field.must === true || (field.key === 'corner' && (typed.severity ?? '') !== '');
    if (text === '') {
      if (asked) problems.push(wrong(field, 'nothing', recordWords.fill));
      continue;
    }
    const read = readField(field, text);
    if (typeof read === 'object' && 'code' in read) problems.push(read);
    else values[field.key] = read;
  }
  return { values, problems };
}

function readField(field: Field, text: string): Value | Problem {
  if (field.is === 'tick') return true;
  if (field.is === 'ticks') return text.split('\n');
  if (field.is === 'count')
    return /^\d{1,6}$/.test(text) ? Number(text) : wrong(field, `“${text}”`, recordWords.wholeNumber);
  if (field.is === 'minutes' || field.is === 'hours') {
    const unit = field.is === 'minutes' ? 'min' : 'h';
    const read = parseQuantity(withUnit(text, unit), 'time');
    if (!read.ok || read.value.si < 0) return wrong(field, `“${text}”`, recordWords.numberIsInMin(unit));
    return read.value.si / (unit === 'min' ? 60 : 3600);
  }
  if (field.is !== 'moment') return text;
  const moment = new Date(text); // what a date field gives is local time
  return Number.isNaN(moment.getTime()) ? wrong(field, `“${text}”`, recordWords.dayAndTime) : moment.toISOString();
}

const wrong = (field: Field, got: string, remedy: string): Problem => ({
  code: 'wrong shape',
  where: `fact.${field.key}`,
  message: recordWords.expectedGot(field.label.charAt(0).toLowerCase(), field.label.slice(1), got),
  remedy,
});

/** The field a refusal is about, by the end of its place; undefined: it is about the entry as a whole. */
export const fieldOf = (entry: Entry, problem: Problem): Field | undefined =>
  entry.fields.find(f => problem.where === f.key || problem.where.endsWith(`.${f.key}`));
