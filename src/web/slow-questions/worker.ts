/** Works out what takes long, from a copy of the book. */
import '../no-eval.ts';

import { createQueries, listSource, Refusal, sparesOf, weakLinksOf } from '../../app/index.ts';
import type { Gathered, Heard, Job, Question } from './ask.ts';

const say = (heard: Heard<unknown>): void => self.postMessage(heard);

self.addEventListener('message', ({ data: { book, question } }: MessageEvent<Job>) => {
  answer(book, question).then(
    found => say({ answer: found }),
    (error: unknown) => {
      if (error instanceof Refusal) say({ problems: error.problems });
      else setTimeout(() => Promise.reject(error)); // the page hears of it by its error event
    },
  );
});

function answer({ facts, karts, now }: Gathered, question: Question): Promise<unknown> {
  const queries = createQueries({
    source: listSource(facts),
    reader: {
      async read(text) {
        const found = karts.find(one => one.text === text);
        if (found === undefined)
          throw new Error('answer: each kart in force must be gathered, got the text of another');
        return { ok: true, kart: found.kart, notes: [] };
      },
    },
    clock: { now: () => new Date(now) },
  });
  return question.what === 'spares'
    ? sparesOf(queries, question.kart, question.ask, question.priors)
    : weakLinksOf(queries, question.kart, question.ask, question.texts);
}
