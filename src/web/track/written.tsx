/** What one press wrote, within reach: two separate taps strike all of it, so that one slip cannot. */
import { useState } from 'preact/hooks';
import type { Problem } from '../../app/index.ts';
import type { Fact } from '../../book/index.ts';
import { Refused } from '../parts.tsx';
import type { Keep } from '../place.ts';
import type { Session, Snapshot } from '../session.ts';
import { factWords, timeOf } from '../words/reads.ts';
import { trackWords } from '../words/track.tsx';

const slotOf = (kart: string): string => `track written ${kart}`;

/** The press is remembered by its facts, so that a reload finds it. */
export const keepWritten = (keep: Keep, kart: string, facts: readonly Fact[]): void =>
  keep.set(slotOf(kart), facts.map(({ id }) => id).join(' '));

export function LastWritten(props: { readonly snapshot: Snapshot; readonly session: Session; readonly keep: Keep }) {
  const { snapshot, session, keep } = props;
  const [asked, setAsked] = useState(''); // of which press
  const [refused, setRefused] = useState<readonly Problem[]>([]);
  const press = keep.get(slotOf(snapshot.kart.name));
  const ids = press.split(' ').filter(Boolean);
  const lines = snapshot.facts.filter(({ fact, struck }) => struck === null && ids.includes(fact.id)).toReversed();
  const [first] = lines;
  if (first === undefined) return null;
  const strike = async (): Promise<void> => {
    const written = await session.write(
      lines.map(({ fact }) => ({ kind: 'struck', fact: fact.id, why: trackWords.undoneAtTrack })),
    );
    setRefused(written.kind === 'refused' ? written.problems : []);
    setAsked('');
    if (written.kind === 'written') keep.set(slotOf(snapshot.kart.name), '');
  };
  const more = lines.length - 1;
  return (
    <div class="no-print">
      <div class="undo" role="status">
        <span>
          <span class="soft">{trackWords.written(timeOf(first.fact.at))}</span> {factWords(first.fact)}
          {more > 0 && <span class="soft"> {trackWords.andMore(more)}</span>}
        </span>
        {asked === press ? (
          <span class="undo-answers">
            <button type="button" class="button plain" onClick={() => setAsked('')}>
              {trackWords.keep}
            </button>
            <button type="button" class="button" onClick={strike} disabled={session.view().writing}>
              {trackWords.strikeAll(more, lines.length)}
            </button>
          </span>
        ) : (
          <button type="button" class="button plain" onClick={() => setAsked(press)}>
            {trackWords.undo}
          </button>
        )}
      </div>
      <Refused problems={refused} />
    </div>
  );
}
