/** Events ahead and the service they ask for, as an iCalendar file (RFC 5545) that any calendar reads. */
import { coming } from '../prep/index.ts';
import type { At } from './asking.ts';
import type { Queries } from './queries.ts';

/** So many items are named; a calendar is no work list. */
const NAMED = 12;

/** Throws `Refusal` for a kart or a moment that the book does not hold. */
export async function calendarOf(queries: Queries, name: string, ask: At = {}): Promise<string> {
  const { at: now } = await queries.fitness(name, ask);
  const [kart, state] = [await queries.kart(name, ask), await queries.state(name, ask)];
  const stamp = instant(now);
  const entries = coming(kart, state, now).flatMap(({ event, runsOut }) => [
    'BEGIN:VEVENT',
    `UID:${uid('event', name, event.event)}`,
    `DTSTAMP:${stamp}`,
    `DTSTART:${instant(event.from)}`,
    `DTEND:${instant(event.until)}`,
    `SUMMARY:${escaped(`${event.event}, kart ${name}`)}`,
    ...(event.track === undefined ? [] : [`LOCATION:${escaped(event.track)}`]),
    'END:VEVENT',
    'BEGIN:VTODO',
    `UID:${uid('service', name, event.event)}`,
    `DTSTAMP:${stamp}`,
    `DUE:${instant(event.from)}`,
    `SUMMARY:${escaped(`Kart ${name}: ${counted(runsOut.length)} due before ${event.event}`)}`,
    `DESCRIPTION:${escaped(
      [
        ...runsOut.slice(0, NAMED).map(({ part, title, why }) => `${part}: ${title}. ${why}`),
        ...(runsOut.length > NAMED ? [`and ${runsOut.length - NAMED} more`] : []),
        'As the record stood when this file was made; the plan says it as it stands now.',
      ].join('\n'),
    )}`,
    'END:VTODO',
  ]);
  return ['BEGIN:VCALENDAR', 'VERSION:2.0', 'PRODID:-//Kartwright//EN', ...entries, 'END:VCALENDAR']
    .map(folded)
    .join('');
}

const counted = (n: number): string => `${n} ${n === 1 ? 'item' : 'items'}`;

/** RFC 5545 §3.3.5, form 2: 20260501T100000Z */
const instant = (at: string): string => `${at.slice(0, 19).replace(/[-:]/g, '')}Z`;

/** The same entry has the same name each time, so that a calendar replaces it (§3.8.4.7). */
const uid = (...parts: readonly string[]): string => `${parts.map(encodeURIComponent).join('/')}@kartwright`;

/** §3.3.11 */
const escaped = (text: string): string => text.replace(/[\\;,]/g, '\\$&').replace(/\r?\n/g, '\\n');

/** §3.1: no line of more than 75 octets; a character of several octets stays whole. */
function folded(line: string): string {
  const pieces = [''];
  let octets = 0;
  for (const sign of line) {
    const size = octetsOf(sign.codePointAt(0) ?? 0);
    if (octets + size > LINE_OCTETS) {
      pieces.push(' ');
      octets = 1;
    }
    pieces[pieces.length - 1] += sign;
    octets += size;
  }
  return `${pieces.join('\r\n')}\r\n`;
}
const LINE_OCTETS = 75;
/** Of a character in UTF-8, RFC 3629 §3. */
const octetsOf = (code: number): number => (code < 0x80 ? 1 : code < 0x800 ? 2 : code < 0x1_0000 ? 3 : 4);
