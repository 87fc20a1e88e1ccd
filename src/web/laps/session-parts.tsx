/** The parts of a session sheet. What nobody wrote down says so. */
import type { SessionSheet } from '../../app/index.ts';
import { TYRES } from '../../book/index.ts';
import type { SessionLap } from '../../laps/index.ts';
import { capital, timeOf } from '../words.ts';
import { lapText, nameOf, remarksOn, within } from './words.ts';

type Of = { readonly sheet: SessionSheet };
const UNKNOWN = 'not written down';

/** So many rows stand under each other; more go beside them, so that a long session still fits on a page. */
const ROWS = 20;

export function Laps({ sheet: { laps } }: Of) {
  const times = laps?.times ?? [];
  const columns = Array.from({ length: Math.ceil(times.length / ROWS) }, (_, n) =>
    times.slice(n * ROWS, (n + 1) * ROWS),
  );
  return (
    <section class={`group ${columns.length > 1 ? 'long' : ''}`} aria-label="Laps of the session">
      <h2>
        Laps <span>{laps?.timed === 'by hand' ? 'timed by hand' : (laps?.name ?? '')}</span>
      </h2>
      {times.length === 0 && <p class="note">No lap times are in the book.</p>}
      <div class="lap-columns">
        {columns.map(column => (
          <table key={column[0]?.number} class="lap-table">
            <thead>
              <tr>
                <th scope="col">Lap</th>
                <th scope="col">Time, s</th>
                <th scope="col" class="words">
                  Remark
                </th>
              </tr>
            </thead>
            <tbody>
              {column.map((lap, n) => (
                <LapRow key={lap.number ?? `way ${n}`} lap={lap} best={laps?.best ?? null} />
              ))}
            </tbody>
          </table>
        ))}
      </div>
    </section>
  );
}

function LapRow({ lap, best }: { readonly lap: SessionLap; readonly best: SessionLap | null }) {
  const time = `${lapText(lap.time, lap.spread)} `;
  return (
    <tr>
      <th scope="row">{lap.number ?? `way ${lap.way}`}</th>
      <td>
        {lap === best ? <b>{time}</b> : time}
        <span class="soft">{within(lap.spread)}</span>
      </td>
      <td class="words">{capital(remarksOn(lap, best))}</td>
    </tr>
  );
}

export function Conditions({ sheet: { weather, session, tyres, plug, litres } }: Of) {
  const { at, celsius, pascal, pressureIs, humidity, trackCelsius, note } = weather ?? {};
  const said = [session.conditions, note].filter(Boolean).join(', ');
  const lines: readonly (readonly [string, string | undefined])[] = [
    ['Air', celsius === undefined ? undefined : `${celsius} °C`],
    [
      'Pressure of the air',
      pascal === undefined ? undefined : `${Math.round(pascal / 100)} hPa${pressureIs ? ` (${pressureIs})` : ''}`,
    ],
    ['Humidity', humidity === undefined ? undefined : `${Math.round(humidity * 100)} %`],
    ['Track surface', trackCelsius === undefined ? undefined : `${trackCelsius} °C`],
    ['Remarks', said === '' ? undefined : said],
    ['Set of tyres', tyres ?? undefined],
    ['Plug read', plug ?? undefined],
    ['Fuel used', litres === null ? undefined : `${litres} L`],
  ];
  return (
    <section class="group" aria-label="Conditions">
      <h2>
        Conditions <span>{at === undefined ? '' : `read ${timeOf(at)}`}</span>
      </h2>
      <dl class="facts">
        {lines.map(([name, value]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd class={value === undefined ? 'soft' : ''}>{value ?? UNKNOWN}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}

export function Tyres({ sheet: { cold, hot, treads } }: Of) {
  return (
    <section class="group" aria-label="Pressures and temperatures">
      <h2>
        Tyres <span>– {UNKNOWN}</span>
      </h2>
      <table class="lap-table">
        <thead>
          <tr>
            <th scope="col">Tyre</th>
            <th scope="col">Cold</th>
            <th scope="col">Hot</th>
            <th scope="col">Tread, °C</th>
          </tr>
        </thead>
        <tbody>
          {TYRES.map(tyre => {
            const tread = treads?.[tyre];
            return (
              <tr key={tyre}>
                <th scope="row">{capital(tyre)}</th>
                <td>{cold[tyre]?.text ?? '–'}</td>
                <td>{hot[tyre]?.text ?? '–'}</td>
                <td>{tread ? `${tread.inside} / ${tread.middle} / ${tread.outside}` : '–'}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
      <p class="soft small">Gauge pressures. Tread: inside / middle / outside.</p>
    </section>
  );
}

export function Changed({ sheet: { before, changed } }: Of) {
  return (
    <section class="group" aria-label="Changed since the session before">
      <h2>
        Changed <span>{before === null ? '' : changed.length}</span>
      </h2>
      <p class="soft small">
        {before === null ? 'It is the first session of the record.' : `Since ${nameOf(before)}.`}
        {before !== null && changed.length === 0 && ' Nothing of the set-up differs in the record.'}
      </p>
      <dl class="facts">
        {changed.map(({ name, part, was, now, by }) => (
          <div key={name}>
            <dt>{named(name, part)}</dt>
            <dd>
              {was ?? UNKNOWN} → <b>{now ?? UNKNOWN}</b>
              {by === null ? '' : ` (${by})`}
            </dd>
          </div>
        ))}
      </dl>
    </section>
  );
}

export function SetUp({ sheet: { settings } }: Of) {
  return (
    <section class="group" aria-label="Set-up it ran with">
      <h2>
        Set-up <span>as the record had it</span>
      </h2>
      {settings.length === 0 && <p class="note">No setting was written down.</p>}
      <dl class="facts of-two">
        {settings.map(({ name, part, value }) => (
          <div key={name}>
            <dt>{named(name, part)}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}

export function Notes({ sheet: { notes } }: Of) {
  if (notes.length === 0) return null;
  return (
    <section class="group" aria-label="Notes">
      <h2>Notes</h2>
      {notes.map((text, n) => (
        <p key={`${n} ${text}`} class="note">
          {text}
        </p>
      ))}
    </section>
  );
}

const named = (name: string, part: string | null): string => capital(part === null ? name : `${name}, ${part}`);
