/** Spares that serve one part or several alike: how many to carry and why; how many lie there, counted with one press. */
import { useState } from 'preact/hooks';
import type { Problem } from '../../app/index.ts';
import type { Pile } from '../../life/index.ts';
import { Refused } from '../parts.tsx';
import type { Session } from '../session.ts';
import { capital } from '../words.ts';

export function PileRow({ pile, session }: { readonly pile: Pile; readonly session: Session }) {
  const { name, parts, carry, have, counted, buy, fails, held, basis, changeMinutes, why } = pile;
  return (
    <li>
      <h3>
        {carry} × {name}
      </h3>
      <p>
        {counted ? `${have} in the box` : 'never counted, taken as none in the box'}
        {buy > 0 ? `, buy ${buy}` : ''}. {Math.round(changeMinutes)} min to change.
        {parts.length > 1 ? ` For ${parts.length} parts.` : ''}
      </p>
      <p class="soft">
        Needed in {fails.words}. {carry > 0 && `What is carried is enough in ${held.words}. `}
        {basis}
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
        aria-label={`Count ${name} in the box`}
        onClick={() => setOpen(true)}
      >
        Count
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
        {capital(name)} in the box
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
        Counted
      </button>
      <Refused problems={problems} />
    </form>
  );
}
