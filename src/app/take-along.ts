/** Everything of a book, or of one person in it, as open files that need no program of ours: see `readme`. */
import { utf8ToBytes } from '@noble/hashes/utils.js';
import { canonical, type Fact } from '../book/index.ts';
import type { App } from './app.ts';
import { calendarOf } from './calendar.ts';
import { lapsOfBook } from './laps.ts';
import { named } from './person.ts';
import { filesOf } from './proof.ts';
import type { Queries } from './queries.ts';
import type { OpenFile } from './tar.ts';

export type TakeAlong = {
  /** Only what this person wrote or signed; left out: everything. */
  readonly person?: string;
};
type Asked = Queries & Pick<App, 'exportBook' | 'getFile'>;

/** Nothing but what the app it is asked of may read: one team's book. */
export async function* takeAlong(app: Asked, { person }: TakeAlong = {}): AsyncGenerator<OpenFile> {
  const who = person === undefined ? undefined : named(person);
  const theirs = (fact: Fact): boolean =>
    person === undefined ||
    (who !== undefined && (who.is(fact.by) || (fact.kind === 'released' && who.is(fact.signer))));
  const karts = (await app.karts()).map(({ name }) => name);
  const facts = (await Promise.all(karts.map(async kart => (await app.facts(kart)).map(({ fact }) => fact))))
    .flat()
    .filter(theirs);

  yield text('README.txt', readme(person));
  yield text(
    'facts.jsonl',
    person === undefined ? await app.exportBook() : facts.map(fact => `${canonical(fact)}\n`).join(''),
  );
  for (const [n, kart] of karts.entries()) {
    const name = `${n + 1}-${fileName(kart)}`;
    const [line] = await app.facts(kart, { kinds: ['kart filed'], last: 1 });
    if (line?.fact.kind === 'kart filed' && theirs(line.fact)) {
      yield text(`karts/${name}.yaml`, line.fact.text);
      yield text(`calendars/${name}.ics`, await calendarOf(app, kart));
    }
    const written = new Set(facts.map(({ id }) => id));
    const sessions = (await lapsOfBook(app, kart)).filter(({ fact }) => written.has(fact));
    if (sessions.length > 0) yield text(`laps/${name}.csv`, lapsCsv(sessions));
  }
  for (const hash of new Set(facts.flatMap(filesOf))) {
    const file = await app.getFile(hash);
    if (file)
      yield {
        path: `${folderOf(file.mediaType)}/${hash}.${ending(file.mediaType)}`,
        bytes: new Uint8Array(file.bytes),
      };
  }
}

type Session = Awaited<ReturnType<typeof lapsOfBook>>[number];

/** RFC 4180; times as they were taken, with their spread. */
function lapsCsv(sessions: readonly Session[]): string {
  const rows = sessions.flatMap(one =>
    one.times.map((lap, n) => [
      one.at,
      one.label,
      one.track ?? '',
      n + 1,
      lap.way ?? 'full',
      lap.time,
      lap.spread,
      lap.marked ? 'yes' : '',
    ]),
  );
  const head = ['at', 'session', 'track', 'number', 'lap', 'time_s', 'spread_s', 'marked_not_counting'];
  return [head, ...rows].map(row => `${row.map(cell).join(',')}\r\n`).join('');
}

/** A cell that begins like a formula is not one: it is led by an apostrophe, which a spreadsheet does not run. */
function cell(value: string | number): string {
  if (typeof value === 'number') return String(value);
  const plain = /^[=+\-@\t\r]/.test(value) ? `'${value}` : value;
  return /[",\r\n]/.test(plain) ? `"${plain.replaceAll('"', '""')}"` : plain;
}

const ENDINGS: Readonly<Record<string, string>> = {
  'image/jpeg': 'jpg',
  'image/png': 'png',
  'image/webp': 'webp',
  'image/heic': 'heic',
  'image/gif': 'gif',
  'text/csv': 'csv',
  'application/gpx+xml': 'gpx',
  'text/plain': 'txt',
};
const ending = (type: string): string => ENDINGS[type] ?? 'bin';
const folderOf = (type: string): string => (type.startsWith('image/') ? 'photos' : 'logs');
/** Nothing of it is a path, and every system can hold it. */
const fileName = (name: string): string => name.replace(/[^A-Za-z0-9_-]+/g, '-').slice(0, 60) || 'kart';
const text = (path: string, body: string): OpenFile => ({ path, bytes: utf8ToBytes(body) });

function readme(person: string | undefined): string {
  const whole =
    person === undefined
      ? 'facts.jsonl   every fact, one a line as JSON, the first line counts them; book import reads it back (JSON Lines, UTF-8)'
      : `facts.jsonl   every fact that ${person} wrote or signed, one a line as JSON (JSON Lines, UTF-8); chains with holes, so no book to import`;
  return `${person === undefined ? 'All of a book' : `What ${person} wrote in a book`}, as open files. Nothing here needs a program of ours.

${whole}
karts/        ${person === undefined ? 'each kart file in force' : 'each kart file in force that this person filed'} (YAML 1.2)
calendars/    events ahead and what is due before each, of these karts (iCalendar, RFC 5545)
laps/         lap times with their spread in seconds (CSV, RFC 4180)
photos/       as they were taken; the name is the SHA-256 of the bytes, and facts name it
logs/         raw logs of drives, likewise
`;
}
