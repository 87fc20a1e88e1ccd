/** Runs, events, finds and strikes: clocks run forwards, and what is referred to is there. */
import type { FactOf } from '../book/index.ts';
import { itemKnown } from './check-items.ts';
import { partKnown } from './check-parts.ts';
import type { Check, Context } from './context.ts';
import { type Problem, refuse } from './problem.ts';

/** One session of a sprint kart is well under four hours; more is a slip between minutes and seconds. Common practice. */
const LONGEST_SESSION_MIN = 240;

export const ranRight: Check<'ran'> = (payload, context) => {
  const problems = meterForwards(payload.meterHours, context);
  if (payload.minutes <= LONGEST_SESSION_MIN || context.sure) return problems;
  return [
    ...problems,
    refuse(
      'far outside',
      `${context.where}.minutes`,
      `Expected one session of at most ${LONGEST_SESSION_MIN} min, got ${payload.minutes} min.`,
      'Give the minutes the engine ran; if it is so, record the same once more as sure.',
    ),
  ];
};

/** The hour meter neither runs back from what it read before, nor past what it read afterwards. */
function meterForwards(hours: number | undefined, { facts, state, at, where }: Context): readonly Problem[] {
  if (hours === undefined) return [];
  const field = `${where}.meterHours`;
  const remedy = 'Read the meter again; after a new meter, leave it out and say so in a note.';
  const before = state.meterHours;
  if (before !== undefined && hours < before)
    return [refuse('runs backwards', field, `Expected an hour meter of at least ${before} h, got ${hours} h.`, remedy)];
  const after = facts.find(
    (fact): fact is FactOf<'ran'> =>
      fact.kind === 'ran' && fact.at > at && fact.meterHours !== undefined && !state.struck[fact.id],
  )?.meterHours;
  if (after !== undefined && hours > after)
    return [
      refuse('runs backwards', field, `Expected at most the ${after} h it read afterwards, got ${hours} h.`, remedy),
    ];
  return [];
}

export const eventRight: Check<'event'> = (payload, { where }) =>
  payload.until !== undefined && payload.until < payload.from
    ? [
        refuse(
          'runs backwards',
          `${where}.until`,
          `Expected an end not before ${payload.from}, got ${payload.until}.`,
          'Exchange the two, or correct the one that is wrong.',
        ),
      ]
    : [];

export const foundRight: Check<'found'> = (payload, context) => [
  ...partKnown(payload.part, context),
  ...(payload.item === undefined ? [] : itemKnown(payload.item, context)),
];

export const mendedRight: Check<'mended'> = (payload, { state, where }) => {
  const defect = state.defects.find(one => one.fact === payload.found);
  if (defect && !defect.mended) return [];
  const open = state.defects.filter(one => !one.mended).map(one => `${one.fact} (${one.part}: ${one.defect})`);
  const remedy = open.length === 0 ? 'No defect is open.' : `Open: ${open.join('; ')}.`;
  return [
    defect
      ? refuse('already mended', `${where}.found`, `Expected an open defect, and ${payload.found} is mended.`, remedy)
      : refuse('unknown fact', `${where}.found`, `Expected the id of a find, got "${payload.found}".`, remedy),
  ];
};

export const struckRight: Check<'struck'> = (payload, { facts, state, where }) => {
  const field = `${where}.fact`;
  const fact = facts.find(one => one.id === payload.fact);
  if (!fact)
    return [
      refuse(
        'unknown fact',
        field,
        `Expected the id of a fact of this kart, got "${payload.fact}".`,
        'List them with `facts`.',
      ),
    ];
  const before = state.struck[fact.id];
  if (before)
    return [
      refuse(
        'already struck',
        field,
        `Expected a fact that counts, and ${fact.id} was struck: ${before.why.replace(/[.]$/, '')}.`,
        'Nothing is left to do; to let it count again, strike the strike.',
      ),
    ];
  return onlyFileLeft(fact.id, facts, state.struck) ? [keepsFile(field)] : [];
};

/** What is taken out must be there: nothing is promised about facts nobody has seen. */
export const redactedRight: Check<'redacted'> = (payload, { facts, where }) =>
  payload.facts.flatMap(({ fact }, i) =>
    facts.some(one => one.id === fact)
      ? []
      : [
          refuse(
            'unknown fact',
            `${where}.facts[${i}].fact`,
            `Expected the id of a fact of this kart, got "${fact}".`,
            'Use `forget`, which finds them.',
          ),
        ],
  );

const onlyFileLeft = (id: string, facts: Context['facts'], struck: Context['state']['struck']): boolean => {
  const filed = facts.filter(fact => fact.kind === 'kart filed' && !struck[fact.id]);
  return filed.length === 1 && filed[0]?.id === id;
};

const keepsFile = (field: string): Problem =>
  refuse(
    'kart file',
    field,
    'Expected a kart file to stay in force, and this fact holds the only one.',
    'File the right kart file first; the newest is the one in force.',
  );
