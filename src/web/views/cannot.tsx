import { workWords } from '../words/work.ts';

/** Why a step is not done: it cannot be, or not now. The reason is asked for either way. */
export const WHYS = ['cannot be done', 'put off'] as const;
export type Why = (typeof WHYS)[number];

const LIKELY: Readonly<Record<Why, readonly string[]>> = {
  'cannot be done': [
    workWords.partIsMissing,
    workWords.toolIsMissing,
    workWords.cannotBeReached,
    workWords.doesNotApply,
  ],
  'put off': [workWords.noTimeNow, workWords.tooDark, workWords.waitingForPart, workWords.needsSecondPerson],
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
          <legend>{workWords.which}</legend>
          {WHYS.map(one => (
            <button
              key={one}
              type="button"
              class={one === why ? 'button main' : 'button'}
              aria-pressed={one === why}
              onClick={() => props.onWhy(one)}
            >
              {one === 'put off' ? workWords.notNow : workWords.itCannotBeDone}
            </button>
          ))}
        </fieldset>
      )}
      <label for="words">{why === 'put off' ? workWords.whyNotNow : workWords.whyItCannotBeDone}</label>
      <textarea id="words" required value={words} onInput={e => props.onWords(e.currentTarget.value)} />
      <div class="quick-words">
        {LIKELY[why].map(text => (
          <button key={text} type="button" class="button plain" onClick={() => props.onWords(text)}>
            {text}
          </button>
        ))}
      </div>
      <p class="note">{why === 'put off' ? workWords.itStaysDueAndReason : workWords.itCountsAsNotKnown}</p>
    </>
  );
}
