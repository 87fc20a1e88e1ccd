/** One log on the table, from the first byte to its laps. */
import { Refused } from '../parts.tsx';
import { Columns } from './columns.tsx';
import type { Desk, OnTable, Stage } from './desk.ts';
import { GateTools } from './gate-tools.tsx';
import { LapTable } from './lap-table.tsx';
import { PassedOver, ReadAs } from './read-as.tsx';
import { problemText, sizeOf } from './words.ts';

export function LogOnTable(props: {
  readonly desk: Desk;
  readonly log: OnTable;
  /** Where this very file is already, in words. */
  readonly already: string | undefined;
}) {
  const { desk, log, already } = props;
  const { stage } = log;
  return (
    <section class="step log" aria-label={log.name}>
      <header>
        <b>{log.name}</b>
        <span>{stateOf(stage)}</span>
        <button type="button" class="button small" onClick={() => desk.remove(log.id)}>
          {stage.kind === 'reading' ? 'Cancel' : 'Put away'}
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
            <div class="log-page">
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
          </>
        )}
      </div>
    </section>
  );
}

function Reading({ stage, of }: { readonly stage: Stage & { readonly kind: 'reading' }; readonly of: number }) {
  return (
    <>
      <progress value={stage.bytes} max={Math.max(of, 1)} aria-label="Read so far" />
      <p class="soft">
        {sizeOf(stage.bytes)} of {sizeOf(of)}, {stage.fixes.toLocaleString('en-GB')} fixes
      </p>
    </>
  );
}

function stateOf(stage: Stage): string {
  if (stage.kind === 'waiting') return 'waits its turn';
  if (stage.kind === 'reading') return 'being read';
  if (stage.kind === 'columns') return 'columns to choose';
  if (stage.kind === 'refused') return 'not read';
  return stage.looking ? 'read' : `${stage.found.laps.length} laps`;
}
