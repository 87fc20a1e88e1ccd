import type { Problem } from '../../app/index.ts';
import { partAge } from '../../book/index.ts';
import { CountField } from '../keypad/count-field.tsx';
import { Refused } from '../parts.tsx';
import type { Keep } from '../place.ts';
import type { Session, Snapshot } from '../session.ts';
import { dateOf } from '../words/reads.ts';
import { recordWords } from '../words/record.ts';
import { type Field, PART_ITSELF } from '../write-down.ts';
import { PhotoField } from './photo-field.tsx';
import { type Choice, Pick } from './pick.tsx';

type Props = {
  readonly field: Field;
  readonly value: string;
  /** The part that was picked, or ''. */
  readonly part: string;
  /** What was refused about this field. */
  readonly problems: readonly Problem[];
  readonly snapshot: Snapshot;
  readonly session: Session;
  readonly keep: Keep;
  readonly onInput: (text: string) => void;
  /** A photo is on its way into the book. */
  readonly keeping: boolean;
  readonly onKeeping: (is: boolean) => void;
};

/** One field of an entry, with what was refused about it right beneath. */
export function EntryField(props: Props) {
  const { field, problems } = props;
  const hint = hintOf(props);
  return (
    <div class="entry-field">
      {field.is === 'pick' ? (
        <Pick
          id={`entry-${field.key}`}
          label={field.label}
          choices={choicesOf(field, props.snapshot, props.part)}
          value={props.value}
          onPick={props.onInput}
        />
      ) : field.is === 'tick' ? (
        <Tick {...props} />
      ) : field.is === 'ticks' ? (
        <Ticks {...props} />
      ) : field.is === 'photo' ? (
        <PhotoField
          id={`entry-${field.key}`}
          hash={props.value}
          session={props.session}
          onPhoto={props.onInput}
          keeping={props.keeping}
          onKeeping={props.onKeeping}
        />
      ) : (
        <>
          <label for={`entry-${field.key}`}>{field.label}</label>
          <Input {...props} />
        </>
      )}
      {hint !== undefined && (
        <p class="soft" id={`hint-${field.key}`}>
          {hint}
        </p>
      )}
      <Refused problems={problems} />
    </div>
  );
}

/** How long it had run is offered from the record: nothing need be typed where that is right. */
function hintOf({ field, snapshot, part }: Props): string | undefined {
  if (field.key !== 'after') return field.hint;
  return recordWords.hOnRecordTakenWhen((partAge(snapshot.state, part).minutes / 60).toFixed(1));
}

function Tick({ field, value, onInput }: Props) {
  return (
    <label class="tick-box">
      <input type="checkbox" checked={value !== ''} onChange={e => onInput(e.currentTarget.checked ? 'yes' : '')} />
      {field.label}
    </label>
  );
}

/** Several of a few; kept as lines. */
function Ticks({ field, value, snapshot, onInput }: Props) {
  const on = value === '' ? [] : value.split('\n');
  return (
    <fieldset>
      <legend>{field.label}</legend>
      {functionsOf(snapshot).map(([name, text]) => (
        <label class="tick-box" key={name}>
          <input
            type="checkbox"
            checked={on.includes(name)}
            onChange={e =>
              onInput((e.currentTarget.checked ? [...on, name] : on.filter(other => other !== name)).join('\n'))
            }
          />
          {text}
        </label>
      ))}
    </fieldset>
  );
}

const functionsOf = ({ kart }: Snapshot): readonly (readonly [string, string])[] =>
  Object.values(kart.functions)
    .toSorted((a, b) => a.severity - b.severity)
    .map(({ name, hazard }) => [name, hazard === undefined ? name : `${name}: ${hazard}`]);

/** What is typed or chosen in one place; the rest has pieces of its own. */
function Input(props: Props) {
  const { field, value, snapshot } = props;
  const of = {
    id: `entry-${field.key}`,
    value,
    'aria-required': field.must === true,
    'aria-invalid': props.problems.length > 0,
    ...(hintOf(props) === undefined ? {} : { 'aria-describedby': `hint-${field.key}` }),
  };
  const typed = (e: { readonly currentTarget: { readonly value: string } }): void =>
    props.onInput(e.currentTarget.value);
  if (field.is === 'words') return <textarea {...of} onInput={typed} />;
  if (field.is === 'moment') return <input {...of} type="datetime-local" onInput={typed} />;
  if (field.is === 'choice')
    return (
      <select {...of} class="field" onChange={typed}>
        {field.must !== true && <option value="">{field.none ?? recordWords.none}</option>}
        {(field.choices ?? eventsOf(snapshot)).map(([choice, text]) => (
          <option key={choice} value={choice}>
            {text}
          </option>
        ))}
      </select>
    );
  if (field.is === 'line') return <input {...of} autocomplete="off" maxLength={200} onInput={typed} />;
  const { id, value: text, ...aria } = of;
  return <CountField id={id} text={text} aria={aria} keys={props.keep} unit={UNITS[field.is]} onText={props.onInput} />;
}

const UNITS = { count: '', minutes: 'min', hours: 'h', tick: '', ticks: '', pick: '', photo: '' } as const;

/** Newest first: a run belongs to the latest more often than to the first. */
export const eventsOf = ({ state }: Snapshot): readonly (readonly [string, string])[] =>
  Object.values(state.events)
    .toSorted((a, b) => (a.from < b.from ? 1 : -1))
    .map(e => [e.event, `${e.event}, ${dateOf(e.from)}`] as const);

function choicesOf(field: Field, { kart, state }: Snapshot, part: string): readonly Choice[] {
  if (field.of === 'own joint')
    return [
      { value: PART_ITSELF, text: PART_ITSELF },
      ...(kart.parts[part]?.joints ?? []).map(id => ({
        value: id,
        text: kart.joints[id]?.name ?? id,
        soft: kart.joints[id]?.retention ?? '',
      })),
    ];
  if (field.of === 'part') return Object.values(kart.parts).map(p => ({ value: p.id, text: p.id, soft: p.system }));
  if (field.of === 'joint') return Object.keys(kart.joints).map(id => ({ value: id, text: id.replace('/', ': ') }));
  return state.defects
    .filter(d => d.mended === undefined)
    .map(d => ({ value: d.fact, text: `${d.part}: ${d.defect}`, soft: dateOf(d.at) }));
}
