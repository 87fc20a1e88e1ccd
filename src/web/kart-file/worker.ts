/** Reads the text of a kart file beside the page while it is typed, and works out what it would do to the kart. Only the newest text counts. */
import '../no-eval.ts';

import { kartChange, kartChoices } from '../../app/index.ts';
import { readKart } from '../../kart/index.ts';
import { readRetentions } from '../../risk/index.ts';
import type { Ask, Book, Text, Told } from './checking.ts';

const say = (told: Told): void => self.postMessage(told);

let book: Book | undefined;
let newest: Text | undefined;

self.addEventListener('message', ({ data }: MessageEvent<Ask>) => {
  if (data.what === 'book') book = data;
  else newest = data;
  setTimeout(work); // what was typed meanwhile is heard first
});

function work(): void {
  if (book === undefined || newest === undefined) return;
  const { n, text, now } = newest;
  newest = undefined;
  const { library, retentions, kart, facts } = book;
  const read = readKart(text, library);
  if (!read.ok) say({ n, problems: read.problems, notes: [] });
  else if (read.kart.name !== kart.name) say({ n, problems: [], notes: read.notes, renamed: read.kart.name });
  else {
    const right = {
      n,
      problems: [],
      notes: read.notes,
      choices: kartChoices(read.kart, library, readRetentions(retentions)),
    };
    say(right);
    say({ ...right, change: kartChange(kart, read.kart, { facts, now }) });
  }
}
