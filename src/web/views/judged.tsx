import { instrumentsFor, judgeTyped } from '../../app/index.ts';
import type { Item, Kart } from '../../kart/index.ts';
import { withUnit } from '../answer.ts';
import { workWords } from '../words/work.ts';

/** With what it is read: the instruments that can, those the step's tools name first. */
export function InstrumentChoice(props: {
  readonly kart: Kart;
  readonly item: Item;
  readonly value: string;
  readonly onChoose: (name: string) => void;
}) {
  const names = instrumentsFor(props.kart, props.item);
  if (names.length === 0) return null;
  return (
    <>
      <label for="instrument">{workWords.readWith}</label>
      <select id="instrument" class="field" value={props.value} onChange={e => props.onChoose(e.currentTarget.value)}>
        <option value="">{workWords.notSaid}</option>
        {names.map(name => (
          <option key={name} value={name}>
            {name}
          </option>
        ))}
      </select>
    </>
  );
}

/** What the reading says while it is typed; nothing while it is none yet. */
export function Judged(props: {
  readonly kart: Kart;
  readonly item: Item;
  readonly unit: string | null;
  readonly typed: string;
  readonly instrument: string;
}) {
  const { kart, item, instrument } = props;
  const text = withUnit(props.typed, props.unit);
  const judged = text === '' ? undefined : judgeTyped(kart, item, { text, ...(instrument !== '' && { instrument }) });
  return (
    <output for="reading" class="judged" aria-live="polite">
      {judged && (
        <>
          {judged.say.map(line => (
            <p key={line} class="note">
              {line}
            </p>
          ))}
          {judged.move !== null && (
            <p class="note">
              <b>{judged.move}</b>
            </p>
          )}
          {judged.notes.map(line => (
            <p key={line} class="soft">
              {line}
            </p>
          ))}
        </>
      )}
    </output>
  );
}
