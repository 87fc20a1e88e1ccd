/** One log on the table, from the first byte to its laps. */
import { MOST_KEPT } from '../../app/index.ts';
import { useBeingWritten } from '../kept.ts';
import { Refused } from '../parts.tsx';
import type { Keep } from '../place.ts';
import type { Session, Snapshot } from '../session.ts';
import { eventNow } from '../track/now.ts';
import type { Typed } from '../track/said.ts';
import { lapsCount, problemText, sizeOf } from '../words/laps/reads.ts';
import { lapsWords } from '../words/laps/sheet.tsx';
import { Columns } from './columns.tsx';
import type { Desk, OnTable, Stage } from './desk.ts';
import { GateTools } from './gate-tools.tsx';
import { importInWorker } from './importing.ts';
import { intoBook, type LapsWritten } from './into-book.ts';
import { LapTable } from './lap-table.tsx';
import { PassedOver, ReadAs } from './read-as.tsx';
import { columnsSaid, gatesSaid } from './saying.ts';
import { SessionForm } from './session-form.tsx';

export function LogOnTable(props: {
  readonly desk: Desk;
  readonly log: OnTable;
  readonly snapshot: Snapshot;
  readonly session: Session;
  readonly keep: Keep;
  /** Where this very file is already, in words. */
  readonly already: string | undefined;
  readonly onWritten: (written: LapsWritten) => void;
}) {
  const { desk, log, snapshot, session, keep, already, onWritten } = props;
  const { stage } = log;
  const [isSent, isWritten] = useBeingWritten(session);
  return (
    <section class="step log" aria-label={log.name}>
      <header>
        <b>{log.name}</b>
        <span>{stateOf(stage)}</span>
        <button type="button" class="button small no-print" onClick={() => desk.remove(log.id)}>
          {stage.kind === 'reading' ? lapsWords.cancel : lapsWords.putAway}
          <span class="unseen"> {log.name}</span>
        </button>
      </header>
      <div class="step-body">
        {stage.kind === 'reading' && <Reading stage={stage} of={log.file.size} />}
        {stage.kind === 'columns' && (
          <Columns id={log.id} asked={stage.asked} onChosen={layout => desk.choose(log.id, layout)} />
        )}
        {stage.kind === 'refused' && (
          <>
            <Refused problems={[{ code: 'wrong shape', where: log.name, ...problemText(stage.problem) }]} />
            <PassedOver skipped={stage.skipped} />
          </>
        )}
        {stage.kind === 'read' && (
          <>
            {already && <p class="note need">{already}</p>}
            <ReadAs log={stage.log} />
            <div class="log-page" inert={isSent}>
              <GateTools
                name={log.name}
                log={stage.log}
                found={stage.found}
                onGates={(gates, turn) => desk.setGates(log.id, gates, turn)}
              />
              <LapTable
                name={log.name}
                found={stage.found}
                looking={stage.looking}
                marked={stage.marked}
                onMark={lap => desk.mark(log.id, lap)}
              />
            </div>
            {log.file.size > MOST_KEPT && <TooLarge bytes={log.file.size} />}
            {stage.found.gates && stage.found.laps.length > 0 && (
              <SessionForm
                form={`log-${log.id}`}
                of={log.name}
                {...{ snapshot, session, keep, onWritten }}
                likely={likely(stage, snapshot)}
                beside={[stage.log, stage.found, stage.marked]}
                undated={stage.log.zero.kind === 'no date'}
                button={lapsWords.writeIntoBook(lapsCount(stage.found.laps.length))}
                send={(said, sure) =>
                  isWritten(
                    intoBook(
                      session,
                      (book, kart) =>
                        importInWorker(book, {
                          file: log.file,
                          kart,
                          said: {
                            ...{ by: keep.get('name'), name: log.name, ...said, ...(sure && { sure }) },
                            ...(stage.found.gates && { gates: gatesSaid(stage.found.gates) }),
                            columns: stage.log.chosen ? columnsSaid(stage.log.layout) : [],
                            without: [...stage.marked],
                          },
                        }),
                      () => desk.remove(log.id),
                    ),
                  )
                }
              />
            )}
          </>
        )}
      </div>
    </section>
  );
}

function likely({ log, found }: Stage & { readonly kind: 'read' }, snapshot: Snapshot): Typed {
  const event = eventNow(snapshot);
  const track = found.track ?? event?.track;
  return {
    minutes: String(Math.max(1, Math.round(log.moving / 60))),
    ...(event && { event: event.event }),
    ...(track && { track }),
  };
}

/** Said before it is written: afterwards it is too late to keep it elsewhere. */
function TooLarge({ bytes }: { readonly bytes: number }) {
  return <p class="note need">{lapsWords.moreThanThatBookKeeps(sizeOf(bytes), sizeOf(MOST_KEPT))}</p>;
}

function Reading({ stage, of }: { readonly stage: Stage & { readonly kind: 'reading' }; readonly of: number }) {
  return (
    <>
      <progress value={stage.bytes} max={Math.max(of, 1)} aria-label={lapsWords.readSoFar} />
      <p class="soft">{lapsWords.ofFixes(sizeOf(stage.bytes), sizeOf(of), stage.fixes.toLocaleString('en-GB'))}</p>
    </>
  );
}

function stateOf(stage: Stage): string {
  if (stage.kind === 'waiting') return lapsWords.waitsItsTurn;
  if (stage.kind === 'reading') return lapsWords.beingRead;
  if (stage.kind === 'columns') return lapsWords.columnsToChoose;
  if (stage.kind === 'refused') return lapsWords.notRead;
  return stage.looking ? 'read' : `${stage.found.laps.length} laps`;
}
