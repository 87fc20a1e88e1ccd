/** Before a session: the air, the laps to come, and from them and the record the numbers of the day. */

import { useMemo } from 'preact/hooks';
import type { KartEvent } from '../../book/index.ts';
import { type Since, type TrackSheet, trackSheet } from '../../prep/index.ts';
import { withUnit } from '../answer.ts';
import { own, ownUnitOf } from '../choice/choice.ts';
import { toProblem } from '../numbers/ask-line.tsx';
import { PrintTitle } from '../parts.tsx';
import { capital } from '../words/reads.ts';
import { trackWords } from '../words/track.tsx';
import { AirNow } from './air-form.tsx';
import { ColdForm } from './cold-form.tsx';
import { DayAir } from './day-air.tsx';
import { type Asking, Entry, Stepper, Tick } from './fields.tsx';
import { Glance } from './glance.tsx';
import { comingSlot, type TrackProps } from './now.ts';
import { Part } from './part.tsx';
import { isProblem, lapsSaid, type Typed } from './said.ts';
import { useTyped } from './writing.ts';

export function Before(props: TrackProps & { readonly event: KartEvent | undefined; readonly onWritten: () => void }) {
  const { snapshot, session, keep, event, onWritten } = props;
  const { kart } = snapshot;
  const likely = useMemo(() => lastLaps(sheetOf(snapshot, {})), [snapshot]);
  const entry = useTyped(keep, comingSlot(kart.name), likely);
  const { typed } = entry;
  const sheet = useMemo(
    () => sheetOf(snapshot, typed),
    [snapshot, typed.laps, typed.wet, typed['wanted engine speed'], typed['wanted speed']],
  );
  const laps = lapsSaid(typed);
  const gearing = sheet.parts.find(({ subject }) => subject === 'gearing')?.answer;
  const asking: Asking = {
    form: 'coming',
    typed,
    put: entry.put,
    problemsAt: key =>
      key === 'laps'
        ? [laps].filter(isProblem)
        : gearing?.kind === 'problems'
          ? gearing.problems.filter(({ path }) => path === key).map(toProblem)
          : [],
  };
  const told = sheet.parts[0]?.missing ?? [];
  return (
    <>
      <PrintTitle
        title={trackWords.trackSheet}
        kart={sheet.kart}
        event={event?.event ?? snapshot.fitness.event}
        invented={sheet.invented}
      />
      <div class="track-page">
        <div class="track-side">
          <AirNow snapshot={snapshot} session={session} keep={keep} track={event?.track} onWritten={onWritten} />
          <div class="two-fields no-print">
            <Stepper asking={asking} at="laps" label={trackWords.lapsToCome} />
            <Tick asking={asking} at="wet" label={trackWords.trackIsWet} />
          </div>
          <p class="only-print head-gap">
            {trackWords.track(sheet.laps === null ? trackWords.lapsNotSaid : trackWords.lapsOf(sheet.laps), sheet.wet)}
          </p>
          <Glance parts={sheet.parts} />
          <DayAir air={sheet.air} baseline={sheet.baseline} at={sheet.at} />
          <Changed since={sheet.since} ran={sheet.last !== null} />
          <div class="answers no-print">
            <button type="button" class="button plain full" onClick={() => window.print()}>
              {trackWords.print}
            </button>
          </div>
        </div>
        <div class="track-parts">
          {sheet.parts.map(part => {
            const of = { part, kart: kart.name, keep, told: part.subject === 'air' ? [] : told };
            if (part.subject === 'tyres' && part.answer?.kind === 'answer')
              return (
                <Part
                  key="tyres"
                  {...of}
                  lead={<ColdForm part={part} kart={kart} session={session} keep={keep} onWritten={onWritten} />}
                />
              );
            return (
              <Part key={part.subject} {...of}>
                {part.subject === 'gearing' && <Wanted asking={asking} />}
              </Part>
            );
          })}
        </div>
      </div>
    </>
  );
}

/** What the engine is wanted to turn at which speed: said, the box is searched for the nearest pair. */
const Wanted = ({ asking }: { readonly asking: Asking }) => (
  <div class="two-fields no-print">
    <Entry asking={asking} at="wanted engine speed" label={trackWords.engineSpeedWanted} unit="rpm" />
    <Entry asking={asking} at="wanted speed" label={trackWords.atWhichSpeed} unit="km/h" />
  </div>
);

function Changed({ since, ran }: { readonly since: readonly Since[]; readonly ran: boolean }) {
  if (!ran) return null;
  return (
    <section class="group" aria-labelledby="track-since">
      <h2 id="track-since">
        {trackWords.sinceLastSession} <span>{trackWords.changed(since.length)}</span>
      </h2>
      {since.length === 0 && <p class="note">{trackWords.nothingInRecordDiffers}</p>}
      <ul class="rows since">
        {since.map(({ what, was, now }) => (
          <li key={`${what}${now}`}>
            <span>{capital(what)}</span>
            <p>
              {was !== null && `${own(was)} → `}
              <b>{own(now)}</b>
            </p>
          </li>
        ))}
      </ul>
    </section>
  );
}

const lastLaps = ({ laps }: TrackSheet): Typed => (laps === null ? {} : { laps: String(laps) });

/** Worked out here from the facts of this page, so that it is there with no server in reach. */
function sheetOf({ kart, facts }: TrackProps['snapshot'], typed: Typed): TrackSheet {
  const laps = lapsSaid(typed);
  const [engineSpeed, speed] = [typed['wanted engine speed']?.trim() ?? '', typed['wanted speed']?.trim() ?? ''];
  const newest = facts[0]?.fact.at ?? '';
  const now = new Date().toISOString();
  return trackSheet(
    kart,
    facts.map(({ fact }) => fact),
    {
      now: newest.localeCompare(now) > 0 ? newest : now, // the server's clock may be ahead of this one
      ...(typeof laps === 'number' && { laps }),
      wet: (typed.wet ?? '') !== '',
      ...(engineSpeed !== '' &&
        speed !== '' && {
          wanted: { engineSpeed: withUnit(engineSpeed, 'rpm'), speed: withUnit(speed, ownUnitOf('km/h')) },
        }),
    },
  );
}
