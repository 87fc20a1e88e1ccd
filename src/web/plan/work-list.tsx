import { aimsSaid } from '../choice/aims.ts';
import { withOwnDays } from '../choice/dates.ts';
import { PrintSign, PrintTitle } from '../parts.tsx';
import type { Snapshot } from '../session.ts';
import { actionOf, titleOf } from '../words/reads.ts';
import { workWords } from '../words/work.ts';

/** The same plan for a clipboard: numbers, targets, a box to tick, room for what was read. */
export function WorkList({ snapshot }: { readonly snapshot: Snapshot }) {
  const { plan, kart } = snapshot;
  const toDo = plan.steps.filter(s => s.state !== 'done');
  return (
    <section class="only-print">
      <PrintTitle title={workWords.workList} kart={kart.name} event={plan.event} invented={kart.invented} />
      <table class="print">
        <thead>
          <tr>
            <th>{workWords.no}</th>
            <th>{workWords.stepAndWhy}</th>
            <th class="limits">{workWords.targetTolerance}</th>
            <th class="hand">{workWords.read}</th>
            <th class="tick">{workWords.doneHead}</th>
          </tr>
        </thead>
        <tbody>
          {toDo.map(s => (
            <tr key={s.key}>
              <td>{s.n}</td>
              <td>
                <b>{actionOf(s)}</b>: {titleOf(s)}
                {s.item !== null && ` (${s.part})`}. {withOwnDays(s.why)}
                {s.caution !== null && (
                  <>
                    <br />
                    <b>{workWords.cautionOnPaper(s.caution)}</b>
                  </>
                )}
              </td>
              <td>{aimsSaid(s) || s.accept}</td>
              <td class="hand" />
              <td class="tick">☐</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p class="head-gap">{workWords.makersManualRules}</p>
      <PrintSign who={workWords.signatureOfWhoWorked} />
    </section>
  );
}
