import { suggest } from '../kart/index.ts';

/** ' Did you mean "rear hub left"?', or nothing when no name is near. */
export function suggestion(word: string, among: readonly string[]): string {
  const near = suggest(word, among);
  return near === undefined ? '' : ` Did you mean "${near}"?`;
}
