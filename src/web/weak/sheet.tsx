/** What would hurt us: what alone is enough, first and complete; how likely; which second retention pays most. */
import '../numbers/numbers.css';
import '../numbers/plates/plates.css';
import './weak.css';
import { useState } from 'preact/hooks';
import { PrintSign, PrintTitle, Refused } from '../parts.tsx';
import { hashOf, type Keep } from '../place.ts';
import type { Session, Snapshot } from '../session.ts';
import { typedNumber } from '../typed-number.ts';
import { weakWords } from '../words/weak.tsx';
import { useWeakLinks } from './asked.ts';
import { HazardGroup } from './hazard.tsx';
import type { Jobs } from './job.tsx';
import { PrintedWeak } from './printed.tsx';
import { Seconds, type Typed } from './seconds.tsx';
import { wantedIn } from './wanted.ts';

export type WeakProps = {
  readonly snapshot: Snapshot;
  readonly session: Session;
  readonly keep: Keep;
  readonly who: string;
  /** The function whose hazard is open; the worst when none is named. */
  readonly about: string | undefined;
};

export function Weak({ snapshot, session, keep, who, about }: WeakProps) {
  const [typed, setTyped] = useState<Typed>({ minutes: keep.get('weak minutes'), money: keep.get('weak money') });
  const { weak, problems } = useWeakLinks(session, snapshot, {
    minutes: typedNumber(typed.minutes),
    money: typedNumber(typed.money),
  });
  const { kart, fitness } = snapshot;
  const answer = weak;
  const jobs: Jobs = { session, who, made: wantedIn(snapshot) };
  const open = answer?.hazards.find(one => one.function === about) ?? answer?.hazards[0];
  const alone = answer?.hazards.reduce((sum, { singlePoints }) => sum + singlePoints.length, 0);
  return (
    <>
      <PrintTitle title={weakWords.weakLinks} kart={kart.name} event={fitness.event} invented={kart.invented} />
      <p class="no-print">
        <a class="back" href={hashOf({ sheet: 'kart' })}>
          {weakWords.kartFromAbove}
        </a>
      </p>
      <h1 class="no-print">{weakWords.whatWouldHurtUs}</h1>
      <p class="note">{weakWords.makersManualAndClass(answer?.note ?? weakWords.reckoningWhatAlone)}</p>
      <Refused problems={problems} />
      <div class="answers no-print">
        <a class="button" href={hashOf({ sheet: 'lives' })}>
          {weakWords.livesOfParts}
        </a>
        <a class="button" href={hashOf({ sheet: 'spares' })}>
          {weakWords.sparesBox}
        </a>
        <button type="button" class="button" onClick={() => show('pays')}>
          {weakWords.whatPaysMost}
        </button>
        <button type="button" class="button plain" onClick={() => window.print()}>
          {weakWords.print}
        </button>
      </div>
      {answer && (
        <>
          <section class="no-print head-gap" aria-labelledby="alone">
            <h2 id="alone">{weakWords.linksThatAloneAreEnough(alone)}</h2>
            {answer.hazards.map(hazard => (
              <HazardGroup
                key={hazard.function}
                hazard={hazard}
                open={hazard.function === open?.function}
                event={answer.event}
                {...{ snapshot, jobs }}
              />
            ))}
          </section>
          <PrintedWeak answer={answer} kart={kart} />
          <Seconds
            answer={answer}
            typed={typed}
            onTyped={next => {
              keep.set('weak minutes', next.minutes);
              keep.set('weak money', next.money);
              setTyped(next);
            }}
            jobs={jobs}
          />
          <PrintSign who={weakWords.signatureOfWhoLooked} />
        </>
      )}
    </>
  );
}

export function show(id: string): void {
  const calm = window.matchMedia('(prefers-reduced-motion: reduce)').matches;
  document.getElementById(id)?.scrollIntoView({ block: 'start', behavior: calm ? 'auto' : 'smooth' });
}
