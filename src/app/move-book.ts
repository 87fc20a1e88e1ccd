/** A whole book carried into an empty store of another kind, and held against what it came from fact by fact. */
import type { App } from './app.ts';
import { type Problem, refuse } from './problem.ts';

export type Moved =
  | { readonly kind: 'moved'; readonly facts: number; readonly files: number }
  | { readonly kind: 'refused'; readonly problems: readonly Problem[] };

type Book = Pick<App, 'exportBook' | 'importBook' | 'verifyBook' | 'facts' | 'karts' | 'getFile' | 'putFile'>;

/** All facts or none; nothing is taken out of `from`. Photos and raw files come after them, and again when it is done again. */
export async function moveBook(from: Book, to: Book): Promise<Moved> {
  const text = await from.exportBook();
  const there = await to.exportBook();
  if (there !== text && (await to.verifyBook()).facts > 0)
    return refused(
      'Expected a place that holds no book yet, and it holds another one.',
      'Name an empty place, or merge the two with book export and book import.',
    );
  const done = await to.importBook(text);
  if (done.kind === 'refused') return done;
  if ((await to.exportBook()) !== text)
    return refused('Expected every fact to be there as it was, and one is not.', 'Keep the old book, and report this.');
  const files = await filesOf(from);
  for (const hash of files) {
    const file = await from.getFile(hash);
    if (file === undefined || (await to.putFile(file.bytes, file.mediaType)) !== hash)
      return refused(
        `Expected file ${hash.slice(0, 12)}… to be in the book as its facts say, and it is not.`,
        'All facts are moved. Keep the old book, and look for the file in an older copy.',
      );
  }
  return { kind: 'moved', facts: (await to.verifyBook()).facts, files: files.length };
}

/** Every photo and raw file that a fact names. */
async function filesOf(book: Book): Promise<readonly string[]> {
  const hashes = new Set<string>();
  for (const { name } of await book.karts())
    for (const { fact } of await book.facts(name)) {
      if (fact.kind === 'found' && fact.photo !== undefined) hashes.add(fact.photo);
      if (fact.kind === 'laps' && fact.file !== undefined) hashes.add(fact.file);
    }
  return [...hashes];
}

const refused = (message: string, remedy: string): Moved => ({
  kind: 'refused',
  problems: [refuse('book', 'book move', message, remedy)],
});
