/** The set-up sheet as plain lines, to be read at the kart or pinned beside it. */

import type { SetupSheet } from '../../prep/index.ts';
import { own } from '../units.ts';
import { count, heading, shortTime, wrap } from './wrap.ts';

export function sheetText(sheet: SetupSheet): string {
  const invented = sheet.invented ? ' (invented)' : '';
  const asOf = sheet.at === null ? '' : `, as of ${shortTime(sheet.at)}`;
  return (
    wrap(`Set-up of kart ${sheet.kart}${invented}${asOf}.`) +
    settings(sheet) +
    (sheet.about === null ? differences(sheet) : '') +
    hints(sheet) +
    observed(sheet)
  );
}

function settings({ settings: every, tyres: set, about }: SetupSheet): string {
  const all = every.filter(({ name }) => about === null || name.toLowerCase() === about.toLowerCase());
  const tyres = about === null ? set : null;
  if (every.length === 0)
    return wrap('No setting is in the record. Write one down: kartwright log set-up "rear width=1390 mm".');
  if (all.length === 0) return '';
  const widest = Math.max(...all.map(one => called(one).length));
  const lines = all.map(({ value, from, at, ...one }) =>
    wrap(
      `${own(value)}   ${from === 'reading' ? 'read' : 'set'} ${at.slice(0, 10)}`,
      `  ${called(one).padEnd(widest)}  `,
    ),
  );
  return heading('settings') + lines.join('') + (tyres === null ? '' : wrap(tyres, `  ${'tyres'.padEnd(widest)}  `));
}

/** `centred (axle)`: the name to ask for, and where it was read. */
const called = ({ name, part }: { readonly name: string; readonly part: string | null }): string =>
  part === null ? name : `${name} (${part})`;

function differences({ against, differences: all }: SetupSheet): string {
  if (against === null) return '';
  const from = `${against.label}, ${shortTime(against.at)}`;
  if (all.length === 0) return heading('changed') + wrap(`Nothing against ${from}.`);
  const lines = all.map(({ was, now, by, ...one }) =>
    wrap(
      `${called(one)}: ${own(`${was ?? 'not written down'} → ${now ?? 'not written down'}${by === null ? '' : ` (${by})`}`)}`,
      '  ',
    ),
  );
  return heading('changed') + wrap(`${count(all.length, 'setting')} against ${from}:`) + lines.join('');
}

function hints({ hints: all, note }: SetupSheet): string {
  if (all.length === 0) return '';
  const lines = all.map(hint => {
    const phases = (['entry', 'mid', 'exit', 'use'] as const).flatMap(phase =>
      hint[phase] === undefined ? [] : [`${phase}: ${hint[phase]}`],
    );
    const against = hint.disagreement === undefined ? '' : wrap(`But: ${hint.disagreement}.`, '      ');
    const of = hint.opposite ? `the other way, ${hint.change}` : hint.change;
    return wrap(`${of}: ${phases.join('; ')}.`, '  ') + wrap(`Source: ${hint.source}.`, '      ') + against;
  });
  return heading('what is said of it') + (note === null ? '' : wrap(note)) + lines.join('');
}

function observed({ observed: all }: SetupSheet): string {
  if (all.length === 0) return '';
  const lines = all.map(one => {
    const reason = one.why === null ? '' : `, ${one.why}`;
    const ran = (outing: (typeof one)['before']): string =>
      outing === null ? 'nothing' : `${outing.label}${outing.conditions === null ? '' : ` (${outing.conditions})`}`;
    return (
      wrap(`${shortTime(one.at)}  ${one.setting} ${own(`${one.was} → ${one.now}`)}${reason}`, '  ') +
      wrap(`Ran before: ${ran(one.before)}. Ran after: ${ran(one.after)}.`, '      ') +
      one.notes.map(note => wrap(`Noted: ${note}`, '      ')).join('') +
      (one.doubts.length === 0 ? '' : wrap(`Cannot be laid side by side: ${one.doubts.join('; ')}.`, '      '))
    );
  });
  return (
    heading('what this kart showed') +
    wrap('From the record alone; whether a change made it faster takes laps both ways.') +
    lines.join('')
  );
}
