import { useState } from 'preact/hooks';
import type { Problem } from '../../app/index.ts';
import { Refused } from '../parts.tsx';
import { comeIn } from './asked.ts';
import './devices.css';
import { admissionWords } from '../words/admission.tsx';

/** The first page on a device that the server does not know: the code that the laptop shows, and what to call this device. */
export function Pair(props: {
  readonly shown: string;
  readonly onIn: () => void;
  readonly onBack?: (() => void) | undefined;
}) {
  const { shown, onIn, onBack } = props;
  const [code, setCode] = useState(shown);
  const [name, setName] = useState('');
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const [asking, setAsking] = useState(false);
  const good = code.trim() !== '' && name.trim() !== '';
  const send = async (): Promise<void> => {
    setAsking(true);
    const answer = await comeIn(code, name.trim());
    setAsking(false);
    if (answer.ok) onIn();
    else setProblems(answer.problems);
  };
  return (
    <div class="frame">
      <main class="pair">
        <h1>{admissionWords.letThisDevice}</h1>
        <p>{admissionWords.bookIsOnAnotherMachine()}</p>
        <form
          onSubmit={e => {
            e.preventDefault();
            if (good && !asking) void send();
          }}
        >
          <label for="pair-code">{admissionWords.theCode}</label>
          <input
            id="pair-code"
            class="code"
            autocomplete="off"
            autocapitalize="characters"
            spellcheck={false}
            maxLength={20}
            placeholder={admissionWords.abcdEfgh}
            value={code}
            onInput={e => setCode(e.currentTarget.value)}
          />
          <label for="pair-name">{admissionWords.whatToCallThisDevice}</label>
          <input
            id="pair-name"
            autocomplete="off"
            maxLength={80}
            placeholder={admissionWords.phoneOfDriver}
            value={name}
            onInput={e => setName(e.currentTarget.value)}
          />
          <Refused problems={problems} />
          <div class="answers">
            <button type="submit" class="button main big full" disabled={!good || asking}>
              {asking ? admissionWords.asking : admissionWords.let}
            </button>
            {onBack && (
              <button type="button" class="button full" onClick={onBack}>
                {admissionWords.backToBook}
              </button>
            )}
          </div>
        </form>
        <p class="soft">{admissionWords.whatIsWritten}</p>
      </main>
    </div>
  );
}

/** The code in an address that a camera read: `#/pair/ABCD-EFGH`. What stands behind # is never sent to a server. */
export const codeIn = (hash: string): string => /^#\/pair\/([0-9A-Za-z-]{1,20})$/.exec(hash)?.[1] ?? '';
