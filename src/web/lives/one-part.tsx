/** One part: how likely it fails over the event, when to replace it, its life drawn, its record, and what is expected of its kind. */
import { useMemo } from 'preact/hooks';
import type { Part } from '../../kart/index.ts';
import { type KindRecord, kindRecords, type LifeAsk, type LifeSheet, lifeSheet } from '../../life/index.ts';
import { PlateFigure } from '../numbers/answered.tsx';
import { Cell } from '../parts.tsx';
import type { Session, Snapshot } from '../session.ts';
import { livesWords } from '../words/lives.ts';
import { capital } from '../words/reads.ts';
import { Expect } from './expect.tsx';
import { drawPaper, round } from './paper.tsx';

export function OnePart(props: {
  readonly part: Part;
  readonly ask: LifeAsk;
  readonly snapshot: Snapshot;
  readonly session: Session;
}) {
  const { part, ask, snapshot, session } = props;
  const { kart } = snapshot;
  const { life, record, drawn } = useMemo(() => {
    const found = kindRecords(kart, ask)(part.kind);
    const posterior = found.posterior();
    const sheet = lifeSheet(kart, part, ask);
    return {
      life: sheet,
      record: found,
      drawn: posterior.kind === 'posterior' ? drawPaper(found, posterior, sheet.age ?? 0) : undefined,
    };
  }, [kart, part, ask]);
  return (
    <>
      {part.kind !== part.id && <p class="soft">{capital(part.kind)}</p>}
      <div class="cells head-gap">
        <Cell label={livesWords.hasRun}>{life.age === null ? livesWords.notKnown : `${round(life.age)} h`}</Cell>
        <Cell label={livesWords.eventAhead}>
          {life.hours === null ? livesWords.nonePlanned : `${round(life.hours)} h`}
        </Cell>
        <Cell label={livesWords.inGoneBy}>{life.tenth ? `${round(life.tenth.mean)} h` : livesWords.notKnown}</Cell>
        <Cell label={livesWords.halfGone}>{life.median ? `${round(life.median.mean)} h` : livesWords.notKnown}</Cell>
      </div>
      <p class="how-likely">{life.words?.long ?? livesWords.notKnownHowLikely}</p>
      <p class="soft">{life.words ? livesWords.lowNumber(life.basis) : life.unknown}</p>
      <div class="lives-page">
        <div>
          <WhenToReplace life={life} />
          {drawn && (
            <section class="group" aria-labelledby="drawn">
              <h2 id="drawn">{livesWords.itsKindByRunningHours}</h2>
              <PlateFigure drawn={drawn} />
            </section>
          )}
        </div>
        <div>
          <OnRecord record={record} part={part} />
          <Expect kind={part.kind} snapshot={snapshot} session={session} />
        </div>
      </div>
    </>
  );
}

function WhenToReplace({ life: { replacement, cost, lacking } }: { readonly life: LifeSheet }) {
  return (
    <section class="group" aria-labelledby="replace">
      <h2 id="replace">{livesWords.whenToReplace}</h2>
      {replacement ? (
        <div class="said">
          {replacement.say.map(text => (
            <p key={text}>{text}</p>
          ))}
        </div>
      ) : (
        <p class="note">{livesWords.notKnownItTakesLife}</p>
      )}
      {cost && (
        <p>
          {livesWords.itCosts(money(cost.perHour), cost.perEvent && money(cost.perEvent))}{' '}
          <span class="soft">{cost.counts}.</span>
        </p>
      )}
      {lacking.map(text => (
        <p class="soft" key={text}>
          {text}
        </p>
      ))}
    </section>
  );
}

type Cost = NonNullable<LifeSheet['cost']>['perHour'];
const money = ({ mean, low, high }: Cost): string => `${round(mean)} (between ${round(low)} and ${round(high)})`;

const FATES = {
  running: livesWords.stillRuns,
  replaced: livesWords.replacedFine,
  failed: livesWords.failed,
  found: livesWords.foundBad,
} as const;

function OnRecord({ record: { lives }, part }: { readonly record: KindRecord; readonly part: Part }) {
  return (
    <section class="group" aria-labelledby="on-record">
      <h2 id="on-record">
        {livesWords.ofItsKindOnRecord} <span>{lives.length}</span>
      </h2>
      <ul class="rows">
        {lives.map((life, n) => (
          <li key={`${n} ${life.kart} ${life.part}`}>
            <span aria-hidden="true">{life.fate === 'failed' || life.fate === 'found' ? '●' : '○'}</span>
            <div>
              {life.part === part.id && life.now ? <b>{life.part}</b> : life.part}
              {livesWords.kart(life.serial === undefined ? '' : `, ${life.serial}`, life.kart)}
            </div>
            <span class="side">
              {FATES[life.fate]}, {round(life.age)} h
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}
