/** Every hazard on paper: the links that alone are enough, all of them, with a box to tick; then how likely. */
import type { WeakLinksAnswer } from '../../app/index.ts';
import type { Kart } from '../../kart/index.ts';
import { KartDrawing } from '../drawing/kart-drawing.tsx';
import { capital } from '../words.ts';
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
        <KartDrawing
          kart={kart}
          marks={marks}
          off={NONE}
          title="Kart from above with the places of links that alone are enough, severity 1; the numbers stand in the tables"
        />
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
        <span>
          severity {hazard.severity}, {hazard.singlePoints.length} alone enough
        </span>
      </h2>
      <p>
        {hazard.top === null && 'The whole is not known. '}
        {said && `${hazard.top === null ? 'At least ' : ''}${said.words} over the event. ${codeWords(hazard)}`}
        {hazard.unknown.length > 0 && ` Without a number: ${hazard.unknown.map(({ says }) => says).join('; ')}.`}
      </p>
      {hazard.singlePoints.length > 0 && (
        <table class="print">
          <thead>
            <tr>
              <th scope="col">Place</th>
              <th scope="col">What alone is enough</th>
              <th scope="col">Over the event</th>
              <th scope="col" class="tick">
                Seen
              </th>
            </tr>
          </thead>
          <tbody>
            {hazard.singlePoints.map(point => (
              <tr key={point.id}>
                <td>{hazard.severity === 1 ? placeOf(point.id) : ''}</td>
                <td>
                  {point.sentence}
                  {point.couldAdd.length > 0 && ` A second could be: ${point.couldAdd.join(', ')}.`}
                </td>
                <td>{point.likely?.words ?? 'not known'}</td>
                <td class="tick">☐</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}
