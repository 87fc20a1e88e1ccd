/** Opening a long book, and adding one fact to it. */
import { CHAIN_START, type Fact, fold, Ledger, sealAll } from '../src/book/index.ts';
import { inventBook } from './facts.ts';
import { benchKart } from './kart.ts';
import { type Figure, kept, median, megabytes, ms, times } from './measure.ts';

const FACTS = 100_000;

export async function folds(): Promise<readonly Figure[]> {
  const facts = inventBook(benchKart(), FACTS);
  const full = await median(5, () => fold(facts));
  const tenth = await median(5, () => fold(facts.slice(0, FACTS / 10)));
  const { bytes } = kept(() => fold(facts));
  return [
    {
      what: `fold of ${FACTS} facts`,
      value: ms(full),
      ratio: times(full, tenth, `a tenth of them (10 would be linear)`),
    },
    { what: 'state kept, heap', value: megabytes(bytes) },
    await oneMore(facts, full),
  ];
}

/** A fact that sorts last, against folding all again. */
async function oneMore(facts: readonly Fact[], full: number): Promise<Figure> {
  const ledger = new Ledger('bench', facts);
  let seen = ledger.state;
  let last: Fact | undefined = facts.at(-1);
  let n = 0;
  const one = await median(50, () => {
    const at = new Date(Date.parse('2060-01-01T00:00:00.000Z') + n * 1000).toISOString();
    const draft = {
      kind: 'note' as const,
      text: 'one more',
      id: `more-${n++}`,
      kart: 'bench',
      at,
      recorded: at,
      by: 'A. Bench',
      device: 'bench',
    };
    const [fact] = sealAll(last ?? CHAIN_START, [draft]);
    if (!fact) return;
    ledger.add([fact]);
    seen = ledger.state;
    last = fact;
  });
  if (seen.count !== facts.length + n) throw new Error(`bench: the ledger must hold all facts, got ${seen.count}`);
  return { what: 'one fact more: sealed, added, state read', value: ms(one), ratio: times(one, full, 'the fold') };
}
