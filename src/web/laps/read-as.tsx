/** How a log was read: what it holds, what of it was passed over, and where reading had to stop. */
import type { Skipped } from '../../laps/index.ts';
import { Cell, Refused } from '../parts.tsx';
import { dateOf, spanOf, timeOf } from '../words.ts';
import type { ReadLog } from './log.ts';
import { momentIn, problemText, sizeOf } from './words.ts';

const FORMATS = { csv: 'CSV', gpx: 'GPX', nmea: 'NMEA 0183' } as const;

export function ReadAs({ log }: { readonly log: ReadLog }) {
  const began = momentIn(log.zero, log.from);
  const rate = 1 / log.step;
  return (
    <>
      <div class="cells">
        <Cell label="Begins">{began ? `${dateOf(began)}, ${timeOf(began)}` : 'the log names no day'}</Cell>
        <Cell label="Lasts">{spanOf((log.to - log.from) / 60)}</Cell>
        <Cell label="Fixes">
          {log.fixes.toLocaleString('en-GB')},{' '}
          {rate >= 1 ? `${rate.toFixed(0)} a second` : `every ${log.step.toFixed(0)} s`}
        </Cell>
        <Cell label="File">
          {FORMATS[log.format]}, {sizeOf(log.bytes)}
        </Cell>
      </div>
      {log.stopped && (
        <Refused problems={[{ code: 'wrong shape', where: 'log', ...problemText(log.stopped) }]}>
          <p>What stood before it is used.</p>
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
  if (skipped.length === 0) return <p class="soft">Nothing of the file was passed over.</p>;
  const all = skipped.reduce((sum, { count }) => sum + count, 0);
  return (
    <details class="group">
      <summary>
        <h2>
          Passed over <span>{all.toLocaleString('en-GB')} lines or fixes</span>
        </h2>
      </summary>
      <ul class="rows since">
        {skipped.map(({ reason, say, count, lines }) => (
          <li key={reason}>
            <div>
              <b>{count.toLocaleString('en-GB')}</b> {say}
              {lines.length > 0 && (
                <p>
                  first in {lines.length === 1 ? 'line' : 'lines'} {lines.join(', ')}
                </p>
              )}
            </div>
          </li>
        ))}
      </ul>
    </details>
  );
}
