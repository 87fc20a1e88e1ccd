/** The plan as bars and its table; on paper the same, and the list of each person. Fetched when somebody wants it. */
import './picture.css';
import { useState } from 'preact/hooks';
import type { Plan } from '../../prep/index.ts';
import { SHEET_WIDTH } from '../drawing/lines.tsx';
import { planWords } from '../words/plan.tsx';
import { actionOf, spanOf, titleOf } from '../words/reads.ts';
import { type Bars, barsOf } from './bars.ts';
import { toDo } from './carried.ts';
import { type Crew, nameOf } from './crew.ts';
import { startOf, whoOf } from './said.ts';

export type PictureProps = { readonly plan: Plan; readonly crew: Crew };

const POSTURE = 26; // width of the lane that says how the kart stands
const LEFT = 4;

export function Picture({ plan, crew }: PictureProps) {
  const [table, setTable] = useState(false);
  return (
    <>
      <figure>
        <Drawing plan={plan} crew={crew} name="screen" />
        <figcaption class="soft no-print">
          {planWords.filledAtWorkDotted(plan.closeBy !== null ? planWords.hatchedOnlyForClosing : '')}
        </figcaption>
      </figure>
      <button type="button" class="button plain wide no-print" aria-expanded={table} onClick={() => setTable(!table)}>
        {table ? planWords.hideTable : planWords.sameAsTable}
      </button>
      {table && <Table plan={plan} crew={crew} />}
    </>
  );
}

/** @param name tells its pattern from that of another drawing of the same page */
function Drawing({ plan, crew, name }: PictureProps & { readonly name: string }) {
  const bars = barsOf(plan);
  const people = Array.from({ length: plan.people }, (_, n) => n);
  const lanes = LEFT + POSTURE + 8;
  const width = (SHEET_WIDTH - lanes - LEFT) / plan.people;
  const x = (lane: number): number => lanes + lane * width;
  const title = planWords.whoDoesWhatWhenTable(plan.people, spanOf(plan.span));
  return (
    <svg class="plan-bars" viewBox={`0 0 ${SHEET_WIDTH} ${bars.height}`} role="img" aria-label={title}>
      <defs>
        <pattern id={`hatch-${name}`} width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <line y2="7" class="hatch" />
        </pattern>
      </defs>
      <Postures bars={bars} />
      {people.map(lane => (
        <text key={lane} x={x(lane) + 2} y={13} class="name">
          {nameOf(crew, lane + 1)}
        </text>
      ))}
      {bars.closing && (
        <rect
          fill={`url(#hatch-${name})`}
          x={lanes}
          y={bars.closing.top}
          width={width * plan.people}
          height={bars.closing.height}
        />
      )}
      {bars.waits.map(({ key, lane, top, height }) => (
        <line key={key} class="wait" x1={x(lane) + 8} x2={x(lane) + 8} y1={top + 1} y2={top + height - 1} />
      ))}
      {bars.bars.map(({ key, lane, top, height, label }) => (
        <g key={key}>
          <rect
            class={height < 6 ? 'work fine' : 'work'}
            x={x(lane) + 1}
            y={top}
            width={width - 5}
            height={Math.max(height, 0.75)}
          />
          {label !== '' && (
            <text x={x(lane) + 5} y={top + Math.min(height / 2 + 4, 13)} class="row">
              {label.slice(0, Math.floor((width - 12) / 5.6))}
            </text>
          )}
        </g>
      ))}
      <Marks bars={bars} />
    </svg>
  );
}

const Postures = ({ bars }: { readonly bars: Bars }) =>
  bars.postures.map(({ top, height, text }) => (
    <g key={top}>
      <path class="posture" d={`M${LEFT + POSTURE} ${top}H${LEFT}V${top + height}H${LEFT + POSTURE}`} />
      {height > text.length * 6.5 && (
        <text
          class="row"
          text-anchor="middle"
          transform={`translate(${LEFT + POSTURE / 2 + 4} ${top + height / 2}) rotate(-90)`}
        >
          {text}
        </text>
      )}
    </g>
  ));

/** Words of a line stand above it at the right, on the colour of the sheet, so that bars do not run through them. */
function Marks({ bars }: { readonly bars: Bars }) {
  const said = [...bars.windows, ...(bars.closing ? [{ y: bars.closing.top, text: bars.closing.text }] : [])];
  return (
    <>
      {said.map(({ y, text }, n) => (
        <g key={text} class={n === bars.windows.length ? 'signal' : ''}>
          <line class="edge" x1={LEFT + POSTURE + 4} x2={SHEET_WIDTH - LEFT} y1={y} y2={y} />
          <text
            class="mark"
            x={SHEET_WIDTH - LEFT - 2}
            y={n === bars.windows.length ? y - 3 : y + 12}
            text-anchor="end"
          >
            {text}
          </text>
        </g>
      ))}
      {bars.hours.map(({ y, text }) => (
        <text key={text} class="mark" x={SHEET_WIDTH - LEFT - 2} y={y + 11} text-anchor="end">
          {text}
        </text>
      ))}
    </>
  );
}

function Table({ plan, crew }: PictureProps) {
  return (
    <table class="plan-table">
      <thead>
        <tr>
          <th>{planWords.when}</th>
          <th>{planWords.who}</th>
          <th>{planWords.step}</th>
          <th>{planWords.minutes}</th>
        </tr>
      </thead>
      <tbody>
        {toDo(plan).map(step => (
          <tr key={step.n}>
            <td>{startOf(plan, step)}</td>
            <td>{whoOf(crew, step)}</td>
            <td>
              {step.n} {actionOf(step)}: {titleOf(step)}
            </td>
            <td class="figure">{spanOf(step.minutes)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** On paper: the bars on a sheet, then a list for each person to take along. */
export function PrintByPerson({ plan, crew }: PictureProps) {
  const people = Array.from({ length: plan.people }, (_, n) => n + 1);
  return (
    <section class="by-person">
      <h2>{planWords.whoDoesWhatWhen}</h2>
      <Drawing plan={plan} crew={crew} name="paper" />
      {people.map(person => (
        <section key={person}>
          <h2>{nameOf(crew, person)}</h2>
          <table class="print">
            <thead>
              <tr>
                <th>{planWords.when}</th>
                <th>{planWords.no}</th>
                <th>{planWords.step}</th>
                <th>{planWords.with}</th>
                <th>{planWords.minutes}</th>
                <th class="tick">{planWords.done}</th>
              </tr>
            </thead>
            <tbody>
              {toDo(plan)
                .filter(step => step.people.includes(person) && step.action !== 'posture')
                .map(step => (
                  <tr key={step.n}>
                    <td class="figure">{startOf(plan, step)}</td>
                    <td>{step.n}</td>
                    <td>
                      {actionOf(step)}: {titleOf(step)}
                      {step.item !== null && ` (${step.part})`}
                      {step.caution !== null && <b> {planWords.caution(step.caution)}</b>}
                    </td>
                    <td>
                      {whoOf(crew, { people: step.people.filter(one => one !== person) })}
                      {step.helpers > 0 && planWords.andHelp}
                    </td>
                    <td>{spanOf(step.minutes)}</td>
                    <td class="tick">☐</td>
                  </tr>
                ))}
            </tbody>
          </table>
        </section>
      ))}
    </section>
  );
}
