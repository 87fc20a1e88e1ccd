/** The entries that belong to no step of the plan: what each asks, and from what was typed to the fact it writes. */
import type { Problem } from '../app/index.ts';
import { CORNERS, GRADES } from '../kart/index.ts';
import { parseQuantity } from '../quantity/index.ts';
import { withUnit } from './answer.ts';
import type { Draft } from './session.ts';

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

const when: Field = { key: 'at', label: 'When, if not just now', is: 'moment' };
const laps: Field = { key: 'laps', label: 'Laps', is: 'count' };
const wet: Field = { key: 'wet', label: 'It was wet', is: 'tick' };

const HIT: readonly Field[] = [
  {
    key: 'severity',
    label: 'Impact',
    is: 'choice',
    choices: [
      ['knock', 'a knock'],
      ['hit', 'a hit'],
      ['crash', 'a crash'],
    ],
  },
  {
    key: 'corner',
    label: 'Where it was hit',
    is: 'choice',
    none: 'choose',
    choices: CORNERS.map(c => [c, c === 'whole' ? 'at no one corner' : c]),
  },
];
/** Of what could have let go: no joint of it. */
export const PART_ITSELF = 'the part itself';

export const ENTRIES: readonly Entry[] = [
  {
    kind: 'ran',
    title: 'A run',
    fields: [
      { key: 'minutes', label: 'Minutes the engine ran', is: 'minutes', must: true },
      laps,
      wet,
      ...HIT,
      { key: 'event', label: 'Event', is: 'choice' },
      { key: 'session', label: 'Session', is: 'line', hint: 'As you call it: heat 2' },
      { key: 'meterHours', label: 'The hour meter reads now', is: 'hours' },
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
    title: 'A failure while it ran',
    steps: [
      ['What failed', ['part', 'joint', 'how']],
      ['Where and when', ['event', 'session', 'lap', 'after', 'at']],
      ['What it did', ['lost', 'stopped', 'severity', 'corner']],
      ['What would have held it', ['wouldHaveHeld', 'photo']],
    ],
    fields: [
      { key: 'part', label: 'Which part', is: 'pick', of: 'part', must: true },
      { key: 'joint', label: 'What of it let go', is: 'pick', of: 'own joint', must: true },
      { key: 'how', label: 'What was seen', is: 'words', must: true, hint: 'Pin gone, clip on the floor' },
      { key: 'event', label: 'Event', is: 'choice' },
      { key: 'session', label: 'Session', is: 'line', hint: 'As you call it: heat 2' },
      { key: 'lap', label: 'Lap', is: 'count' },
      { key: 'after', label: 'How long it had run', is: 'hours' },
      { key: 'lost', label: 'What was lost with it', is: 'ticks', of: 'function' },
      { key: 'stopped', label: 'It stopped the kart', is: 'tick' },
      ...HIT,
      {
        key: 'wouldHaveHeld',
        label: 'What would have held it',
        is: 'words',
        hint: 'A strap round the clevis; a look after each heat',
      },
      { key: 'photo', label: 'Photo', is: 'photo' },
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
    title: 'A defect found',
    fields: [
      { key: 'part', label: 'On which part', is: 'pick', of: 'part', must: true },
      { key: 'defect', label: 'What is wrong', is: 'words', must: true },
      { key: 'grade', label: 'What it touches', is: 'choice', must: true, choices: GRADES.map(g => [g, g]) },
      { key: 'photo', label: 'Photo', is: 'photo' },
      when,
    ],
  },
  {
    kind: 'mended',
    title: 'A defect mended',
    fields: [
      { key: 'found', label: 'Which find', is: 'pick', of: 'find', must: true },
      { key: 'how', label: 'How it was mended', is: 'words', must: true },
      when,
    ],
  },
  {
    kind: 'event',
    title: 'An event to come',
    fields: [
      { key: 'event', label: 'Name', is: 'line', must: true },
      { key: 'from', label: 'First time on the track', is: 'moment', must: true },
      { key: 'until', label: 'Last time on the track', is: 'moment' },
      { key: 'track', label: 'Track', is: 'line' },
      {
        key: 'minutes',
        label: 'Running expected',
        is: 'minutes',
        must: true,
        hint: 'Every session together; what would lapse in it is due before.',
      },
      { ...laps, label: 'Laps expected' },
      { ...wet, label: 'It may be wet' },
    ],
  },
  {
    kind: 'loosened',
    title: 'A joint opened',
    fields: [
      { key: 'joint', label: 'Which joint', is: 'pick', of: 'joint', must: true },
      { key: 'why', label: 'Why', is: 'line' },
      when,
    ],
  },
  {
    kind: 'set-up',
    title: 'A set-up change',
    fields: [
      { key: 'setting', label: 'What', is: 'line', must: true, hint: 'main jet, rear sprocket, seat stay' },
      { key: 'to', label: 'To what', is: 'line', must: true },
      { key: 'why', label: 'Why', is: 'line' },
      when,
    ],
    payload: ({ setting, to, ...rest }) => ({ kind: 'set-up', changes: { [String(setting)]: to }, ...rest }),
  },
  {
    kind: 'note',
    title: 'A note',
    fields: [
      { key: 'text', label: 'What to remember', is: 'words', must: true },
      { key: 'part', label: 'On a part', is: 'pick', of: 'part' },
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
      if (asked) problems.push(wrong(field, 'nothing', 'Fill it in.'));
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
  if (field.is === 'count') return /^\d{1,6}$/.test(text) ? Number(text) : wrong(field, `“${text}”`, 'A whole number.');
  if (field.is === 'minutes' || field.is === 'hours') {
    const unit = field.is === 'minutes' ? 'min' : 'h';
    const read = parseQuantity(withUnit(text, unit), 'time');
    if (!read.ok || read.value.si < 0)
      return wrong(field, `“${text}”`, `A number is in ${unit}; 90 min and 1.5 h are both understood.`);
    return read.value.si / (unit === 'min' ? 60 : 3600);
  }
  if (field.is !== 'moment') return text;
  const moment = new Date(text); // what a date field gives is local time
  return Number.isNaN(moment.getTime()) ? wrong(field, `“${text}”`, 'A day and a time.') : moment.toISOString();
}

const wrong = (field: Field, got: string, remedy: string): Problem => ({
  code: 'wrong shape',
  where: `fact.${field.key}`,
  message: `Expected ${field.label.charAt(0).toLowerCase()}${field.label.slice(1)}, got ${got}.`,
  remedy,
});

/** The field a refusal is about, by the end of its place; undefined: it is about the entry as a whole. */
export const fieldOf = (entry: Entry, problem: Problem): Field | undefined =>
  entry.fields.find(f => problem.where === f.key || problem.where.endsWith(`.${f.key}`));
