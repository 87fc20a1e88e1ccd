/** The season on a page: hours and laps by event, the best lap of each track dry and wet, and what is not known. */
import './printed.css';
import { type Season, seasonOf } from '../../app/index.ts';
import { Cell, PrintTitle, Refused } from '../parts.tsx';
import type { Snapshot } from '../session.ts';
import { dateOf, spanOf } from '../words.ts';
import { useOwn } from './own.ts';
import { sessionHash } from './session-page.tsx';
import type { LapsProps } from './sheet.tsx';
import { lapText, nameOf, within } from './words.ts';

export function SeasonPage(props: LapsProps) {
  const { answer, problems } = useOwn(props, seasonOf);
  return (
    <>
      <Refused problems={problems} />
      {answer && answer.sessions === 0 && (
        <p class="note">Nothing has run yet. Bring in laps, or write down a run: then the season begins.</p>
      )}
      {answer && answer.sessions > 0 && <OneSeason season={answer} snapshot={props.snapshot} />}
    </>
  );
}

function OneSeason({ season, snapshot }: { readonly season: Season; readonly snapshot: Snapshot }) {
  const { kart, invented, from, until, minutes, laps, sessions, events, cost, say } = season;
  const span = `${from === null ? '' : dateOf(from)} to ${until === null ? '' : dateOf(until)}`;
  return (
    <>
      <PrintTitle title="Season" kart={kart} event={span} invented={invented} />
      <section class="group" aria-label="The season in short">
        <h2 class="no-print">
          {span} {invented && <span>invented</span>}
        </h2>
        <div class="cells">
          <Cell label="Engine ran">{spanOf(minutes)}</Cell>
          <Cell label="Laps">{laps}</Cell>
          <Cell label="Sessions">{sessions}</Cell>
          <Cell label="Events">{events.length}</Cell>
          <Cell label="New parts, own money">{spent(cost)}</Cell>
        </div>
      </section>
      <ByEvent season={season} />
      <BestLaps season={season} snapshot={snapshot} />
      <section class="group" aria-label="Costs and what is not known">
        <h2>Costs, and what is not known</h2>
        {say.map(text => (
          <p key={text} class="note">
            {text}
          </p>
        ))}
      </section>
      <div class="answers no-print">
        <button type="button" class="button plain full" onClick={() => window.print()}>
          Print it
        </button>
      </div>
    </>
  );
}

function ByEvent({ season: { events } }: { readonly season: Season }) {
  return (
    <section class="group" aria-label="Events">
      <h2>
        By event <span>in the order they were driven</span>
      </h2>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls sideways must be reached by keys */}
      <section class="wide-table" tabIndex={0} aria-label="Table of the events">
        <table class="lap-table">
          <thead>
            <tr>
              <th scope="col">Event</th>
              <th scope="col">Best lap, s</th>
              <th scope="col">Laps</th>
              <th scope="col">Ran</th>
              <th scope="col">Sessions</th>
            </tr>
          </thead>
          <tbody>
            {events.map(({ event, at, track, minutes, laps, sessions, best }) => (
              <tr key={event}>
                <th scope="row" class="piece">
                  {eventName(event, at)}
                  <small class="soft">
                    {dateOf(at)}, {track ?? 'track not known'}
                  </small>
                </th>
                <td>{best === null ? 'not known' : lapText(best)}</td>
                <td>{laps}</td>
                <td>{spanOf(minutes)}</td>
                <td>{sessions}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </section>
  );
}

function BestLaps({ season: { best }, snapshot }: { readonly season: Season; readonly snapshot: Snapshot }) {
  return (
    <section class="group" aria-label="Best laps">
      <h2>
        Best laps <span>by track, dry and wet apart</span>
      </h2>
      {best.length === 0 && <p class="note">No lap times with a track are in the book.</p>}
      {best.length > 0 && (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls sideways must be reached by keys
        <section class="wide-table" tabIndex={0} aria-label="Table of the best laps">
          <table class="lap-table">
            <thead>
              <tr>
                <th scope="col">Track</th>
                <th scope="col">Best lap, s</th>
                <th scope="col">Air</th>
                <th scope="col">Track surface</th>
                <th scope="col">Sessions there</th>
              </tr>
            </thead>
            <tbody>
              {best.map(({ track, wet, lap, session, at, celsius, trackCelsius, sessions }) => (
                <tr key={`${track} ${wet}`}>
                  <th scope="row" class="piece">
                    {track}, {wet ? 'wet' : 'dry'}
                    <small class="soft">
                      {dateOf(at)}, <a href={sessionHash(runAt(snapshot, at))}>{nameOf({ label: session, at })}</a>
                    </small>
                  </th>
                  <td>
                    <b>{lapText(lap.time, lap.spread)}</b> <span class="soft">{within(lap.spread)}</span>
                  </td>
                  <td>{degrees(celsius)}</td>
                  <td>{degrees(trackCelsius)}</td>
                  <td>{sessions}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </section>
      )}
    </section>
  );
}

/** With parts that nobody priced it is a least. */
function spent(cost: Season['cost']): string {
  if (cost === null || (cost.parts === 0 && cost.unpriced.length > 0)) return 'not known';
  return cost.unpriced.length === 0 ? String(cost.money) : `at least ${cost.money}`;
}

const degrees = (celsius: number | null): string => (celsius === null ? 'not known' : `${celsius} °C`);

/** One kart runs one session at a time. */
const runAt = ({ facts }: Snapshot, at: string): string =>
  facts.find(({ fact, struck }) => struck === null && fact.kind === 'ran' && fact.at === at)?.fact.id ?? '';

/** A day without an event goes by its day. */
const eventName = (event: string, at: string): string => (/^\d{4}-\d\d-\d\d$/.test(event) ? dateOf(at) : event);
