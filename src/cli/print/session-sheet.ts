/** A session and a season as plain lines that fit on a printed page. */

import type { Season, SessionSheet } from '../../app/index.ts';
import { TYRES } from '../../book/index.ts';
import { own } from '../units.ts';
import { lapBody, lapTime } from './laps.ts';
import { count, duration, heading, shortTime, wrap } from './wrap.ts';

export function sessionSheetText(sheet: SessionSheet): string {
  const { kart, invented, session, ran, laps, before, changed, settings, notes } = sheet;
  const facts = [
    ran ? duration(session.minutes) : `${duration(session.minutes)} by its laps, no run was written down`,
    session.wet ? 'wet' : 'dry',
    ...(session.track === null ? [] : [session.track]),
  ];
  return [
    wrap(`Kart ${kart}${invented ? ' (invented)' : ''}: ${session.label}, ${shortTime(session.at)}.`),
    wrap(`${facts.join(', ')}.`),
    heading('laps'),
    laps === null ? wrap('No lap times are in the book: laps import FILE, or laps by-hand TIMES.') : lapBody(laps),
    heading('conditions'),
    wrap(conditions(sheet)),
    heading('tyres'),
    ...tyreLines(sheet),
    heading(before === null ? 'changed' : `changed since ${before.label}`),
    ...(before === null
      ? [wrap('It is the first session of the record.')]
      : changed.length === 0
        ? [wrap('Nothing of the set-up was written down.')]
        : changed.map(({ name, was, now }) =>
            wrap(`${name}: ${own(`${was ?? 'not known'} → ${now ?? 'not known'}`)}`, '  '),
          )),
    heading('set-up'),
    ...(settings.length === 0
      ? [wrap('Nothing was written down.')]
      : settings.map(({ name, value }) => wrap(`${name}: ${own(value)}`, '  '))),
    ...(notes.length === 0 ? [] : [heading('notes'), ...notes.map(note => wrap(note, '  '))]),
  ].join('');
}

function conditions({ weather, session, plug, litres }: SessionSheet): string {
  const { celsius, pascal, pressureIs, humidity, trackCelsius, note } = weather ?? {};
  const said = [
    celsius === undefined ? '' : own(`air ${celsius} °C`),
    pascal === undefined
      ? ''
      : `${own(`${(pascal / 100).toFixed(0)} hPa`)}${pressureIs === undefined ? '' : ` (${pressureIs})`}`,
    humidity === undefined ? '' : `humidity ${Math.round(100 * humidity)} %`,
    trackCelsius === undefined ? '' : own(`surface ${trackCelsius} °C`),
    plug === null ? '' : `plug read ${plug}`,
    litres === null ? '' : own(`${litres} l of fuel used`),
    session.conditions ?? '',
    note ?? '',
  ].filter(one => one !== '');
  return said.length === 0 ? 'No weather was written down.' : `${said.join(', ')}.`;
}

function tyreLines({ tyres, cold, hot, treads }: SessionSheet): readonly string[] {
  const lines = TYRES.flatMap(tyre => {
    const [before, after, tread] = [cold[tyre], hot[tyre], treads?.[tyre]];
    const said = [
      ...(before ? [own(`cold ${before.text}`)] : []),
      ...(after ? [own(`hot ${after.text}`)] : []),
      ...(tread ? [`tread ${tread.inside}/${tread.middle}/${tread.outside} °C`] : []),
    ];
    return said.length === 0 ? [] : [wrap(`${tyre.padEnd(12)} ${said.join(', ')}`, '  ')];
  });
  const set = tyres === null ? [] : [wrap(`set ${tyres}`, '  ')];
  return lines.length + set.length === 0 ? [wrap('Nothing was written down.')] : [...set, ...lines];
}

export function seasonText(season: Season): string {
  const { kart, invented, minutes, laps, sessions, events, best, say } = season;
  return [
    wrap(
      `Kart ${kart}${invented ? ' (invented)' : ''}: ${duration(minutes)}, ${count(laps, 'lap')}, ${count(sessions, 'session')}.`,
    ),
    heading('events'),
    ...events.map(one =>
      wrap(
        `${one.event}${one.track === null ? '' : `, ${one.track}`}: ${count(one.sessions, 'session')}, ${duration(one.minutes)}, ${count(one.laps, 'lap')}${one.best === null ? '' : `, best ${lapTime(one.best)} s`}`,
        `${one.at.slice(0, 10)}  `,
      ),
    ),
    heading('best laps'),
    ...(best.length === 0 ? [wrap('No lap times with a track are in the book.')] : []),
    ...best.map(({ track, wet, lap, session, celsius }) =>
      wrap(
        `${track}, ${wet ? 'wet' : 'dry'}: ${lapTime(lap.time)} s in ${session}${celsius === null ? '' : `, air ${celsius} °C`}`,
        '  ',
      ),
    ),
    '\n',
    ...say.map(each => wrap(each, 'note: ')),
  ].join('');
}
