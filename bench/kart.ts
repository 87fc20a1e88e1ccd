/** The full six-speed template as a kart, read as the product reads it. */
import { libraryFiles } from '../src/host/index.ts';
import { type Kart, readKart } from '../src/kart/index.ts';

export function benchKart(): Kart {
  const read = readKart('kart: 1\nname: bench\ntemplate: six-speed gearbox\n', libraryFiles());
  if (!read.ok)
    throw new Error(
      `bench: the template must be readable, got ${read.problems.length} problems: ${read.problems[0]?.message}`,
    );
  return read.kart;
}
