/** What `calc removal` is asked, and what can be wrong with it. */
import { z } from 'zod';
import type { InputProblem } from '../numbers/index.ts';
import { ANY, leastRemoval, partMinutes, type RemovalAsk, type Work } from '../prep/index.ts';

const minutes = z.number().min(0).max(1e6);
const name = z.string().min(1).max(200);
const names = z.array(name).max(20_000);
const access = z.array(names.min(1)).max(1000);
const posture = name.default(ANY);

const part = z.object({
  id: name,
  access: access.default([]).describe('ways in: one of the lists must be wholly off; none: it comes off freely'),
  removeMin: minutes,
  refitMin: minutes,
  verifyMin: minutes.default(0),
  posture,
});
const job = z.object({
  id: name,
  minutes,
  posture,
  tier: z.int().min(0).max(9).default(1).describe('0 safety, 1 reliability, 2 performance, 3 cosmetics'),
  value: z.number().min(0).max(1e9).default(1),
  severity: z.int().min(1).max(9).optional().describe('of a safety job, 1 the gravest'),
  needsRemoved: access.default([]),
  needsOn: names.default([]),
  after: names.default([]),
  needsComplete: z.boolean().default(false).describe('everything on, and afterwards nothing comes off but keepAfter'),
  keepAfter: names.default([]),
  invalidatedBy: names.default([]).describe('parts that do not come off after it'),
});
export const removalQuestion = z.object({
  id: z.union([z.string(), z.number()]).optional(),
  parts: z.array(part).max(20_000),
  jobs: z.array(job).max(20_000),
  postures: z.array(name).min(1).max(8).default([ANY]),
  change: z.record(z.string(), z.record(z.string(), minutes)).default({}).describe('minutes from a posture to another'),
  start: z.object({ posture: name.optional(), off: names.default([]), done: names.default([]) }).prefault({}),
  end: z.object({ posture: name.optional() }).prefault({}),
  budget: minutes.optional().describe('the window in minutes; without it all jobs are planned'),
});
export type RemovalQuestion = z.infer<typeof removalQuestion>;

export const workOf = (asked: RemovalQuestion): Work => ({
  ...asked,
  start: { ...asked.start, posture: asked.start.posture ?? asked.postures[0] ?? ANY },
  end: asked.end.posture ?? ANY,
});

export const removalAskOf = (work: Work): RemovalAsk => ({
  parts: work.parts.map(one => ({ id: one.id, access: one.access, minutes: partMinutes(one) })),
  wishes: work.jobs
    .filter(one => !work.start.done.includes(one.id))
    .map(one => ({ id: one.id, ways: one.needsRemoved })),
  lyingOff: work.start.off,
});

/** All that is wrong at once; circles only where the names are right. */
export function removalProblems(asked: RemovalQuestion): readonly InputProblem[] {
  const wrong = [...wrongNames(asked), ...missingChanges(asked)];
  return wrong.length > 0 ? wrong : circles(asked);
}

/** Names that stand for nothing, names given twice. */
function wrongNames(asked: RemovalQuestion): readonly InputProblem[] {
  const parts = new Set(asked.parts.map(one => one.id));
  const jobs = new Set(asked.jobs.map(one => one.id));
  const stands = new Set([...asked.postures, ANY]);
  const found: InputProblem[] = [];
  const look = (path: string, ids: readonly (string | undefined)[], known: ReadonlySet<string>, what: string): void =>
    ids.forEach((id, n) => {
      if (id === undefined || known.has(id)) return;
      found.push({
        path: `${path}/${n}`,
        expected: `the id of a ${what}`,
        got: `"${id}"`,
        remedy: `correct it, or add the ${what}`,
      });
    });
  const twice = (path: string, list: readonly { readonly id: string }[]): void => {
    const seen = new Set<string>();
    list.forEach(({ id }, n) => {
      if (seen.has(id))
        found.push({
          path: `${path}/${n}/id`,
          expected: 'an id of its own',
          got: `"${id}" again`,
          remedy: 'rename one of them',
        });
      seen.add(id);
    });
  };
  twice('parts', asked.parts);
  twice('jobs', asked.jobs);
  asked.parts.forEach((one, n) => {
    for (const [k, way] of one.access.entries()) look(`parts/${n}/access/${k}`, way, parts, 'part');
    look(`parts/${n}/posture`, [one.posture], stands, 'posture');
  });
  asked.jobs.forEach((one, n) => {
    for (const [k, way] of one.needsRemoved.entries()) look(`jobs/${n}/needsRemoved/${k}`, way, parts, 'part');
    for (const key of ['needsOn', 'keepAfter', 'invalidatedBy'] as const)
      look(`jobs/${n}/${key}`, one[key], parts, 'part');
    look(`jobs/${n}/after`, one.after, jobs, 'job');
    look(`jobs/${n}/posture`, [one.posture], stands, 'posture');
  });
  look('start/off', asked.start.off, parts, 'part');
  look('start/done', asked.start.done, jobs, 'job');
  look('start/posture', [asked.start.posture], stands, 'posture');
  look('end/posture', [asked.end.posture], stands, 'posture');
  return found;
}

function missingChanges({ postures, change }: RemovalQuestion): readonly InputProblem[] {
  return postures.flatMap(from =>
    postures.flatMap(to =>
      from === to || change[from]?.[to] !== undefined
        ? []
        : [
            {
              path: `change/${from}/${to}`,
              expected: 'minutes, 0 or more',
              got: 'nothing',
              remedy: 'say how long the change takes',
            },
          ],
    ),
  );
}

/** What is reached only by way of itself, and jobs that come after themselves. */
function circles(asked: RemovalQuestion): readonly InputProblem[] {
  const reach = leastRemoval({ ...removalAskOf(workOf(asked)), effort: 0 });
  const stuck = reach.kind === 'no way' ? [...reach.parts, ...reach.wishes] : [];
  const after = new Map(asked.jobs.map(one => [one.id, one.after]));
  const free = new Set<string>();
  for (let grew = true; grew; ) {
    grew = false;
    for (const [id, before] of after)
      if (!free.has(id) && before.every(one => free.has(one))) {
        free.add(id);
        grew = true;
      }
  }
  const late = asked.jobs.filter(one => !free.has(one.id)).map(one => one.id);
  const told = (path: string, ids: readonly string[], expected: string, remedy: string): readonly InputProblem[] =>
    ids.length === 0 ? [] : [{ path, expected, got: `a circle with ${some(ids)}`, remedy }];
  return [
    ...told(
      'parts',
      stuck,
      'a way in that does not lead by way of itself',
      'take one access of the circle out, or add another way',
    ),
    ...told('jobs', late, 'jobs in some order', 'take one "after" of the circle out'),
  ];
}

const some = (ids: readonly string[]): string =>
  ids
    .slice(0, 3)
    .map(id => `"${id}"`)
    .join(', ') + (ids.length > 3 ? ` and ${ids.length - 3} more` : '');
