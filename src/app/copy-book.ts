/** A whole book carried into an empty place, of another kind or not, and held against what it came from fact by fact. */
import { inBatches } from './in-batches.ts';
import type { BookStore } from './ports.ts';
import { type Problem, refuse } from './problem.ts';
import { type Proof, proofOf } from './proof.ts';

type Copied =
  | { readonly kind: 'copied'; readonly facts: number; readonly files: number; readonly lacking: readonly string[] }
  | { readonly kind: 'refused'; readonly problems: readonly Problem[] };

/** So many facts are kept in one transaction. */
const BATCH = 2000;

/**
 * Nothing is written when `from` is damaged or `to` holds anything else, and nothing is taken out of `from`. A copy that was
 * cut off goes on where it stood when it is done again.
 */
export async function copyBook(from: BookStore, to: BookStore): Promise<Copied> {
  const before = await proofOf(from);
  if (before.problems.length > 0) return { kind: 'refused', problems: before.problems };
  const wanted = await hashesOf(from);
  for (const [id, hash] of await hashesOf(to))
    if (wanted.get(id) !== hash)
      return refused(
        `Expected a place that holds no book yet, and it holds another one: fact ${id} is not in this.`,
        'Name an empty place, or merge the two with book export and book import.',
      );
  for await (const batch of inBatches((after, most) => from.read(after, most), BATCH)) {
    const outcome = await to.append(batch.map(({ fact }) => fact));
    if (outcome.kind !== 'kept')
      return refused(`Expected every fact to be taken, got ${outcome.kind}.`, 'Keep the old book, and report this.');
  }
  for (const hash of await from.files()) {
    const file = await from.getFile(hash);
    if (file) await to.putFile(file.bytes, file.mediaType);
  }
  return held(wanted, to, await proofOf(to));
}

/** Facts that were written into `from` meanwhile may be there too. */
async function held(wanted: ReadonlyMap<string, string>, to: BookStore, proof: Proof): Promise<Copied> {
  const { facts, files, lacking, problems } = proof;
  if (problems.length > 0) return { kind: 'refused', problems };
  const there = await hashesOf(to);
  for (const [id, hash] of wanted)
    if (there.get(id) !== hash)
      return refused(
        `Expected fact ${id} to be there as it was, and it is not.`,
        'Keep the old book, and report this.',
      );
  return { kind: 'copied', facts, files, lacking };
}

async function hashesOf(store: BookStore): Promise<ReadonlyMap<string, string>> {
  const hashes = new Map<string, string>();
  for await (const rows of inBatches((after, most) => store.lying(after, most), BATCH))
    for (const { id, hash } of rows) hashes.set(id, hash);
  return hashes;
}

const refused = (message: string, remedy: string): Copied => ({
  kind: 'refused',
  problems: [refuse('book', 'the new place', message, remedy)],
});
