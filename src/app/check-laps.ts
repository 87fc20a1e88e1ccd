/** Laps before they are written: their run is there and has none yet, the log is not in the book, and the counts agree. */
import { type Fact, type FactOf, isFull } from '../book/index.ts';
import { gateFault } from '../laps/index.ts';
import type { Check, Context } from './context.ts';
import { type Problem, refuse } from './problem.ts';

export const lapsRight: Check<'laps'> = (payload, context) => [
  ...sourceRight(payload, context),
  ...countRight(payload, context),
  ...runRight(payload, context),
  ...(payload.gates ?? []).flatMap((gate, n) => {
    const fault = gateFault(gate);
    if (fault === undefined) return [];
    const where = `${context.where}.gates[${n}]`;
    return [refuse('wrong shape', where, `Expected ${fault}.`, 'Set its two points on either side of the track.')];
  }),
];

type Laps = Parameters<typeof lapsRight>[0];

function sourceRight({ file, timed }: Laps, context: Context): readonly Problem[] {
  if (file === undefined)
    return timed === 'by hand'
      ? []
      : [
          refuse(
            'wrong shape',
            `${context.where}.file`,
            'Expected the log that the laps come from, got none.',
            'Put the file into the book first, or say that they were timed by hand.',
          ),
        ];
  const before = lapsThatCount(context).find(fact => fact.file === file);
  return before === undefined || context.sure ? [] : [inBookAlready(before, `${context.where}.file`)];
}

export const inBookAlready = (before: FactOf<'laps'>, where: string): Problem =>
  refuse(
    'already in the book',
    where,
    `Expected a log that the book does not hold, and this one came as "${before.name}", written by ${before.by} on ${before.recorded.slice(0, 10)} (${before.id}).`,
    'Nothing is left to do; to cut its laps anew, say the same again as sure: its hours count once.',
  );

function countRight({ laps, times, gates }: Laps, { where }: Context): readonly Problem[] {
  const full = times?.filter(isFull).length ?? laps;
  const count =
    full === laps
      ? []
      : [
          refuse(
            'wrong shape',
            `${where}.laps`,
            `Expected ${full} laps, as many as have a time, got ${laps}.`,
            'Count the full laps.',
          ),
        ];
  const sectors = times?.find(lap => lap.sectors && lap.sectors.length !== (gates?.length ?? lap.sectors.length));
  if (sectors === undefined) return count;
  const message = `Expected ${gates?.length} sectors, one a gate, got ${sectors.sectors?.length}.`;
  return [...count, refuse('wrong shape', `${where}.times`, message, 'Give a sector from each gate to the next.')];
}

function runRight({ run, file }: Laps, context: Context): readonly Problem[] {
  if (run === undefined) return [];
  const { facts, state, where } = context;
  const named = facts.find(fact => fact.id === run);
  if (named?.kind !== 'ran' || state.struck[run])
    return [
      refuse(
        'unknown fact',
        `${where}.run`,
        `Expected a run of this kart that counts, got "${run}".`,
        'List the runs with `facts --kind ran`.',
      ),
    ];
  const before = lapsThatCount(context).find(fact => fact.run === run);
  if (before === undefined || context.sure || (file !== undefined && before.file === file)) return [];
  return [
    refuse(
      'already in the book',
      `${where}.run`,
      `Expected a run without laps, and it has those of "${before.name}" (${before.id}).`,
      'Name another run, or say it again as sure: then these take their place.',
    ),
  ];
}

const lapsThatCount = ({ facts, state }: Context): readonly FactOf<'laps'>[] =>
  facts.filter((fact: Fact): fact is FactOf<'laps'> => fact.kind === 'laps' && !state.struck[fact.id]);
