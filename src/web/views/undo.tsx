import { useState } from 'preact/hooks';
import type { Problem } from '../../app/index.ts';
import type { Fact } from '../../book/index.ts';
import { Refused } from '../parts.tsx';
import type { Session, Snapshot } from '../session.ts';
import { factWords, timeOf } from '../words/reads.ts';
import { workWords } from '../words/work.ts';

/** The last thing this person wrote, within reach: two separate taps strike it, so that one slip cannot. */
export function Undo(props: {
  readonly snapshot: Snapshot;
  readonly session: Session;
  readonly who: string;
  /** The item whose second look is being taken: what the first one gave is not shown. */
  readonly blindTo: string | undefined;
}) {
  const { snapshot, session, who } = props;
  const [asked, setAsked] = useState('');
  const [refused, setRefused] = useState<readonly Problem[]>([]);
  const last = snapshot.facts.find(
    ({ struck, fact }) => struck === null && fact.by === who && fact.kind !== 'struck' && isWithinReach(fact),
  )?.fact;
  if (last === undefined || last.kind === 'kart filed' || last.kind === 'released') return null;
  const strike = async (): Promise<void> => {
    const written = await session.write([{ kind: 'struck', fact: last.id, why: workWords.undoneAtBench }]);
    setRefused(written.kind === 'refused' ? written.problems : []);
    setAsked('');
  };
  return (
    <>
      <div class="undo">
        <span>
          <span class="soft">{timeOf(last.at)}</span>{' '}
          {itemOf(last) === props.blindTo && props.blindTo !== undefined ? workWords.yourFirstLook : factWords(last)}
        </span>
        {asked === last.id ? (
          <span class="undo-answers">
            <button type="button" class="button plain" onClick={() => setAsked('')}>
              {workWords.keep}
            </button>
            <button type="button" class="button" onClick={strike} disabled={session.view().writing}>
              {workWords.strike}
            </button>
          </span>
        ) : (
          <button type="button" class="button plain" onClick={() => setAsked(last.id)}>
            {workWords.undo}
          </button>
        )}
      </div>
      <Refused problems={refused} />
    </>
  );
}

/** Of this sitting: an evening in the garage goes past midnight. */
const isWithinReach = ({ recorded }: Fact): boolean => Date.now() - Date.parse(recorded) < 12 * 3_600_000;

const itemOf = (fact: Fact): string | undefined =>
  'item' in fact ? fact.item : fact.kind === 'made' ? fact.joint : undefined;
