/** How dates, times and sizes are written on this device: a list for each. */
import { useState } from 'preact/hooks';
import { OWN_KINDS, OWN_UNITS } from '../../quantity/index.ts';
import type { Keep } from '../place.ts';
import { choiceWords } from '../words/choice.ts';
import { type Chosen, CLOCKS, choice, choose, DATES } from './choice.ts';

export function ChoiceForm({ keep }: { readonly keep: Keep }) {
  const [, drawAgain] = useState(0);
  const put = (what: Chosen, value: string): void => {
    choose(keep, navigator.language, what, value);
    drawAgain(n => n + 1);
  };
  const { date, clock, units } = choice();
  return (
    <section class="group" aria-labelledby="own-ways">
      <h2 id="own-ways">{choiceWords.title}</h2>
      <p class="soft">{choiceWords.keptHere}</p>
      <Pick what="date" label={choiceWords.date} value={date} put={put} choices={DATES.map(d => [d, choiceWords[d]])} />
      <Pick
        what="clock"
        label={choiceWords.clock}
        value={clock}
        put={put}
        choices={CLOCKS.map(c => [c, choiceWords[c]])}
      />
      {OWN_KINDS.map(kind => (
        <Pick
          key={kind}
          what={kind}
          label={choiceWords[kind]}
          value={units[kind] ?? ''}
          put={put}
          choices={[['', choiceWords.asGiven], ...OWN_UNITS[kind].choices.map(unit => [unit, unit] as const)]}
        />
      ))}
      <p class="note">{choiceWords.bookKeeps}</p>
    </section>
  );
}

function Pick(props: {
  readonly what: Chosen;
  readonly label: string;
  readonly value: string;
  readonly choices: readonly (readonly [value: string, text: string])[];
  readonly put: (what: Chosen, value: string) => void;
}) {
  const { what, label, value, choices, put } = props;
  const id = `own-${what}`;
  return (
    <>
      <label for={id}>{label}</label>
      <select id={id} class="field" value={value} onChange={e => put(what, e.currentTarget.value)}>
        {choices.map(([one, text]) => (
          <option key={one} value={one}>
            {text}
          </option>
        ))}
      </select>
    </>
  );
}
