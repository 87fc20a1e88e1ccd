import { Glyph, type Sign } from '../glyph.tsx';
import type { View } from '../view.ts';
import { pageWords } from '../words/page.ts';
import { timeOf } from '../words/reads.ts';

type Word = { readonly sign: Sign; readonly text: string };

/** How the book of this device stands to the server's, in a word. */
export function syncWord({ sync, writing, kept, stood }: Pick<View, 'sync' | 'writing' | 'kept' | 'stood'>): Word {
  const { is, waiting, met } = sync;
  if (writing) return { sign: 'waiting', text: pageWords.writing };
  if (stood !== undefined) return { sign: 'waiting', text: pageWords.asOf(timeOf(stood)) };
  if (!kept && waiting > 0) return { sign: 'caution', text: pageWords.notKeptToSend(waiting) };
  if (sync.ahead !== undefined && is !== 'no server') return { sign: 'caution', text: pageWords.checkClock };
  if (sync.setBack !== undefined && (is === 'all sent' || is === 'to send'))
    return { sign: 'caution', text: pageWords.serverSetBack }; // the sentence is not put over an open step
  if (is === 'all sent') return { sign: 'done', text: pageWords.allSent };
  if (is === 'to send') return { sign: 'waiting', text: pageWords.toSend(waiting) };
  const rest = waiting > 0 ? pageWords.andToSend(waiting) : '';
  if (is === 'no server') return { sign: 'away', text: pageWords.noServer(sinceOf(met), rest) };
  if (is === 'stopped') return { sign: 'caution', text: pageWords.notTaken(rest) };
  if (is === 'put out') return { sign: 'caution', text: pageWords.notLetIn(rest) };
  if (is === 'other book') return { sign: 'caution', text: pageWords.anotherBookOnServer };
  if (is === 'empty server') return { sign: 'caution', text: pageWords.serverIsEmpty };
  return { sign: 'waiting', text: pageWords.lookingForServer(rest) };
}

/** The time of today, else the day. */
function sinceOf(met: string | undefined): string {
  if (met === undefined) return '';
  const then = new Date(met);
  const today = then.toDateString() === new Date().toDateString();
  const two = (n: number): string => String(n).padStart(2, '0');
  const clock = `${two(then.getHours())}:${two(then.getMinutes())}`;
  return ` since ${today ? clock : `${then.getFullYear()}-${two(then.getMonth() + 1)}-${two(then.getDate())}`}`;
}

export function SyncWord({ view }: { readonly view: View }) {
  const { sign, text } = syncWord(view);
  return (
    <>
      <Glyph sign={sign} /> <span>{text}</span>
    </>
  );
}
