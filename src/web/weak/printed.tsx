/** What decides, on paper: every hazard on one line, the single points of the bad ones with a box to tick, what to fit. The rest stays on the screen. */

import type { WeakLinksAnswer } from '../../app/index.ts';
import type { Kart } from '../../kart/index.ts';
import type { SinglePoint } from '../../risk/index.ts';
import { withOwnDays } from '../choice/dates.ts';
import { KartDrawing } from '../drawing/kart-drawing.tsx';
import { capital } from '../words/reads.ts';
import { weakWords } from '../words/weak.tsx';
import { type AskedHazard, chanceAlone } from './likelihood.tsx';
import { mapOf } from './map.ts';

const NONE: ReadonlySet<string> = new Set();
/** Somebody is hurt: severity 1 and 2. What costs an engine or a weekend is read on the screen. */
const HURTS = 2;
/** So many second retentions stand on paper; what takes a single point away stands first. */
const ROOM = 12;

export function PrintedWeak(props: { readonly answer: WeakLinksAnswer; readonly kart: Kart }) {
  const { answer, kart } = props;
  const hurts = answer.hazards.filter(({ severity }) => severity <= HURTS);
  const points = hurts.flatMap(({ singlePoints }) => singlePoints);
  const marks = mapOf(kart, points);
  const placeOf = (id: string): string =>
    String(marks.find(({ lines }) => lines.some(({ point }) => point.id === id))?.n ?? '');
  return (
    <div class="only-print weak-paper">
      <HazardTable hazards={answer.hazards} />
      <figure class="print-map">
        <KartDrawing kart={kart} marks={marks} off={NONE} title={weakWords.kartFromAboveTitle} />
      </figure>
      <WhatToFit answer={answer} />
      {hurts.map(hazard => (
        <Points key={hazard.function} hazard={hazard} placeOf={placeOf} />
      ))}
      <p class="soft">{weakWords.restOnScreen}</p>
    </div>
  );
}

function HazardTable({ hazards }: { readonly hazards: readonly AskedHazard[] }) {
  return (
    <table class="print hazards">
      <thead>
        <tr>
          <th scope="col">{weakWords.hazardColumn}</th>
          <th scope="col">{weakWords.severityColumn}</th>
          <th scope="col">{weakWords.aloneColumn}</th>
          <th scope="col">{weakWords.overEventColumn}</th>
          <th scope="col">{weakWords.overSeasonColumn}</th>
        </tr>
      </thead>
      <tbody>
        {hazards.map(hazard => (
          <tr key={hazard.function}>
            <th scope="row">{capital(hazard.hazard)}</th>
            <td>{hazard.severity}</td>
            <td>{hazard.singlePoints.length}</td>
            <td>{overEvent(hazard)}</td>
            <td>
              {hazard.season
                ? weakWords.codeAndLevel(hazard.season.code, hazard.season.level.toLowerCase())
                : weakWords.notKnown}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

const overEvent = ({ top, atLeast }: AskedHazard): string =>
  top ? top.words : atLeast ? weakWords.notKnownAtLeast(atLeast.words) : weakWords.notKnown;

function Points(props: { readonly hazard: AskedHazard; readonly placeOf: (id: string) => string }) {
  const { hazard, placeOf } = props;
  if (hazard.singlePoints.length === 0) return null;
  return (
    <section class="group">
      <h2>
        {capital(hazard.hazard)}{' '}
        <span>{weakWords.severityAloneEnough(hazard.severity, hazard.singlePoints.length)}</span>
      </h2>
      <ul class="points">
        {hazard.singlePoints.map(point => (
          <Point key={point.id} point={point} place={placeOf(point.id)} />
        ))}
      </ul>
    </section>
  );
}

const Point = ({ point, place }: { readonly point: SinglePoint; readonly place: string }) => (
  <li>
    <span class="box">☐</span>
    <span class="place">{place}</span>
    <span>
      {withOwnDays(capital(point.says))}
      {point.couldAdd.length > 0 && (
        <>
          . <b>{weakWords.secondCouldBe(point.couldAdd.join(', '))}</b>
        </>
      )}
    </span>
    <span class="chance">{point.likely ? chanceAlone(point.likely.words) : weakWords.notKnown}</span>
  </li>
);

function WhatToFit({ answer }: { readonly answer: WeakLinksAnswer }) {
  const { chosen, candidates } = answer.seconds;
  const fittings = chosen.fittings.toSorted((a, b) => (a.singleOf ?? 5) - (b.singleOf ?? 5));
  return (
    <section class="group">
      <h2>
        {weakWords.whichSecondRetention}{' '}
        {fittings.length > ROOM && <span>{weakWords.firstOf(ROOM, fittings.length)}</span>}
      </h2>
      {candidates.length === 0 && <p>{weakWords.thereIsNoJointLeft}</p>}
      {candidates.length > 0 && fittings.length === 0 && <p>{weakWords.nothingCanBeFitted}</p>}
      {fittings.length > 0 && (
        <table class="print">
          <thead>
            <tr>
              <th scope="col">{weakWords.fitColumn}</th>
              <th scope="col">{weakWords.needsColumn}</th>
              <th scope="col">{weakWords.minutes}</th>
              <th scope="col">{weakWords.money}</th>
              <th scope="col" class="tick">
                {weakWords.doneColumn}
              </th>
            </tr>
          </thead>
          <tbody>
            {fittings.slice(0, ROOM).map(one => (
              <tr key={`${one.joint} ${one.retention}`}>
                <th scope="row">{capital(weakWords.on(one.retention, one.joint.replace('/', ', ')))}</th>
                <td>
                  {one.needs}.{one.singleOf !== null && <b> {weakWords.endsSinglePoint(one.singleOf)}</b>}
                </td>
                <td>{one.minutes}</td>
                <td>{one.money}</td>
                <td class="tick">☐</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      <p class="soft">{weakWords.neverDrillWeldOrWire}</p>
    </section>
  );
}
