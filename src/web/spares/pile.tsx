/** Spares that serve one part or several alike: how many to carry and why; how many lie there, counted with one press. */
import { useState } from 'preact/hooks';
import type { Problem } from '../../app/index.ts';
import type { Pile } from '../../life/index.ts';
import { Refused } from '../parts.tsx';
import type { Session } from '../session.ts';
import { capital } from '../words/reads.ts';
import { sparesWords } from '../words/spares.tsx';

export function PileRow({ pile, session }: { readonly pile: Pile; readonly session: Session }) {
  const { name, parts, carry, have, counted, buy, fails, held, basis, changeMinutes, why } = pile;
  return (
    <li>
      <h3>
        {carry} × {name}
      </h3>
      <p>
        {sparesWords.minToChange(
          counted ? sparesWords.inBox(have) : sparesWords.neverCountedTaken,
          buy,
          Math.round(changeMinutes),
          parts.length,
        )}
      </p>
      <p class="soft">
        {sparesWords.needed(fails.words, carry > 0 ? sparesWords.whatIsCarriedIsEnough(held.words) : '', basis)}
      </p>
      {why !== null && <p class="note">{why}</p>}
      <Count name={name} have={counted ? have : undefined} session={session} />
    </li>
  );
}

function Count(props: { readonly name: string; readonly have: number | undefined; readonly session: Session }) {
  const { name, have, session } = props;
  const [open, setOpen] = useState(false);
  const [typed, setTyped] = useState(have?.toString() ?? '');
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  if (!open)
    return (
      <button
        type="button"
        class="button plain no-print"
        aria-label={sparesWords.countInBox(name)}
        onClick={() => setOpen(true)}
      >
        {sparesWords.count}
      </button>
    );
  return (
    <form
      class="count no-print"
      onSubmit={async e => {
        e.preventDefault();
        const written = await session.write([{ kind: 'spares counted', of: name, count: Number(typed) }]);
        setProblems(written.kind === 'refused' ? written.problems : []);
        setOpen(written.kind === 'refused');
      }}
    >
      <label>
        {sparesWords.inBoxOf(capital(name))}
        <input
          type="number"
          min="0"
          max="999"
          step="1"
          required
          value={typed}
          onInput={e => setTyped(e.currentTarget.value)}
        />
      </label>
      <button type="submit" class="button main" disabled={session.view().writing}>
        {sparesWords.counted}
      </button>
      <Refused problems={problems} />
    </form>
  );
}
