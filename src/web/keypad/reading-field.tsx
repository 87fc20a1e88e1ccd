import { readingSaid, readReading } from '../../app/index.ts';
import type { Item } from '../../kart/index.ts';
import { findUnit } from '../../quantity/index.ts';
import { withUnit } from '../answer.ts';
import { ownUnitOf } from '../choice/choice.ts';
import type { Keep } from '../place.ts';
import type { Snapshot } from '../session.ts';
import { fetched } from '../views/fetched.tsx';
import { InstrumentChoice } from '../views/instrument.tsx';
import type { JudgedProps } from '../views/judged.tsx';
import { keypadWords } from '../words/keypad.ts';
import { Keypad } from './keypad.tsx';
import { pastOf } from './past.ts';
import { PastReadings } from './past-line.tsx';
import { unitsFor } from './units.ts';
import { useKeys } from './wanted.ts';

const Judged = fetched<JudgedProps>('reading', 'reading', async () => (await import('../views/judged.tsx')).Judged);

/** A value as it is read: the field with its unit, what goes into the book, what was read before, and the keys. */
export function ReadingField(props: {
  readonly label: string;
  readonly item: Item | undefined;
  readonly snapshot: Snapshot;
  readonly keep: Keep;
  readonly text: string;
  readonly onText: (text: string) => void;
  /** What stands beside the field: a bare number is in that unit. */
  readonly unit: string;
  /** The unit the step asks in, and what the person chose instead. */
  readonly asked: string;
  readonly onUnit: (unit: string) => void;
  readonly limits: { readonly min?: number | undefined; readonly max?: number | undefined };
  readonly instrument: string;
  readonly onInstrument: (name: string) => void;
  /** Nothing of what was read before is shown: a second look is made as if there had been no first. */
  readonly blind: boolean;
}) {
  const { item, snapshot, keep, text, unit, asked } = props;
  const [keys, want] = useKeys(keep);
  const dimension = findUnit(asked)?.dimension;
  const typed = withUnit(text, unit);
  const shown = ownUnitOf(asked);
  const past = item === undefined || props.blind ? undefined : pastOf(item, snapshot.state, shown, dimension);
  return (
    <>
      <div class="reading-head">
        <label for="reading">{props.label}</label>
        <button type="button" class="button plain small" aria-pressed={keys} onClick={() => want(!keys)}>
          {keys ? keypadWords.keyboardInstead : keypadWords.keypad}
        </button>
      </div>
      <div class="with-unit">
        <input
          id="reading"
          class="reading"
          inputMode={keys ? 'none' : 'text'}
          autocomplete="off"
          value={text}
          onInput={e => props.onText(e.currentTarget.value)}
        />
        <Units units={unitsFor(asked)} unit={unit} onUnit={props.onUnit} />
      </div>
      {item && <Written item={item} snapshot={snapshot} text={typed} />}
      {item && (
        <output for="reading" class="judged" aria-live="polite">
          {typed !== '' && <Judged kart={snapshot.kart} item={item} text={typed} instrument={props.instrument} />}
        </output>
      )}
      {past && <PastReadings past={past} unit={shown} dimension={dimension} limits={props.limits} />}
      {keys && <Keypad unit={unit} text={text} onText={props.onText} />}
      <p class="soft">{keys ? keypadWords.readSeveralTimesNext : keypadWords.numberIsInAnyOther(unit)}</p>
      {item && (
        <InstrumentChoice kart={snapshot.kart} item={item} value={props.instrument} onChoose={props.onInstrument} />
      )}
    </>
  );
}

function Units(props: {
  readonly units: readonly string[];
  readonly unit: string;
  readonly onUnit: (unit: string) => void;
}) {
  const { units, unit, onUnit } = props;
  if (units.length < 2) return <span>{unit}</span>;
  return (
    <fieldset class="units" aria-label={keypadWords.unit}>
      {units.map(one => (
        <button
          key={one}
          type="button"
          class={one === unit ? 'button key main' : 'button key plain'}
          aria-pressed={one === unit}
          onPointerDown={e => e.preventDefault()}
          onClick={() => onUnit(one)}
        >
          {one}
        </button>
      ))}
    </fieldset>
  );
}

/** What was typed, read back as the book will hold it. */
function Written(props: { readonly item: Item; readonly snapshot: Snapshot; readonly text: string }) {
  const { item, snapshot, text } = props;
  const read = text === '' ? undefined : readReading(text, item, snapshot.kart, 'reading');
  return (
    <output for="reading" class="written">
      {read === undefined
        ? ''
        : 'problem' in read
          ? keypadWords.noValueYet
          : keypadWords.written(readingSaid(read.reading, item))}
    </output>
  );
}
