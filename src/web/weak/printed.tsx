/** Every hazard on paper: the links that alone are enough, all of them, with a box to tick; then how likely. */
import type { WeakLinksAnswer } from '../../app/index.ts';
import type { Kart } from '../../kart/index.ts';
import { KartDrawing } from '../drawing/kart-drawing.tsx';
import { capital } from '../words/reads.ts';
import { weakWords } from '../words/weak.tsx';
import { type AskedHazard, codeWords } from './likelihood.tsx';
import { mapOf } from './map.ts';

const NONE: ReadonlySet<string> = new Set();

export function PrintedHazards(props: { readonly answer: WeakLinksAnswer; readonly kart: Kart }) {
  const { answer, kart } = props;
  const worst = answer.hazards.filter(({ severity }) => severity === 1);
  const marks = mapOf(
    kart,
    worst.flatMap(({ singlePoints }) => singlePoints),
  );
  const placeOf = (id: string): string =>
    String(marks.find(({ lines }) => lines.some(({ point }) => point.id === id))?.n ?? '');
  return (
    <div class="only-print">
      <figure class="print-map">
        <KartDrawing kart={kart} marks={marks} off={NONE} title={weakWords.kartFromAbove} />
      </figure>
      {answer.hazards.map(hazard => (
        <Printed key={hazard.function} hazard={hazard} placeOf={placeOf} />
      ))}
    </div>
  );
}

function Printed(props: { readonly hazard: AskedHazard; readonly placeOf: (id: string) => string }) {
  const { hazard, placeOf } = props;
  const said = hazard.top ?? hazard.atLeast;
  return (
    <section class="group">
      <h2>
        {capital(hazard.hazard)}{' '}
        <span>{weakWords.severityAloneEnough(hazard.severity, hazard.singlePoints.length)}</span>
      </h2>
      <p>
        {hazard.top === null && weakWords.wholeIsNotKnown2}
        {said && weakWords.overEvent(hazard.top === null ? weakWords.atLeast : '', said.words, codeWords(hazard))}
        {hazard.unknown.length > 0 && weakWords.withoutNumber(hazard.unknown.map(({ says }) => says).join('; '))}
      </p>
      {hazard.singlePoints.length > 0 && (
        <table class="print">
          <thead>
            <tr>
              <th scope="col">{weakWords.place}</th>
              <th scope="col">{weakWords.whatAloneIsEnough}</th>
              <th scope="col">{weakWords.overEvent2}</th>
              <th scope="col" class="tick">
                {weakWords.seen}
              </th>
            </tr>
          </thead>
          <tbody>
            {hazard.singlePoints.map(point => (
              <tr key={point.id}>
                <td>{hazard.severity === 1 ? placeOf(point.id) : ''}</td>
                <td>
                  {point.sentence}
                  {point.couldAdd.length > 0 && weakWords.secondCould(point.couldAdd.join(', '))}
                </td>
                <td>{point.likely?.words ?? weakWords.notKnown}</td>
                <td class="tick">☐</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}
