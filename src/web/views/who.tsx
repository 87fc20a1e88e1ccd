import { useEffect, useRef, useState } from 'preact/hooks';
import { pageWords } from '../words/page.ts';

/** Asks once who is at the bench; every entry carries that name. */
export function Who({ name, onNamed }: { readonly name: string; readonly onNamed: (name: string) => void }) {
  const [text, setText] = useState(name);
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    if (dialog.current && !dialog.current.open) dialog.current.showModal();
  }, []);
  const good = text.trim() !== '';
  return (
    <dialog
      ref={dialog}
      aria-labelledby="who-title"
      onCancel={e => {
        if (name === '') e.preventDefault();
        else onNamed(name);
      }}
    >
      <form
        onSubmit={e => {
          e.preventDefault();
          if (good) onNamed(text.trim());
        }}
      >
        <h1 id="who-title">{pageWords.whoIsAtBench}</h1>
        <p class="soft">{pageWords.everyEntryCarriesName}</p>
        <label for="who">{pageWords.yourNameLabel}</label>
        <input
          id="who"
          autocomplete="name"
          maxLength={200}
          value={text}
          onInput={e => setText(e.currentTarget.value)}
        />
        <div class="answers">
          <button type="submit" class="button main big full" disabled={!good}>
            {pageWords.thatIsMe}
          </button>
        </div>
      </form>
    </dialog>
  );
}
