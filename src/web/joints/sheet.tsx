/** The joints of one system on the kart from above, with what keeps each made, and the same as a table. */
import './joints.css';
import { SYSTEMS, type System } from '../../kart/index.ts';
import { KartDrawing } from '../drawing/kart-drawing.tsx';
import { partsOff } from '../drawing/parts-off.ts';
import { Glyph } from '../glyph.tsx';
import { PrintTitle } from '../parts.tsx';
import { hashOf, type Place } from '../place.ts';
import type { Snapshot } from '../session.ts';
import { jointWords } from '../words/joints.ts';
import { capital, dateOf } from '../words/reads.ts';
import { HELD, jointsOf, mapOfJoints } from './of-system.ts';

export type JointsProps = {
  readonly snapshot: Snapshot;
  readonly about: string | undefined;
  readonly go: (place: Place) => void;
};

export function Joints({ snapshot, about, go }: JointsProps) {
  const { kart, state, fitness } = snapshot;
  const systems = SYSTEMS.filter(system => jointsOf(kart, state, system).length > 0);
  const system: System = systems.find(each => each === about) ?? systems[0] ?? 'brakes';
  const lines = jointsOf(kart, state, system);
  const marks = mapOfJoints(kart, lines);
  const inked = new Set(Object.values(kart.parts).flatMap(part => (part.system === system ? part.id : [])));
  const used = HELD.filter(kind => lines.some(line => line.kind === kind));
  return (
    <>
      <PrintTitle title={jointWords.titled(system)} kart={kart.name} event={fitness.event} invented={kart.invented} />
      <p class="no-print">
        <a class="back" href={hashOf({ sheet: 'kart' })}>
          {jointWords.kartFromAbove}
        </a>
      </p>
      <h1>{jointWords.titled(system)}</h1>
      <div class="no-print">
        <label for="joints-of">{jointWords.system}</label>
        <select
          id="joints-of"
          class="field"
          value={system}
          onChange={e => go({ sheet: 'joints', about: e.currentTarget.value })}
        >
          {systems.map(each => (
            <option key={each} value={each}>
              {capital(each)}
            </option>
          ))}
        </select>
      </div>
      <div class="kart-page head-gap">
        <figure class="sheet">
          <KartDrawing
            kart={kart}
            marks={marks}
            off={partsOff(snapshot)}
            inked={inked}
            title={jointWords.drawn(kart.name, system, marks.length)}
          />
          <figcaption>
            <p class="legend">
              {used.map(kind => (
                <span key={kind}>
                  <Glyph sign={kind} /> {jointWords.held[kind]}
                </span>
              ))}
            </p>
          </figcaption>
        </figure>
        <section aria-labelledby="joints-table">
          <h2 id="joints-table">{jointWords.sameAsTable}</h2>
          <table class="print joint-table">
            <thead>
              <tr>
                <th scope="col">{jointWords.place}</th>
                <th scope="col">{jointWords.joint}</th>
                <th scope="col">{jointWords.keptBy}</th>
                <th scope="col">{jointWords.stands}</th>
              </tr>
            </thead>
            <tbody>
              {marks.flatMap(mark =>
                mark.lines.map(({ joint, kind, made }) => (
                  <tr key={joint.id}>
                    <td>{mark.n}</td>
                    <th scope="row">
                      <a href={hashOf({ sheet: 'part', about: `${kart.name}/${joint.part}` })}>{joint.part}</a>
                      <br />
                      {joint.name}
                    </th>
                    <td>
                      {joint.retention}
                      <br />
                      {joint.second === undefined ? <b>{jointWords.noSecond}</b> : jointWords.second(joint.second)}
                    </td>
                    <td>
                      {kind === 'open' || kind === 'off' ? (
                        <b>{jointWords.standing[kind]}</b>
                      ) : made === null ? (
                        jointWords.notWritten
                      ) : (
                        jointWords.made(dateOf(made))
                      )}
                    </td>
                  </tr>
                )),
              )}
            </tbody>
          </table>
        </section>
      </div>
    </>
  );
}
