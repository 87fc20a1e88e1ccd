import { keypadWords } from '../words/keypad.ts';
import { keysFor, pressed } from './keys.ts';

/** Keys of a size for gloves. The field keeps its caret and the device's own keyboard stays away; a real one still types. */
export function Keypad(props: {
  readonly unit: string;
  readonly text: string;
  readonly onText: (text: string) => void;
}) {
  const { unit, text, onText } = props;
  return (
    <fieldset class="keypad" aria-label={keypadWords.keypad}>
      {keysFor(unit).map(({ key, says, face, wide }) => (
        <button
          key={key}
          type="button"
          class={`button key${wide ? ' wide-key' : ''}${/^[a-z]/.test(face ?? '') ? ' word-key' : ''}`}
          aria-label={face === undefined ? undefined : says}
          onPointerDown={e => e.preventDefault()}
          onClick={() => onText(pressed(text, key))}
        >
          {face ?? says}
        </button>
      ))}
    </fieldset>
  );
}
