/** From whatever a face sends to a payload of the book: times in UTC, readings worked out, and nothing else changed. */
import { FACT_KINDS, type Payload, payload as payloadShape } from '../book/index.ts';
import type { Kart } from '../kart/index.ts';
import { type Problem, refuse } from './problem.ts';
import { readReading } from './reading.ts';
import { moment } from './when.ts';
import { suggestion } from './words.ts';

export type Shaped =
  | { readonly ok: true; readonly payload: Payload }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** @param kart decides what a reading is a reading of; undefined while the first kart file is not filed yet */
export function shape(raw: unknown, kart: Kart | undefined, where: string): Shaped {
  if (typeof raw !== 'object' || raw === null || Array.isArray(raw))
    return wrong(where, 'a fact as an object with its kind', show(raw), 'Write {"kind": "note", "text": "..."}.');
  const given = raw as Readonly<Record<string, unknown>>;
  const kinds: readonly string[] = FACT_KINDS;
  if (typeof given.kind !== 'string' || !kinds.includes(given.kind)) {
    const near = typeof given.kind === 'string' ? suggestion(given.kind, kinds) : '';
    return wrong(`${where}.kind`, 'a kind of fact', show(given.kind), `Kinds: ${kinds.join(', ')}.${near}`);
  }
  const problems: Problem[] = [];
  const ready: Record<string, unknown> = { ...given };
  for (const key of ['from', 'until']) {
    const text = given[key];
    if (typeof text === 'string') ready[key] = moment(text) ?? text;
  }
  if (kart && given.reading !== undefined) {
    const item = kart.items[String(given.item ?? given.joint)];
    const read = readReading(given.reading, item, kart, `${where}.reading`);
    if ('problem' in read) problems.push(read.problem);
    else ready.reading = read.reading;
  }
  const read = payloadShape.safeParse(ready);
  if (read.success && !BROKEN.test(JSON.stringify(read.data)) && problems.length === 0)
    return { ok: true, payload: read.data };
  if (read.success && problems.length === 0)
    return wrong(where, 'text that is whole', 'half a character', 'Type the text again.');
  if (!read.success)
    for (const issue of read.error.issues) {
      if (issue.path[0] === 'reading' && problems.some(problem => problem.code === 'reading')) continue;
      problems.push(shapeProblem(issue, given, where));
    }
  return { ok: false, problems };
}

/** A lone surrogate, which JSON.stringify writes as an escape: no hash could be made of it. */
const BROKEN = /(?<!\\)(?:\\\\)*\\ud[89a-f][0-9a-f]{2}/;

type Issue = { readonly path: readonly PropertyKey[]; readonly message: string; readonly code?: string };

function shapeProblem(issue: Issue, given: Readonly<Record<string, unknown>>, where: string): Problem {
  const path = [where, ...issue.path.map(String)].join('.');
  let value: unknown = given;
  for (const key of issue.path) value = (value as Record<PropertyKey, unknown> | undefined)?.[key];
  const keys = 'keys' in issue && Array.isArray(issue.keys) ? issue.keys.join(', ') : undefined;
  if (keys !== undefined)
    return refuse(
      'wrong shape',
      path,
      `Expected only the keys of "${String(given.kind)}", got also ${keys}.`,
      'Leave it out, or look up the keys with `log KIND --help`.',
    );
  const time = issue.path[0] === 'from' || issue.path[0] === 'until';
  if (time && value !== undefined)
    return refuse(
      'not a time',
      path,
      `Expected a date and time with its zone, got ${show(value)}.`,
      'Write it like 2026-11-25T15:45:00Z.',
    );
  return refuse(
    'wrong shape',
    path,
    `${expectation(issue.message)}, got ${show(value)}.`,
    `Give ${String(issue.path.at(-1) ?? 'the fact')} as asked; \`log KIND --help\` shows an example.`,
  );
}

/** 'Invalid input: expected string, received undefined' → 'Expected string'. */
const expectation = (message: string): string => {
  const found = /expected ([^,]+)/i.exec(message)?.[1];
  return found === undefined ? message : `Expected ${found}`;
};

const wrong = (where: string, expected: string, got: string, remedy: string): Shaped => ({
  ok: false,
  problems: [refuse('wrong shape', where, `Expected ${expected}, got ${got}.`, remedy)],
});

function show(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (typeof value === 'number') return String(value); // NaN has no JSON
  const text = JSON.stringify(value) ?? String(value);
  return text.length > 60 ? `${text.slice(0, 60)}…` : text;
}
