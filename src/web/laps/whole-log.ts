/** A log read to its end in pieces; between them the page hears how far it is. */
import { type Imported, type LayoutChoice, LogImport, type NotImported, type Progress } from '../../laps/index.ts';

/** How often the page hears of the progress, bytes: some ten times a second on a phone. */
const APART = 1_000_000;

export async function wholeLog(
  file: Blob,
  layout: LayoutChoice,
  {
    each = () => undefined,
    say = () => undefined,
  }: { each?: (piece: Uint8Array) => void; say?: (so: Progress) => void },
): Promise<Imported | NotImported> {
  const into = new LogImport({ layout });
  const reader = file.stream().getReader();
  let said = 0;
  for (;;) {
    const { done, value } = await reader.read();
    if (done) return into.finish();
    each(value);
    const progress = into.push(value);
    if (into.isHopeless) {
      await reader.cancel();
      return into.finish();
    }
    if (progress.bytes - said < APART) continue;
    said = progress.bytes;
    say(progress);
  }
}
