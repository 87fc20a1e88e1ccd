/**
 * The bench. Figures of one run on one machine: compare the ratios, and runs on the same machine.
 * With the name of a group only that group: `npm run bench:risk`; with `-- --only TEXT` only titles that hold it.
 */
import { cpus } from 'node:os';
import { appends } from './append.ts';
import { ballasts } from './ballast.ts';
import { faultTrees } from './fault-trees.ts';
import { folds } from './fold.ts';
import { frontEnds } from './front-end.ts';
import { databaseAppends } from './keeping-append.ts';
import { lapsAsked } from './laps-asked.ts';
import { lapImports } from './laps-import.ts';
import { lapPredictions } from './laps-predict.ts';
import { lives } from './lives.ts';
import { type Figure, table } from './measure.ts';
import { million, opened } from './million.ts';
import { audits } from './page/audit.ts';
import { pages } from './page/figures.ts';
import { pans } from './page/pan.ts';
import { phones } from './phones.ts';
import { plans } from './plan.ts';
import { planner } from './planner.ts';
import { kartPlans } from './planner-kart.ts';
import { removals } from './removal.ts';
import { seconds } from './second-retentions.ts';
import { spares } from './spares.ts';
import { starts } from './start.ts';

const [only, ...words] = process.argv.slice(2);
if (only === 'opened') {
  console.log(await opened(words[0] ?? '', words[1] ?? ''));
  process.exit();
}
console.log(
  `Node ${process.versions.node}, ${process.platform} ${process.arch}, ${cpus().length} cores (${cpus()[0]?.model ?? 'unknown'})\n`,
);
const all: readonly [title: string, measure: () => Promise<readonly Figure[]>, group: string][] = [
  ['Plan', plans, 'planner'],
  ['Plan of a whole kart', kartPlans, 'planner'],
  ['Removal', removals, 'planner'],
  ['Schedules', planner, 'planner'],
  ['Fold', folds, 'book'],
  ['Append', appends, 'book'],
  ['Append to a file', appends, 'keeping'],
  ['Append to a database', databaseAppends, 'keeping'],
  ['A hundred phones', phones, 'keeping'],
  ['A million facts', million, 'keeping'],
  ['Ballast', ballasts, 'numbers'],
  ['Front end', frontEnds, 'numbers'],
  ['Fault trees', faultTrees, 'risk'],
  ['Lives', lives, 'risk'],
  ['Second retentions', seconds, 'risk'],
  ['Spares', spares, 'risk'],
  ['Logs of laps', lapImports, 'laps'],
  ['Laps compared, and did it help', lapsAsked, 'laps'],
  ['Laps predicted', lapPredictions, 'laps'],
  ['Start', starts, 'start'],
  ['Page in a browser', pages, 'page'],
  ['Traces moved in a browser', pans, 'page'],
  ['Page audited', audits, 'page'],
];
const chosen = all.filter(([, , group]) => (only === undefined ? group !== 'keeping' : group === only));
if (chosen.length === 0)
  throw new Error(
    `bench: group must be one of ${[...new Set(all.map(([, , group]) => group))].join(', ')}, got ${only}`,
  );
const named = words[words.indexOf('--only') + 1] ?? '';
for (const [title, measure] of chosen.filter(([title]) => !words.includes('--only') || title.includes(named)))
  console.log(`${title}\n${table(await measure())}\n`);
