import { GRADES, SYSTEMS, type System } from '../../kart/index.ts';
import type { Due } from '../../prep/index.ts';
import { Glyph } from '../glyph.tsx';
import { Cell, Verdict } from '../parts.tsx';
import { hashOf } from '../place.ts';
import { shortOf } from '../plan/said.ts';
import type { Snapshot } from '../session.ts';
import { capital, dayOf, spanOf } from '../words.ts';

/** The next event, the verdict so far, and what is due and why. */
export function Today(props: { readonly snapshot: Snapshot; readonly writeDown: (kind: 'event' | 'ran') => void }) {
  const { snapshot, writeDown } = props;
  const { plan, due, state, fitness } = snapshot;
  const event = due.event === null ? undefined : state.events[due.event];
  const left = plan.steps.filter(s => s.state !== 'done').length;
  const short = shortOf(plan);
  const nothing = snapshot.facts.every(({ fact }) => fact.kind === 'kart filed');
  return (
    <>
      <h1>{event ? event.event : 'No event planned'}</h1>
      <div class="cells head-gap">
        <Cell label="When">{event ? dayOf(event.from) : 'not said'}</Cell>
        <Cell label="Where">{event?.track ?? 'not said'}</Cell>
        <Cell label="Running expected">{event ? spanOf(event.runMinutes) : 'not said'}</Cell>
        <Cell label="Work to do">{`${left} steps, ${spanOf(plan.minutes)}`}</Cell>
      </div>
      <Verdict fitness={fitness} />
      {short !== undefined && (
        <p class="note need">
          <b>{short}</b>
        </p>
      )}
      {nothing && (
        <p class="note">
          Nothing is known about this kart yet but its kart file, so every item is due once: what nobody has looked at
          cannot hold. Say which event comes and how long it runs, then work from the first step; each thing you record
          is one less that is not known. It need not be done in one evening.
        </p>
      )}
      <a class="button main big wide" href={hashOf({ sheet: 'work' })}>
        {left === 0 ? 'See the work' : nothing ? 'Begin with the first step' : 'Go on with the work'}
      </a>
      <div class="answers below">
        <button type="button" class="button" onClick={() => writeDown('ran')}>
          Log a run
        </button>
        <button type="button" class="button" onClick={() => writeDown('event')}>
          {event ? 'Add an event' : 'Say which event comes'}
        </button>
        <a class="button full" href={hashOf({ sheet: 'numbers' })}>
          Numbers: to which dimension, torque, weight
        </a>
        <a class="button full" href={hashOf({ sheet: 'laps' })}>
          Laps: what it did, and did the change help
        </a>
        <a class="button full" href={hashOf({ sheet: 'weak' })}>
          Weak links: what would hurt us
        </a>
      </div>
      {due.due.length === 0 && <p class="note">Nothing is due. What the record does not hold, it cannot know.</p>}
      {bySystem(due.due).map(([system, list], i) => (
        <DueGroup key={system} system={system} list={list} open={i === 0} />
      ))}
      {plan.whileOpen.length > 0 && (
        <section class="group">
          <h2>
            While it is open <span>due within two more events</span>
          </h2>
          <ul class="rows">
            {plan.whileOpen.map(w => (
              <li key={w.item}>
                <Glyph sign="open" />
                <div>
                  <b>{w.title}</b>
                  <p>{w.why}</p>
                </div>
                <span class="side">saves {spanOf(w.saves)}</span>
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
          <span>
            {list.length} due{safety > 0 ? `, ${safety} safety` : ''}
          </span>
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
              <p>{d.why}</p>
            </div>
            <span class="side">{d.ahead ? `${d.grade}, ahead` : d.grade}</span>
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
