/** Where logs are put down: dropped on the page, or chosen; several at once. */
import { useState } from 'preact/hooks';
import { lapsWords } from '../words/laps/sheet.tsx';

export function PutDown({ onFiles }: { readonly onFiles: (files: readonly File[]) => void }) {
  const [over, setOver] = useState(false);
  const [names, setNames] = useState<readonly string[]>([]);
  const put = (files: FileList | null | undefined): void => {
    const chosen = [...(files ?? [])];
    setNames(chosen.map(({ name }) => name));
    onFiles(chosen);
  };
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
        put(e.dataTransfer?.files);
      }}
    >
      <p>
        <b>{lapsWords.logsOfDay}</b>
      </p>
      <label class="button wide">
        {lapsWords.chooseLogs}
        <input
          id="logs"
          type="file"
          multiple
          onChange={e => {
            put(e.currentTarget.files);
            e.currentTarget.value = ''; // the same file may be put down again
          }}
        />
      </label>
      <p role="status">{names.length > 0 && lapsWords.chosenLogs(names.join(', '))}</p>
      <p class="soft">{lapsWords.csvWithHeaderGpx}</p>
    </section>
  );
}
