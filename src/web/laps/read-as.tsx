/** How a log was read: what it holds, what of it was passed over, and where reading had to stop. */
import type { Skipped } from '../../laps/index.ts';
import { Cell, Refused } from '../parts.tsx';
import { momentIn, problemText, sizeOf } from '../words/laps/reads.ts';
import { lapsWords } from '../words/laps/sheet.tsx';
import { dateOf, spanOf, timeOf } from '../words/reads.ts';
import type { ReadLog } from './log.ts';

const FORMATS = { csv: 'CSV', gpx: 'GPX', nmea: 'NMEA 0183' } as const;

export function ReadAs({ log }: { readonly log: ReadLog }) {
  const began = momentIn(log.zero, log.from);
  const rate = 1 / log.step;
  return (
    <>
      <div class="cells">
        <Cell label={lapsWords.begins}>{began ? `${dateOf(began)}, ${timeOf(began)}` : lapsWords.logNamesNoDay}</Cell>
        <Cell label={lapsWords.lasts}>{spanOf((log.to - log.from) / 60)}</Cell>
        <Cell label={lapsWords.fixes}>
          {log.fixes.toLocaleString('en-GB')}, {lapsWords.aSecond(rate, rate.toFixed(0), log.step.toFixed(0))}
        </Cell>
        <Cell label={lapsWords.file}>
          {FORMATS[log.format]}, {sizeOf(log.bytes)}
        </Cell>
      </div>
      {log.stopped && (
        <Refused problems={[{ code: 'wrong shape', where: 'log', ...problemText(log.stopped) }]}>
          <p>{lapsWords.whatStoodBefore}</p>
        </Refused>
      )}
      {log.notes.map(note => (
        <p key={note} class="note">
          {note}
        </p>
      ))}
      <PassedOver skipped={log.skipped} />
    </>
  );
}

export function PassedOver({ skipped }: { readonly skipped: readonly Skipped[] }) {
  if (skipped.length === 0) return <p class="soft">{lapsWords.nothingOfFileWasPassed}</p>;
  const all = skipped.reduce((sum, { count }) => sum + count, 0);
  return (
    <details class="group">
      <summary>
        <h2>
          {lapsWords.passedOver} <span>{lapsWords.linesOrFixes(all.toLocaleString('en-GB'))}</span>
        </h2>
      </summary>
      <ul class="rows since">
        {skipped.map(({ reason, say, count, lines }) => (
          <li key={reason}>
            <div>
              <b>{count.toLocaleString('en-GB')}</b> {say}
              {lines.length > 0 && <p>{lapsWords.first(lines.length, lines.join(', '))}</p>}
            </div>
          </li>
        ))}
      </ul>
    </details>
  );
}
