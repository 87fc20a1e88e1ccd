/** The season on a page: hours and laps by event, the best lap of each track dry and wet, and what is not known. */
import { own } from '../choice/choice.ts';
import './printed.css';
import { type Season, seasonOf } from '../../app/index.ts';
import { Cell, PrintTitle, Refused } from '../parts.tsx';
import type { Snapshot } from '../session.ts';
import { lapsPagesWords } from '../words/laps/printed.ts';
import { lapText, nameOf, within } from '../words/laps/reads.ts';
import { dateOf, spanOf } from '../words/reads.ts';
import { useOwn } from './own.ts';
import { sessionHash } from './session-page.tsx';
import type { LapsProps } from './sheet.tsx';

export function SeasonPage(props: LapsProps) {
  const { answer, problems } = useOwn(props, seasonOf);
  return (
    <>
      <Refused problems={problems} />
      {answer && answer.sessions === 0 && <p class="note">{lapsPagesWords.nothingHasRunYetBringIn}</p>}
      {answer && answer.sessions > 0 && <OneSeason season={answer} snapshot={props.snapshot} />}
    </>
  );
}

function OneSeason({ season, snapshot }: { readonly season: Season; readonly snapshot: Snapshot }) {
  const { kart, invented, from, until, minutes, laps, sessions, events, cost, say } = season;
  const [first, last] = [from, until].map(day => (day === null ? '' : dateOf(day))) as [string, string];
  const span = lapsPagesWords.fromTo(first, last);
  return (
    <div class="laps-paper">
      <PrintTitle title={lapsPagesWords.season} kart={kart} event={span} invented={invented} />
      <section class="group" aria-label={lapsPagesWords.seasonInShort}>
        <h2 class="no-print">
          {span} {invented && <span>{lapsPagesWords.invented}</span>}
        </h2>
        <div class="cells">
          <Cell label={lapsPagesWords.engineRan}>{spanOf(minutes)}</Cell>
          <Cell label={lapsPagesWords.laps}>{laps}</Cell>
          <Cell label={lapsPagesWords.sessions}>{sessions}</Cell>
          <Cell label={lapsPagesWords.events}>{events.length}</Cell>
          <Cell label={lapsPagesWords.newPartsOwnMoney}>{spent(cost)}</Cell>
        </div>
      </section>
      <ByEvent season={season} />
      <BestLaps season={season} snapshot={snapshot} />
      <section class="group" aria-label={lapsPagesWords.costs}>
        <h2>{lapsPagesWords.costsHead}</h2>
        {say.map(text => (
          <p key={text} class="note">
            {text}
          </p>
        ))}
      </section>
      <div class="answers no-print">
        <button type="button" class="button plain full" onClick={() => window.print()}>
          {lapsPagesWords.print}
        </button>
      </div>
    </div>
  );
}

function ByEvent({ season: { events } }: { readonly season: Season }) {
  return (
    <section class="group" aria-label={lapsPagesWords.events}>
      <h2>
        {lapsPagesWords.byEvent} <span>{lapsPagesWords.inOrderTheyWereDriven}</span>
      </h2>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls sideways must be reached by keys */}
      <section class="wide-table" tabIndex={0} aria-label={lapsPagesWords.tableOfEvents}>
        <table class="lap-table">
          <thead>
            <tr>
              <th scope="col">{lapsPagesWords.event}</th>
              <th scope="col">{lapsPagesWords.bestLapS}</th>
              <th scope="col">{lapsPagesWords.laps}</th>
              <th scope="col">{lapsPagesWords.ran}</th>
              <th scope="col">{lapsPagesWords.sessions}</th>
            </tr>
          </thead>
          <tbody>
            {events.map(({ event, at, track, minutes, laps, sessions, best }) => (
              <tr key={event}>
                <th scope="row" class="piece">
                  {eventName(event, at)}
                  <small class="soft">
                    {dateOf(at)}, {track ?? lapsPagesWords.trackNotKnown}
                  </small>
                </th>
                <td>{best === null ? lapsPagesWords.notKnown : lapText(best)}</td>
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
    <section class="group" aria-label={lapsPagesWords.bestLaps}>
      <h2>
        {lapsPagesWords.bestLaps} <span>{lapsPagesWords.byTrackDryAndWet}</span>
      </h2>
      {best.length === 0 && <p class="note">{lapsPagesWords.noLapTimesWithTrack}</p>}
      {best.length > 0 && (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls sideways must be reached by keys
        <section class="wide-table" tabIndex={0} aria-label={lapsPagesWords.tableOfBestLaps}>
          <table class="lap-table">
            <thead>
              <tr>
                <th scope="col">{lapsPagesWords.track}</th>
                <th scope="col">{lapsPagesWords.bestLapS}</th>
                <th scope="col">{lapsPagesWords.air}</th>
                <th scope="col">{lapsPagesWords.trackSurface}</th>
                <th scope="col">{lapsPagesWords.sessionsThere}</th>
              </tr>
            </thead>
            <tbody>
              {best.map(({ track, wet, lap, session, at, celsius, trackCelsius, sessions }) => (
                <tr key={`${track} ${wet}`}>
                  <th scope="row" class="piece">
                    {track}, {wet ? lapsPagesWords.wet : lapsPagesWords.dry}
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
  if (cost === null || (cost.parts === 0 && cost.unpriced.length > 0)) return lapsPagesWords.notKnown;
  return cost.unpriced.length === 0 ? String(cost.money) : lapsPagesWords.atLeast(cost.money);
}

const degrees = (celsius: number | null): string => (celsius === null ? lapsPagesWords.notKnown : own(`${celsius} °C`));

/** One kart runs one session at a time. */
const runAt = ({ facts }: Snapshot, at: string): string =>
  facts.find(({ fact, struck }) => struck === null && fact.kind === 'ran' && fact.at === at)?.fact.id ?? '';

/** A day without an event goes by its day. */
const eventName = (event: string, at: string): string => (/^\d{4}-\d\d-\d\d$/.test(event) ? dateOf(at) : event);
