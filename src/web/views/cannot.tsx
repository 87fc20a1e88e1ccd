import type { Keep } from '../place.ts';

/** Why a step is not done: it cannot be, or not now. The reason is asked for either way. */
export const WHYS = ['cannot be done', 'put off'] as const;
export type Why = (typeof WHYS)[number];

const LIKELY: Readonly<Record<Why, readonly string[]>> = {
  'cannot be done': ['a part is missing', 'a tool is missing', 'cannot be reached', 'does not apply to this kart'],
  'put off': ['no time now', 'too dark', 'waiting for a part', 'needs a second person'],
};

/** Its two buttons and what is likely, one tap each; the words can still be changed. */
export function Cannot(props: {
  readonly why: Why;
  /** Hand work between is put off or done; there is nothing else to say of it. */
  readonly onlyPutOff: boolean;
  readonly onWhy: (why: Why) => void;
  readonly words: string;
  readonly onWords: (words: string) => void;
}) {
  const { why, words } = props;
  return (
    <>
      {!props.onlyPutOff && (
        <fieldset class="two">
          <legend>Which is it</legend>
          {WHYS.map(one => (
            <button
              key={one}
              type="button"
              class={one === why ? 'button main' : 'button'}
              aria-pressed={one === why}
              onClick={() => props.onWhy(one)}
            >
              {one === 'put off' ? 'Not now' : 'It cannot be done'}
            </button>
          ))}
        </fieldset>
      )}
      <label for="words">{why === 'put off' ? 'Why not now' : 'Why it cannot be done'}</label>
      <textarea id="words" required value={words} onInput={e => props.onWords(e.currentTarget.value)} />
      <div class="likely">
        {LIKELY[why].map(text => (
          <button key={text} type="button" class="button plain" onClick={() => props.onWords(text)}>
            {text}
          </button>
        ))}
      </div>
      <p class="note">
        {why === 'put off'
          ? 'It stays due, and the reason stays in the record. A safety item that is put off stands against running.'
          : 'It counts as not known until somebody does it, and the reason stands with it.'}
      </p>
    </>
  );
}

/** What was chosen outlives a reload. */
export const keptWhy = (keep: Keep, step: string, onlyPutOff: boolean): Why =>
  onlyPutOff || keep.get(`why ${step}`) === 'put off' ? 'put off' : 'cannot be done';
