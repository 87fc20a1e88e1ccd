import { useState } from 'preact/hooks';
import { recordWords } from '../words/record.ts';

export type Choice = { readonly value: string; readonly text: string; readonly soft?: string };

/** Rows shown at once: what fits above a phone's keyboard. */
const ROWS = 6;

/** One of many, found by a few letters of its name. What is chosen stays in sight until it is changed. */
export function Pick(props: {
  readonly id: string;
  readonly label: string;
  readonly choices: readonly Choice[];
  readonly value: string;
  readonly onPick: (value: string) => void;
}) {
  const { id, label, choices, value, onPick } = props;
  const [letters, setLetters] = useState('');
  const chosen = choices.find(c => c.value === value);
  if (chosen)
    return (
      <fieldset>
        <legend>{label}</legend>
        <button type="button" class="button wide chosen" onClick={() => onPick('')}>
          <span>{chosen.text}</span> <span class="soft">{recordWords.change}</span>
        </button>
      </fieldset>
    );
  const words = letters.toLowerCase().split(/\s+/);
  const found = choices.filter(c => words.every(w => `${c.text} ${c.soft ?? ''}`.toLowerCase().includes(w)));
  return (
    <fieldset>
      <legend>{label}</legend>
      {choices.length > ROWS && (
        <input
          id={id}
          aria-label={recordWords.someLettersOfItsName(label)}
          placeholder={recordWords.someLettersHint}
          autocomplete="off"
          value={letters}
          onInput={e => setLetters(e.currentTarget.value)}
        />
      )}
      <ul class="choices">
        {found.slice(0, ROWS).map(c => (
          <li key={c.value}>
            <button type="button" class="button plain wide" onClick={() => onPick(c.value)}>
              <span>{c.text}</span> {c.soft !== undefined && <span class="soft">{c.soft}</span>}
            </button>
          </li>
        ))}
      </ul>
      <p class="soft" role="status">
        {choices.length === 0 && recordWords.thereIsNone}
        {choices.length > 0 && found.length === 0 && recordWords.noneHasTheseLetters}
        {found.length > ROWS && recordWords.moreTypeMoreLetters(found.length - ROWS)}
      </p>
    </fieldset>
  );
}
