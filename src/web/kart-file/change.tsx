/** What a changed kart file does, said before it is filed; filing it, leaving it, and bringing the one before back. */
import './kart-file.css';
import type { KartChange } from '../../app/index.ts';
import { Glyph } from '../glyph.tsx';
import { Refused } from '../parts.tsx';
import { hashOf } from '../place.ts';
import { kartFileWords } from '../words/kart-file.ts';
import { dateOf, spanOf } from '../words/reads.ts';
import { changeSaid } from './said.ts';
import type { KartFileUse } from './use-kart-file.ts';

const FEW = 8;

export function Change({ use, writing }: { readonly use: KartFileUse; readonly writing: boolean }) {
  const { told, text, filed, done } = use;
  const same = text === filed.text;
  const right = told !== undefined && told.problems.length === 0 && told.renamed === undefined;
  return (
    <section class="group change" id="change" aria-label={kartFileWords.whatItDoes}>
      <h2>{kartFileWords.whatItDoes}</h2>
      {use.overtaken && (
        <p class="note need">
          {kartFileWords.overtaken(filed.by, dateOf(filed.at))}{' '}
          <button type="button" class="button" onClick={use.leave}>
            {kartFileWords.beginFromIt}
          </button>
        </p>
      )}
      <div role="status">
        {done !== undefined && <p class="note">{kartFileWords.filed}</p>}
        {same ? (
          done === undefined && <p class="soft head-gap">{kartFileWords.nothingChanged}</p>
        ) : told === undefined ? (
          <p class="soft head-gap">{kartFileWords.reading}</p>
        ) : !right ? (
          <p class="note need">{kartFileWords.notFiledYet(Math.max(1, told.problems.length))}</p>
        ) : told.change === undefined ? (
          <p class="soft head-gap">{kartFileWords.working}</p>
        ) : (
          <Said change={told.change} />
        )}
      </div>
      <Refused problems={use.refused} />
      <div class="answers">
        {done !== undefined && (
          <button type="button" class="button big full" disabled={writing} onClick={() => void use.undo()}>
            {kartFileWords.undo}
          </button>
        )}
        {!same && right && told.change !== undefined && (
          <button type="button" class="button main big full" disabled={writing} onClick={() => void use.file()}>
            {writing
              ? kartFileWords.filing
              : changeSaid(told.change).grave.length > 0
                ? kartFileWords.fileItSo
                : kartFileWords.fileIt}
          </button>
        )}
        {!same && (
          <button type="button" class="button plain full" disabled={writing} onClick={use.leave}>
            {kartFileWords.leave}
          </button>
        )}
        {done !== undefined && (
          <a class="button full" href={hashOf({ sheet: 'kart' })}>
            {kartFileWords.kart}
          </a>
        )}
      </div>
    </section>
  );
}

function Said({ change }: { readonly change: KartChange }) {
  const { grave, lines } = changeSaid(change);
  const { before, after } = change.plan;
  const of = ({ steps, minutes }: typeof before): string => kartFileWords.steps(steps, spanOf(minutes));
  return (
    <ul class="rows">
      {grave.map(line => (
        <li key={line}>
          <Glyph sign="caution" />
          <div>
            <b>{line}</b>
          </div>
          <span />
        </li>
      ))}
      {change.reasonsGone.length > 0 && (
        <li>
          <Glyph sign="caution" />
          <div>
            <b>{kartFileWords.reasonsGone(change.reasonsGone.length)}</b>
            {change.reasonsGone.slice(0, FEW).map(reason => (
              <p key={reason}>{reason}</p>
            ))}
            {change.reasonsGone.length > FEW && <p>{kartFileWords.moreReasons(change.reasonsGone.length - FEW)}</p>}
          </div>
          <span />
        </li>
      )}
      {[...lines, kartFileWords.plan(of(before), of(after))].map(line => (
        <li key={line}>
          <Glyph sign="note" />
          <div>{line}</div>
          <span />
        </li>
      ))}
    </ul>
  );
}
