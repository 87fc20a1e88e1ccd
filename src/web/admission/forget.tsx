import { useState } from 'preact/hooks';
import type { Problem } from '../../app/index.ts';
import { Refused } from '../parts.tsx';
import { admissionWords } from '../words/admission.tsx';
import { forget, type Gone } from './asked.ts';

/** A person taken out of the book: first what would go, then for good. */
export function Forget({ who, onDone }: { readonly who: string; readonly onDone: () => Promise<void> }) {
  const [person, setPerson] = useState('');
  const [words, setWords] = useState(false);
  const [shown, setShown] = useState<Gone>();
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const say = async (dryRun: boolean): Promise<void> => {
    const answer = await forget({ person: person.trim(), by: who, words, dryRun });
    setShown(answer.ok ? answer.value : undefined);
    setProblems(answer.ok ? [] : answer.problems);
    if (answer.ok && answer.value.done) await onDone();
  };
  const other = (change: () => void): void => {
    change();
    setShown(undefined);
  };
  return (
    <section class="group forget">
      <h2>{admissionWords.forgetPerson}</h2>
      <p>{admissionWords.forgetIsForGood}</p>
      <label class="ask">
        {admissionWords.forgetWho}
        <input value={person} onInput={e => other(() => setPerson(e.currentTarget.value))} autocomplete="off" />
      </label>
      <label class="role">
        <input type="checkbox" checked={words} onChange={e => other(() => setWords(e.currentTarget.checked))} />
        <span>{admissionWords.forgetWords}</span>
      </label>
      <Refused problems={problems} />
      <button type="button" class="button big" disabled={person.trim() === ''} onClick={() => void say(true)}>
        {admissionWords.forgetLook}
      </button>
      {person.trim() !== '' && (
        <a
          class="button"
          href={`/api/export/files?person=${encodeURIComponent(person.trim())}`}
          download="kartwright.tar"
        >
          {admissionWords.forgetTake}
        </a>
      )}
      {shown && (
        <div role="status">
          <p>
            {admissionWords.forgetGoes(shown.theirs, shown.naming, shown.files.length)}{' '}
            {admissionWords.forgetAs(shown.as)}
          </p>
          {shown.left.map(where => (
            <p key={where}>{admissionWords.forgetLeft(where)}</p>
          ))}
          {shown.done ? (
            <p class="note">{admissionWords.forgetDone}</p>
          ) : (
            <button type="button" class="button main big" onClick={() => void say(false)}>
              {admissionWords.forgetDo}
            </button>
          )}
        </div>
      )}
    </section>
  );
}
