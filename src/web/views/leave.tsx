import { useEffect, useState } from 'preact/hooks';
import { leave, me } from '../admission/asked.ts';
import { Refused } from '../parts.tsx';
import type { Session } from '../session.ts';
import { leaveWords } from '../words/leave.ts';

type Problems = Parameters<typeof Refused>[0]['problems'];

/** Under every sheet of a device that was let in: the way out, in two presses. The machine that keeps the book has no login to end. */
export function Leave({ session }: { readonly session: Session }) {
  const [isIn, setIsIn] = useState(false);
  const [sure, setSure] = useState(false);
  const [problems, setProblems] = useState<Problems>([]);
  useEffect(() => void me().then(answer => setIsIn(answer.ok && answer.value.is === 'device')), []);
  if (!isIn) return null;
  const out = async (): Promise<void> => {
    const answer = await leave();
    setProblems(answer.ok ? [] : answer.problems);
    if (!answer.ok) return;
    setIsIn(false);
    await session.book.meet(); // from here on every page says that this device is not let in
  };
  return (
    <footer class="group no-print">
      <Refused problems={problems} />
      {sure && (
        <p class="note need" role="status">
          {leaveWords.whatHappens}
        </p>
      )}
      <div class="answers">
        {sure ? (
          <>
            <button type="button" class="button main full" onClick={() => void out()}>
              {leaveWords.yes}
            </button>
            <button type="button" class="button full" onClick={() => setSure(false)}>
              {leaveWords.no}
            </button>
          </>
        ) : (
          <button type="button" class="button plain full" onClick={() => setSure(true)}>
            {leaveWords.logOut}
          </button>
        )}
      </div>
    </footer>
  );
}
