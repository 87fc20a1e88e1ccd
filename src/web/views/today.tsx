import { GRADES, SYSTEMS, type System } from '../../kart/index.ts';
import type { Due } from '../../prep/index.ts';
import { withOwnDays } from '../choice/dates.ts';
import { Glyph } from '../glyph.tsx';
import { Cell, Verdict } from '../parts.tsx';
import { hashOf } from '../place.ts';
import { shortOf } from '../plan/said.ts';
import type { Snapshot } from '../session.ts';
import { capital, dayOf, spanOf } from '../words/reads.ts';
import { todayWords } from '../words/today.ts';
import { MadeFile } from './made-file.tsx';

/** The next event, the verdict so far, and what is due and why. */
export function Today(props: {
  readonly snapshot: Snapshot;
  readonly calendar: () => Promise<string>;
  readonly writeDown: (kind: 'event' | 'ran') => void;
}) {
  const { snapshot, writeDown } = props;
  const { plan, due, state, fitness } = snapshot;
  const event = due.event === null ? undefined : state.events[due.event];
  const left = plan.steps.filter(s => s.state !== 'done').length;
  const short = shortOf(plan);
  const nothing = snapshot.facts.every(({ fact }) => fact.kind === 'kart filed');
  return (
    <>
      <h1>{event ? event.event : todayWords.noEventPlanned}</h1>
      <div class="cells head-gap">
        <Cell label={todayWords.when}>{event ? dayOf(event.from) : todayWords.notSaid}</Cell>
        <Cell label={todayWords.where}>{event?.track ?? todayWords.notSaid}</Cell>
        <Cell label={todayWords.runningExpected}>{event ? spanOf(event.runMinutes) : todayWords.notSaid}</Cell>
        <Cell label={todayWords.workToDo}>{todayWords.steps(left, spanOf(plan.minutes))}</Cell>
      </div>
      <Verdict fitness={fitness} />
      {short !== undefined && (
        <p class="note need">
          <b>{short}</b>
        </p>
      )}
      {nothing && <p class="note">{todayWords.nothingIsKnownAbout}</p>}
      <a class="button main big wide" href={hashOf({ sheet: 'work' })}>
        {left === 0 ? todayWords.seeWork : nothing ? todayWords.beginWithFirstStep : todayWords.goOnWithWork}
      </a>
      <div class="answers below">
        <button type="button" class="button" onClick={() => writeDown('ran')}>
          {todayWords.logRun}
        </button>
        <button type="button" class="button" onClick={() => writeDown('event')}>
          {event ? todayWords.addEvent : todayWords.sayWhichEventComes}
        </button>
        <a class="button full" href={hashOf({ sheet: 'numbers' })}>
          {todayWords.numbers}
        </a>
        <a class="button full" href={hashOf({ sheet: 'laps' })}>
          {todayWords.lapsWhatItDid}
        </a>
        <a class="button full" href={hashOf({ sheet: 'weak' })}>
          {todayWords.weakLinksWhatWouldHurt}
        </a>
        {event && (
          <MadeFile
            key={`${snapshot.kart.name} ${snapshot.entries}`} // what was made before is of before
            ask={todayWords.calendarFile}
            file={`kart-${snapshot.kart.name}.ics`}
            type="text/calendar"
            make={props.calendar}
          />
        )}
      </div>
      {due.due.length === 0 && <p class="note">{todayWords.nothingIsDueWhatRecord}</p>}
      {bySystem(due.due).map(([system, list], i) => (
        <DueGroup key={system} system={system} list={list} open={i === 0} />
      ))}
      {plan.whileOpen.length > 0 && (
        <section class="group">
          <h2>
            {todayWords.whileItIsOpen} <span>{todayWords.dueWithinTwoMoreEvents}</span>
          </h2>
          <ul class="rows">
            {plan.whileOpen.map(w => (
              <li key={w.item}>
                <Glyph sign="open" />
                <div>
                  <b>{w.title}</b>
                  <p>{withOwnDays(w.why)}</p>
                </div>
                <span class="side">{todayWords.saves(spanOf(w.saves))}</span>
              </li>
            ))}
          </ul>
        </section>
      )}
    </>
  );
}

function DueGroup(props: { readonly system: System; readonly list: readonly Due[]; readonly open: boolean }) {
  const { system, list, open } = props;
  const safety = list.filter(d => d.grade === 'safety').length;
  return (
    <details class="group" open={open}>
      <summary>
        <h2>
          {capital(system)}
          <span>{todayWords.due(list.length, safety)}</span>
        </h2>
      </summary>
      <ul class="rows">
        {list.map(d => (
          <li key={d.item}>
            <Glyph
              sign={d.cause === 'failed' || d.cause === 'found' ? 'defect' : d.cause === 'joint open' ? 'open' : 'due'}
            />
            <div>
              <b>{d.title}</b> <span class="soft">{d.part}</span>
              <p>{withOwnDays(d.why)}</p>
            </div>
            <span class="side">{d.ahead ? todayWords.ahead(d.grade) : d.grade}</span>
          </li>
        ))}
      </ul>
    </details>
  );
}

/** Groups in the order of the walk-round, each with safety first. */
export function bySystem(due: readonly Due[]): readonly (readonly [System, readonly Due[]])[] {
  return SYSTEMS.flatMap(system => {
    const list = due.filter(d => d.system === system).sort((a, b) => GRADES.indexOf(a.grade) - GRADES.indexOf(b.grade));
    return list.length > 0 ? [[system, list] as const] : [];
  });
}
