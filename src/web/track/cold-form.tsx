/** Cold pressures of the four tyres as the answer says them; each may be changed before they are written as set. */
import { TYRES, type Tyre } from '../../book/index.ts';
import type { Kart } from '../../kart/index.ts';
import { coldSet, type TrackPart } from '../../prep/index.ts';
import { formatQuantity } from '../../quantity/index.ts';
import { own } from '../choice/choice.ts';
import type { Keep } from '../place.ts';
import type { Session } from '../session.ts';
import { trackWords } from '../words/track.tsx';
import { outOfLimits, pressureKey, pressuresSaid, pressureUnit, saidAgain } from './after-said.ts';
import { Corners } from './fields.tsx';
import { Press } from './press.tsx';
import type { Typed } from './said.ts';
import { useTyped, useWriting } from './writing.ts';
import { keepWritten } from './written.tsx';

const KEY = 'cold pressure';
const keyOf = (tyre: Tyre): string => `cold ${tyre}`;

export function ColdForm(props: {
  readonly part: TrackPart;
  readonly kart: Kart;
  readonly session: Session;
  readonly keep: Keep;
  readonly onWritten: () => void;
}) {
  const { part, kart, session, keep, onWritten } = props;
  const unit = pressureUnit(kart, KEY);
  const entry = useTyped(keep, `track cold ${kart.name}`, answered(part, unit));
  const writing = useWriting({
    form: 'cold',
    entry,
    session,
    read: typed => ({
      ok: true,
      value: coldSet(
        kart,
        pressuresSaid(kart, KEY, tyre => typed[keyOf(tyre)]),
      ),
    }),
    fieldOf: ({ where }, drafts) => {
      const draft = drafts[Number(/\[(\d+)\]/.exec(where)?.[1] ?? 0)];
      return draft && pressureKey(kart, String(draft.item));
    },
    again: (drafts, problems, asks) => (saidAgain(problems, asks) ? outOfLimits(drafts, problems) : undefined),
    onWritten(facts) {
      keepWritten(keep, kart.name, facts);
      onWritten();
    },
  });
  return (
    <>
      <div class="only-print">
        <p>{part.lead.map(({ label, text }) => `${label} ${own(text)}`).join(' · ')}</p>
      </div>
      <div class="no-print">
        <Press writing={writing} button={trackWords.setAsSaid}>
          <Corners asking={writing.asking} legend={trackWords.coldTyresInShade} keyOf={keyOf} unit={unit} />
        </Press>
      </div>
    </>
  );
}

/** What a gauge can show of the answer. */
function answered({ answer }: TrackPart, unit: string): Typed {
  if (answer?.kind !== 'answer') return {};
  return Object.fromEntries(
    TYRES.flatMap(tyre => {
      const figure = answer.figures[keyOf(tyre)];
      if (figure === undefined) return [];
      return [[keyOf(tyre), formatQuantity(figure.si, unit, DIGITS[unit] ?? 2, 'pressure-gauge').replace(/ .*$/, '')]];
    }),
  );
}
const DIGITS: Readonly<Record<string, number>> = { bar: 2, kPa: 0, psi: 1 };
