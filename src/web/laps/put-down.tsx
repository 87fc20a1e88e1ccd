/** Where logs are put down: dropped on the page, or chosen; several at once. */
import { useState } from 'preact/hooks';

export function PutDown({ onFiles }: { readonly onFiles: (files: readonly File[]) => void }) {
  const [over, setOver] = useState(false);
  return (
    <section
      class={`put-down no-print${over ? ' over' : ''}`}
      aria-label="Put down a log"
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
      <label for="logs">Logs of the day</label>
      <input
        id="logs"
        type="file"
        multiple
        onChange={e => {
          onFiles([...(e.currentTarget.files ?? [])]);
          e.currentTarget.value = ''; // the same file may be put down again
        }}
      />
      <p class="soft">
        CSV with a header, GPX 1.1 or NMEA 0183, of any logger. Choose one or several, or drop them here. Nothing leaves
        this device until you write it into the book.
      </p>
    </section>
  );
}
