import { useState } from 'preact/hooks';
import { keypadWords } from '../words/keypad.ts';
import { Keypad } from './keypad.tsx';
import { COUNT } from './keys.ts';
import { type Keys, useKeys } from './wanted.ts';

/** A plain number, pieces, minutes or hours: the field, its keys while it is the one that is filled in, and a keyboard at any time. */
export function CountField(props: {
  readonly keys: Keys;
  readonly id: string;
  /** What stands behind the number; '' for pieces. */
  readonly unit: string;
  readonly text: string;
  readonly onText: (text: string) => void;
  readonly placeholder?: string;
  /** What else the field says of itself. */
  readonly aria?: Readonly<Record<`aria-${string}`, string | boolean>>;
}) {
  const { id, unit, text, onText } = props;
  const [wanted, want] = useKeys(props.keys);
  const [at, setAt] = useState(false);
  return (
    <>
      <div class="with-unit">
        <input
          id={id}
          {...props.aria}
          autocomplete="off"
          inputMode={wanted ? 'none' : unit === '' ? 'numeric' : 'decimal'}
          placeholder={props.placeholder}
          value={text}
          onInput={e => onText(e.currentTarget.value)}
          onFocus={() => setAt(true)}
          // Another field is filled in; a button keeps its place under the finger.
          onBlur={e =>
            setAt(!(e.relatedTarget instanceof HTMLInputElement || e.relatedTarget instanceof HTMLTextAreaElement))
          }
        />
        {unit !== '' && <span>{unit}</span>}
      </div>
      {wanted && at && (
        <>
          <Keypad unit={unit === '' ? COUNT : unit} text={text} onText={onText} />
          <button type="button" class="button plain wide" onClick={() => want(false)}>
            {keypadWords.keyboardInstead}
          </button>
        </>
      )}
    </>
  );
}
