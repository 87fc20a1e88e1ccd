import { instrumentsFor } from '../../app/index.ts';
import type { Item, Kart } from '../../kart/index.ts';
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
