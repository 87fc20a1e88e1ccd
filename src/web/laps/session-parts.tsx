/** The parts of a session sheet. What nobody wrote down says so. */

import type { SessionSheet } from '../../app/index.ts';
import { TYRES } from '../../book/index.ts';
import type { SessionLap } from '../../laps/index.ts';
import { own, ownUnitOf } from '../choice/choice.ts';
import { lapsPagesWords } from '../words/laps/printed.ts';
import { lapText, nameOf, remarksOn, within } from '../words/laps/reads.ts';
import { capital, timeOf } from '../words/reads.ts';

type Of = { readonly sheet: SessionSheet };
const UNKNOWN = lapsPagesWords.notWrittenDown;

/** So many rows stand under each other; more go beside them, so that a long session still fits on a page. */
const ROWS = 20;

export function Laps({ sheet: { laps } }: Of) {
  const times = laps?.times ?? [];
  const columns = Array.from({ length: Math.ceil(times.length / ROWS) }, (_, n) =>
    times.slice(n * ROWS, (n + 1) * ROWS),
  );
  return (
    <section class={`group ${columns.length > 1 ? 'long' : ''}`} aria-label={lapsPagesWords.lapsOfSession}>
      <h2>
        {lapsPagesWords.laps} <span>{laps?.timed === 'by hand' ? lapsPagesWords.timedByHand : (laps?.name ?? '')}</span>
      </h2>
      {times.length === 0 && <p class="note">{lapsPagesWords.noLapTimes}</p>}
      <div class="lap-columns">
        {columns.map(column => (
          <table key={column[0]?.number} class="lap-table">
            <thead>
              <tr>
                <th scope="col">{lapsPagesWords.lap}</th>
                <th scope="col">{lapsPagesWords.time}</th>
                <th scope="col" class="words">
                  {lapsPagesWords.remark}
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
      <th scope="row">{lap.number ?? lapsPagesWords.way(lap.way)}</th>
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
    [lapsPagesWords.air, celsius === undefined ? undefined : own(`${celsius} °C`)],
    [
      lapsPagesWords.pressureOfAir,
      pascal === undefined
        ? undefined
        : `${own(`${Math.round(pascal / 100)} hPa`)}${pressureIs ? ` (${pressureIs})` : ''}`,
    ],
    [lapsPagesWords.humidity, humidity === undefined ? undefined : `${Math.round(humidity * 100)} %`],
    [lapsPagesWords.trackSurface, trackCelsius === undefined ? undefined : own(`${trackCelsius} °C`)],
    [lapsPagesWords.remarks, said === '' ? undefined : said],
    [lapsPagesWords.setOfTyres, tyres ?? undefined],
    [lapsPagesWords.plugRead, plug ?? undefined],
    [lapsPagesWords.fuelUsed, litres === null ? undefined : own(`${litres} L`)],
  ];
  return (
    <section class="group" aria-label={lapsPagesWords.conditions}>
      <h2>
        {lapsPagesWords.conditions} <span>{at === undefined ? '' : lapsPagesWords.read(timeOf(at))}</span>
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

/** Without their unit, which stands above. */
const degrees = (celsius: number): string => own(`${celsius} °C`).replace(/ .*/, '');

export function Tyres({ sheet: { cold, hot, treads } }: Of) {
  return (
    <section class="group" aria-label={lapsPagesWords.pressures}>
      <h2>
        {lapsPagesWords.tyres} <span>{lapsPagesWords.dashNotWritten}</span>
      </h2>
      <table class="lap-table">
        <thead>
          <tr>
            <th scope="col">{lapsPagesWords.tyre}</th>
            <th scope="col">{lapsPagesWords.cold}</th>
            <th scope="col">{lapsPagesWords.hot}</th>
            <th scope="col">{lapsPagesWords.tread(ownUnitOf('°C'))}</th>
          </tr>
        </thead>
        <tbody>
          {TYRES.map(tyre => {
            const tread = treads?.[tyre];
            return (
              <tr key={tyre}>
                <th scope="row">{capital(tyre)}</th>
                <td>{own(cold[tyre]?.text ?? '–')}</td>
                <td>{own(hot[tyre]?.text ?? '–')}</td>
                <td>{tread ? [tread.inside, tread.middle, tread.outside].map(degrees).join(' / ') : '–'}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
      <p class="soft small">{lapsPagesWords.gaugePressuresTread}</p>
    </section>
  );
}

export function Changed({ sheet: { before, changed } }: Of) {
  return (
    <section class="group" aria-label={lapsPagesWords.changedSinceSession}>
      <h2>
        {lapsPagesWords.changed} <span>{before === null ? '' : changed.length}</span>
      </h2>
      <p class="soft small">
        {before === null ? lapsPagesWords.itIsFirstSession : lapsPagesWords.since(nameOf(before))}
        {before !== null && changed.length === 0 && lapsPagesWords.nothingOfSetUpDiffers}
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
    <section class="group" aria-label={lapsPagesWords.setUpItRan}>
      <h2>
        {lapsPagesWords.setUp} <span>{lapsPagesWords.asRecordHad}</span>
      </h2>
      {settings.length === 0 && <p class="note">{lapsPagesWords.noSettingWasWritten}</p>}
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
    <section class="group" aria-label={lapsPagesWords.notes}>
      <h2>{lapsPagesWords.notes}</h2>
      {notes.map((text, n) => (
        <p key={`${n} ${text}`} class="note">
          {text}
        </p>
      ))}
    </section>
  );
}

const named = (name: string, part: string | null): string => capital(part === null ? name : `${name}, ${part}`);
