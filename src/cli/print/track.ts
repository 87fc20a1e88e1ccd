/** The track sheet as plain lines: of each number what can hurt first, then what to do, what is missing and what it rests on. */

import type { TrackPart, TrackSheet } from '../../prep/index.ts';
import { own } from '../units.ts';
import { count, heading, shortTime, wrap } from './wrap.ts';

export function trackText(sheet: TrackSheet): string {
  const { kart, invented, at, laps, wet, last } = sheet;
  const coming = `${laps === null ? 'laps not known' : count(laps, 'lap')}, ${wet ? 'wet' : 'dry'}`;
  return (
    wrap(`Kart ${kart}${invented ? ' (invented)' : ''} before a session, as of ${shortTime(at)}: ${coming}.`) +
    wrap(last === null ? 'No session is in the record.' : `It last ran in ${last.label}, ${shortTime(last.at)}.`) +
    sheet.parts.map(partText).join('') +
    sinceText(sheet) +
    airText(sheet)
  );
}

function partText({ title, warning, lead, answer, missing, from }: TrackPart): string {
  const widest = Math.max(0, ...lead.map(({ label }) => label.length));
  const refused = answer?.kind === 'problems' ? answer.problems : [];
  const [said, notes] = answer?.kind === 'answer' ? [answer.say, answer.notes] : [[], []];
  return [
    heading(title.split(':')[0] ?? title),
    ...(warning === null ? [] : [wrap(warning, '!! ')]),
    ...lead.map(({ label, text }) => `  ${label.padEnd(widest)}  ${own(text)}\n`),
    ...said.map(sentence => wrap(sentence)),
    ...refused.map(({ path, expected, got, remedy }) =>
      wrap(`${path}: Expected ${expected}, got ${got}: ${remedy}.`, 'not answered: '),
    ),
    ...missing.map(({ what, how }) => wrap(`${what} ${how}`, 'missing: ')),
    ...from.map(text => wrap(text, 'from: ')),
    ...notes.map(note => wrap(note, 'note: ')),
  ].join('');
}

function sinceText({ last, since }: TrackSheet): string {
  if (last === null) return '';
  const lines = since.map(({ what, was, now }) =>
    wrap(`${what}: ${own(`${was === null ? '' : `${was} → `}${now}`)}`, '  '),
  );
  return (
    heading('changed since the last session') + (lines.length === 0 ? wrap('Nothing written down.') : lines.join(''))
  );
}

function airText({ air, baseline }: TrackSheet): string {
  if (air.length === 0) return '';
  const right = baseline === null ? '' : wrap(`The jet was last right in ${baseline.toFixed(3)} kg/m³.`);
  const lines = air.map(
    ({ at, density, band }) => `  ${shortTime(at)}  ${density.toFixed(3)} ± ${band.toFixed(3)} kg/m³\n`,
  );
  return heading('air of the day') + right + lines.join('');
}
