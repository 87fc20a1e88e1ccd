import { useEffect, useRef, useState } from 'preact/hooks';

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
        <h1 id="who-title">Who is at the bench?</h1>
        <p class="soft">Every entry carries the name of the one who made it.</p>
        <label for="who">Your name</label>
        <input
          id="who"
          autocomplete="name"
          maxLength={200}
          value={text}
          onInput={e => setText(e.currentTarget.value)}
        />
        <div class="answers">
          <button type="submit" class="button main big full" disabled={!good}>
            That is me
          </button>
        </div>
      </form>
    </dialog>
  );
}
