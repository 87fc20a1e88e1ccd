import { useEffect, useState } from 'preact/hooks';
import type { Step } from '../../prep/index.ts';
import { workWords } from '../words/work.ts';
import { aloudOf } from './aloud.ts';

/** Reads the step out where the browser has a voice; pressed again, or left, it is quiet. */
export function ReadOut({ step }: { readonly step: Step }) {
  const [reads, setReads] = useState(false);
  const { speechSynthesis: voice } = window as { readonly speechSynthesis?: SpeechSynthesis };
  useEffect(() => (reads ? () => voice?.cancel() : undefined), [reads, voice]);
  if (voice === undefined) return null;
  const press = (): void => {
    voice.cancel();
    setReads(!reads);
    if (reads) return;
    const words = new SpeechSynthesisUtterance(aloudOf(step));
    words.lang = 'en';
    words.onend = () => setReads(false);
    words.onerror = () => setReads(false);
    voice.speak(words);
  };
  return (
    <button type="button" class="button plain small" onClick={press}>
      {reads ? workWords.beQuiet : workWords.readItOut}
    </button>
  );
}
