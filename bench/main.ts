/** The bench. Figures of one run on one machine: compare the ratios, and runs on the same machine. */
import { cpus } from 'node:os';
import { appends } from './append.ts';
import { ballasts } from './ballast.ts';
import { folds } from './fold.ts';
import { frontEnds } from './front-end.ts';
import { type Figure, table } from './measure.ts';
import { plans } from './plan.ts';
import { starts } from './start.ts';

console.log(
  `Node ${process.versions.node}, ${process.platform} ${process.arch}, ${cpus().length} cores (${cpus()[0]?.model ?? 'unknown'})\n`,
);
for (const [title, measure] of [
  ['Plan', plans],
  ['Fold', folds],
  ['Append', appends],
  ['Ballast', ballasts],
  ['Front end', frontEnds],
  ['Start', starts],
] satisfies [string, () => Promise<readonly Figure[]>][]) {
  console.log(`${title}\n${table(await measure())}\n`);
}
