import { useState } from 'preact/hooks';
import type { Problem } from '../../app/index.ts';
import { Refused } from '../parts.tsx';
import { comeIn } from './asked.ts';
import './devices.css';

/** The first page on a device that the server does not know: the code that the laptop shows, and what to call this device. */
export function Pair({ shown, onIn }: { readonly shown: string; readonly onIn: () => void }) {
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
        <h1>Let this device in</h1>
        <p>
          The book is on another machine. There, under Record, choose <i>Devices</i>, or type{' '}
          <code>kartwright devices pair</code>. It shows a code that counts for ten minutes.
        </p>
        <form
          onSubmit={e => {
            e.preventDefault();
            if (good && !asking) void send();
          }}
        >
          <label for="pair-code">The code</label>
          <input
            id="pair-code"
            class="code"
            autocomplete="off"
            autocapitalize="characters"
            spellcheck={false}
            maxLength={20}
            placeholder="ABCD-EFGH"
            value={code}
            onInput={e => setCode(e.currentTarget.value)}
          />
          <label for="pair-name">What to call this device</label>
          <input
            id="pair-name"
            autocomplete="off"
            maxLength={80}
            placeholder="Phone of the driver"
            value={name}
            onInput={e => setName(e.currentTarget.value)}
          />
          <Refused problems={problems} />
          <div class="answers">
            <button type="submit" class="button main big full" disabled={!good || asking}>
              {asking ? 'Asking …' : 'Let it in'}
            </button>
          </div>
        </form>
        <p class="soft">What is written on this device carries its name in the book from then on.</p>
      </main>
    </div>
  );
}

/** The code in an address that a camera read: `#/pair/ABCD-EFGH`. What stands behind # is never sent to a server. */
export const codeIn = (hash: string): string => /^#\/pair\/([0-9A-Za-z-]{1,20})$/.exec(hash)?.[1] ?? '';
