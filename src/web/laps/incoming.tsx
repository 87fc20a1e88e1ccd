/** Where laps come in: logs put down, times typed; and the sessions that have laps already. */
import { useState } from 'preact/hooks';
import { useChanges } from '../changes.ts';
import type { Snapshot } from '../session.ts';
import { LastWritten } from '../track/written.tsx';
import { lapsWords } from '../words/laps/sheet.tsx';
import { dateOf } from '../words/reads.ts';
import { Stopwatch } from './by-hand.tsx';
import { createDesk, type Desk, handInWorker, type OnTable } from './desk.ts';
import type { LapsWritten } from './into-book.ts';
import { knownFrom } from './known.ts';
import { Older } from './older.tsx';
import { LogOnTable } from './on-table.tsx';
import { PutDown } from './put-down.tsx';
import { Sessions } from './sessions.tsx';
import type { LapsProps } from './sheet.tsx';

/** One for each kart: what lies on it stays there while another sheet is looked at, and is never written of another kart. */
const desks = new Map<string, Desk>();

export function Incoming({ snapshot, session, keep }: LapsProps) {
  const { name } = snapshot.kart;
  const table = desks.get(name) ?? createDesk(handInWorker, keep);
  desks.set(name, table);
  const [written, setWritten] = useState<LapsWritten>();
  useChanges(table);
  const logs = table.list();
  return (
    <>
      <div class="head-gap">
        <LastWritten snapshot={snapshot} session={session} keep={keep} />
      </div>
      {written && <Older written={written} snapshot={snapshot} />}
      <PutDown onFiles={files => table.put(files, knownFrom(snapshot))} />
      {logs.map(log => (
        <LogOnTable
          key={log.id}
          {...{ desk: table, log, snapshot, session, keep }}
          already={alreadyThere(log, logs, snapshot)}
          onWritten={setWritten}
        />
      ))}
      <Stopwatch snapshot={snapshot} session={session} keep={keep} onWritten={setWritten} />
      <Sessions snapshot={snapshot} />
    </>
  );
}

/** The same bytes, told by their hash, in the book or on this table. */
function alreadyThere(log: OnTable, logs: readonly OnTable[], { facts }: Snapshot): string | undefined {
  if (log.stage.kind !== 'read') return undefined;
  const { hash } = log.stage.log;
  const line = facts.find(({ fact, struck }) => struck === null && fact.kind === 'laps' && fact.file === hash);
  if (line) return lapsWords.thisVeryFile(dateOf(line.fact.recorded));
  const twin = logs.find(each => each.id < log.id && each.stage.kind === 'read' && each.stage.log.hash === hash);
  return twin && lapsWords.thisVeryFileLies(twin.name);
}
