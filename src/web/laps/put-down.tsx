/** Where logs are put down: dropped on the page, or chosen; several at once. */
import { useState } from 'preact/hooks';
import { lapsWords } from '../words/laps/sheet.tsx';

export function PutDown({ onFiles }: { readonly onFiles: (files: readonly File[]) => void }) {
  const [over, setOver] = useState(false);
  return (
    <section
      class={`put-down no-print${over ? ' over' : ''}`}
      aria-label={lapsWords.putDownLog}
      onDragOver={e => {
        e.preventDefault();
        setOver(true);
      }}
      onDragLeave={() => setOver(false)}
      onDrop={e => {
        e.preventDefault();
        setOver(false);
        onFiles([...(e.dataTransfer?.files ?? [])]);
      }}
    >
      <label for="logs">{lapsWords.logsOfDay}</label>
      <input
        id="logs"
        type="file"
        multiple
        onChange={e => {
          onFiles([...(e.currentTarget.files ?? [])]);
          e.currentTarget.value = ''; // the same file may be put down again
        }}
      />
      <p class="soft">{lapsWords.csvWithHeaderGpx}</p>
    </section>
  );
}
