/** Laps: logs put down, their track and gate, their laps. */
import '../numbers/plates/plates.css';
import '../track/track.css';
import './laps.css';
import { useEffect, useState } from 'preact/hooks';
import type { Keep } from '../place.ts';
import type { Session, Snapshot } from '../session.ts';
import { dateOf } from '../words.ts';
import { createDesk, type Desk, handInWorker, type OnTable } from './desk.ts';
import { LogOnTable } from './on-table.tsx';
import { PutDown } from './put-down.tsx';

export type LapsProps = { readonly snapshot: Snapshot; readonly session: Session; readonly keep: Keep };

/** One for the page: what lies on it stays there while another sheet is looked at. */
let desk: Desk | undefined;

export function LapsSheet({ snapshot, keep }: LapsProps) {
  desk ??= createDesk(handInWorker, keep);
  const table = desk;
  const [, redraw] = useState(0);
  useEffect(() => table.onChange(() => redraw(n => n + 1)), [table]);
  const logs = table.list();
  return (
    <>
      <h1>Laps</h1>
      <PutDown onFiles={files => table.put(files, [])} />
      {logs.map(log => (
        <LogOnTable key={log.id} desk={table} log={log} already={alreadyThere(log, logs, snapshot)} />
      ))}
    </>
  );
}

/** The same bytes, told by their hash, in the book or on this table. */
function alreadyThere(log: OnTable, logs: readonly OnTable[], { facts }: Snapshot): string | undefined {
  if (log.stage.kind !== 'read') return undefined;
  const { hash } = log.stage.log;
  const line = facts.find(({ fact, struck }) => struck === null && fact.kind === 'laps' && fact.file === hash);
  if (line) return `This very file is in the book since ${dateOf(line.fact.recorded)}.`;
  const twin = logs.find(each => each.id < log.id && each.stage.kind === 'read' && each.stage.log.hash === hash);
  return twin && `This very file lies on the table already, as ${twin.name}.`;
}
