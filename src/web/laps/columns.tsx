/** Which column of a file says what, where its header leaves a doubt; asked once for every header. */
import { useState } from 'preact/hooks';
import { type CsvColumn, type CsvLayout, ROLES, type Role, unitsFor } from '../../laps/index.ts';
import { Refused } from '../parts.tsx';
import { problemText } from '../words/laps/reads.ts';
import { lapsWords } from '../words/laps/sheet.tsx';
import type { ColumnsAsked } from './log.ts';

const SAID: Readonly<Record<Role, string>> = {
  time: lapsWords.time,
  date: lapsWords.date,
  lat: lapsWords.latitude,
  lon: lapsWords.longitude,
  speed: lapsWords.speed,
  heading: lapsWords.courseOverGround,
  rotation: lapsWords.engineSpeed,
  height: lapsWords.height,
  accuracy: lapsWords.accuracyOfPlace,
};
const NEEDED: readonly Role[] = ['time', 'lat', 'lon'];

export function Columns(props: {
  readonly id: number;
  readonly asked: ColumnsAsked;
  readonly onChosen: (layout: CsvLayout) => void;
}) {
  const { id, asked, onChosen } = props;
  const [layout, setLayout] = useState(asked.layout);
  const missing = NEEDED.filter(role => layout.columns[role] === undefined);
  const set = (role: Role, column: CsvColumn | undefined): void => {
    const { [role]: _, ...others } = layout.columns;
    setLayout({ ...layout, columns: column ? { ...others, [role]: column } : others });
  };
  return (
    <form
      class="columns"
      onSubmit={e => {
        e.preventDefault();
        onChosen(layout);
      }}
    >
      <h2>{lapsWords.whichColumnSays}</h2>
      {asked.problem && (
        <Refused problems={[{ code: 'wrong shape', where: 'columns', ...problemText(asked.problem) }]} />
      )}
      {layout.doubts.map(doubt => (
        <p key={doubt} class="note">
          {doubt}
        </p>
      ))}
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls sideways must be reached by keys */}
      <section class="first-lines" tabIndex={0} aria-label={lapsWords.firstLinesOfFile}>
        <pre>{asked.lines.join('\n')}</pre>
      </section>
      {ROLES.map(role => (
        <RoleFields
          key={role}
          {...{ id, role, layout }}
          column={layout.columns[role]}
          onColumn={column => set(role, column)}
        />
      ))}
      <div class="answers">
        <button type="submit" class="button main big full" disabled={missing.length > 0}>
          {lapsWords.stillToChoose(missing.length, missing.map(role => SAID[role].toLowerCase()).join(', '))}
        </button>
      </div>
      <p class="soft">{lapsWords.rememberedOnThisDevice}</p>
    </form>
  );
}

function RoleFields(props: {
  readonly id: number;
  readonly role: Role;
  readonly layout: CsvLayout;
  readonly column: CsvColumn | undefined;
  readonly onColumn: (column: CsvColumn | undefined) => void;
}) {
  const { id, role, layout, column, onColumn } = props;
  const units = unitsFor(role);
  const field = `column-${id}-${role}`;
  return (
    <div class="two-fields column">
      <div class="entry-field">
        <label for={field}>{SAID[role]}</label>
        <select
          id={field}
          class="field"
          value={column?.heading ?? ''}
          onChange={e => onColumn(e.currentTarget.value === '' ? undefined : { heading: e.currentTarget.value })}
        >
          <option value="">{lapsWords.notInThisFile}</option>
          {layout.headings.map(heading => (
            <option key={heading} value={heading}>
              {heading}
            </option>
          ))}
        </select>
      </div>
      {units.length > 0 && column && (
        <div class="entry-field">
          <label for={`${field}-unit`}>{lapsWords.in}</label>
          <select
            id={`${field}-unit`}
            class="field"
            aria-label={lapsWords.unit(SAID[role])}
            value={column.unit ?? ''}
            onChange={e =>
              onColumn({
                heading: column.heading,
                ...(e.currentTarget.value === '' ? {} : { unit: e.currentTarget.value }),
              })
            }
          >
            <option value="">{UNSAID[role] ?? lapsWords.notSaid}</option>
            {units.map(unit => (
              <option key={unit} value={unit}>
                {unit}
              </option>
            ))}
          </select>
        </div>
      )}
    </div>
  );
}

/** What a column without a unit is read in. */
const UNSAID: { readonly [role in Role]?: string } = {
  time: lapsWords.asItsStepsSay,
  lat: '°',
  lon: '°',
  speed: lapsWords.asPlacesSay,
  heading: '°',
  rotation: 'rpm',
  height: 'm',
  accuracy: 'm',
};
