/** What is said of lives and spares: of a kind or part that the kart has, and without contradicting itself. */
import type { Check, Context } from './context.ts';
import { type Problem, refuse } from './problem.ts';
import { suggestion } from './words.ts';

/** Nothing on a kart is known to last longer: a slip of the hand. Common practice. */
const MOST_HOURS = 10_000;

export const expectedRight: Check<'life expected'> = (
  { of, halfHours: half, tenthHours: tenth, interval },
  context,
) => [
  ...kindKnown(of, context),
  ...(half === undefined && tenth === undefined
    ? [
        refuse(
          'wrong shape',
          `${context.where}.halfHours`,
          'Expected the hours by which half are gone, by which 1 in 10 is, or both, got neither.',
          'Give one answer at least; where nobody knows, leave it unknown.',
        ),
      ]
    : []),
  ...Object.entries({ halfHours: half, tenthHours: tenth }).flatMap(([key, hours]) =>
    hours === undefined || hours < MOST_HOURS
      ? []
      : [
          refuse(
            'wrong shape',
            `${context.where}.${key}`,
            `Expected hours of running below ${MOST_HOURS.toLocaleString('en-GB')}, got ${hours}.`,
            'Give hours of running; where it outlasts the kart, leave it unknown.',
          ),
        ],
  ),
  ...(half !== undefined && tenth !== undefined && !(tenth < half)
    ? [
        refuse(
          'runs backwards',
          `${context.where}.tenthHours`,
          `Expected 1 in 10 to be gone before half are, got 1 in 10 by ${tenth} h and half by ${half} h.`,
          'Exchange the two, or leave one out.',
        ),
      ]
    : []),
  ...(interval === true && tenth === undefined
    ? [
        refuse(
          'wrong shape',
          `${context.where}.tenthHours`,
          'Expected the service interval as the hours by which 1 in 10 is gone, got none.',
          'Give tenthHours, or leave interval out.',
        ),
      ]
    : []),
];

export const sparesRight: Check<'spares counted'> = ({ of }, context) => {
  const { kart, where } = context;
  if (kart.parts[of]) return [];
  if (kart.costs?.spares[of]?.alike !== false) return kindKnown(of, context, 'part or kind of part');
  const parts = Object.values(kart.parts).filter(part => part.kind === of);
  return [
    refuse(
      'unknown part',
      `${where}.of`,
      `Expected the part they are for, since the kart file says that of ${of} no two are alike, got the kind.`,
      `Count each by itself: ${parts.map(({ id }) => id).join(', ')}.`,
    ),
  ];
};

function kindKnown(kind: string, { kart, where }: Context, what = 'kind of part'): readonly Problem[] {
  const parts = Object.values(kart.parts);
  const kinds = new Set(parts.map(part => part.kind));
  if (kinds.has(kind)) return [];
  const asPart = kart.parts[kind];
  const known = what === 'kind of part' ? [...kinds] : [...kinds, ...Object.keys(kart.parts)];
  return [
    refuse(
      'unknown part',
      `${where}.of`,
      `Expected a ${what} of kart "${kart.name}", got "${kind}".`,
      asPart
        ? `${kind} is a ${asPart.kind}: say it of that kind.`
        : `Use a kind of its kart file.${suggestion(kind, known)}`,
    ),
  ];
}
