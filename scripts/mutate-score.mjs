/** What became of the mutants, to be printed. */

/**
 * A table with a line a file and one for all. Mutants that no test reaches count against the score; those reached only
 * while files load are not tried and do not count, nor do those excluded by a comment with its reason.
 * @returns {{ lines: string[], score: number }} score in %
 */
export function scores(name, mutants) {
  const row = (title, some) => {
    const [killed, lived, unreached, atLoad, excluded] = ['killed', 'lived', 'unreached', 'at load', 'excluded'].map(
      fate => some.filter(mutant => mutant.fate === fate).length,
    );
    const score = (100 * killed) / (killed + lived + unreached || Number.NaN);
    const shown = Number.isNaN(score) ? '-' : score.toFixed(2);
    return { score, line: cells([title, shown, killed, lived, unreached, atLoad, excluded]) };
  };
  const files = [...new Set(mutants.map(({ file }) => file))];
  const together = row(name, mutants);
  return {
    lines: [
      cells(['', '%', 'killed', 'lived', 'unreached', 'at load', 'excluded']),
      ...files.map(
        each =>
          row(
            each,
            mutants.filter(({ file }) => file === each),
          ).line,
      ),
      together.line,
    ],
    score: together.score,
  };
}

const cells = ([first, ...rest]) => first.padEnd(44) + rest.map(cell => String(cell).padStart(10)).join('');

/** A line for each that lives: where, what stood there, and what may stand there unnoticed. */
export const survivors = (mutants, readSource) =>
  mutants
    .filter(({ fate }) => fate === 'lived' || fate === 'unreached')
    .map(({ file, location: { start, end }, fate, replacement }) => {
      const lines = readSource(file)
        .split('\n')
        .slice(start.line, end.line + 1);
      lines.push((lines.pop() ?? '').slice(0, end.column));
      const was = lines.join('\n').slice(start.column);
      return `${file}:${start.line + 1}:${start.column + 1} ${fate}: ${short(was)}  →  ${short(replacement)}`;
    });

const short = text => (text.length > 160 ? `${text.slice(0, 160)}…` : text).replaceAll(/\s+/g, ' ');
