/** The question about the rear track with its sides told apart, or everything that stands against doing so. */
import type { Side } from './axle-stack.ts';
import type { Input } from './rear-track-input.ts';
import type { InputProblem, Uncertain } from './subject.ts';

export const SIDES = ['left', 'right'] as const;
export type Both<T> = { readonly left: T; readonly right: T };
/** A length and how many times it stands in the width: 2 where one reading serves both sides. */
export type Part = { readonly of: Uncertain; readonly times: number };

export type Stack = {
  readonly sides: Both<Side>;
  readonly parts: readonly Part[]; // what the width is made of, without the gaps
  readonly gaps?: Both<number> & { readonly parts: readonly Part[] };
  readonly beyond?: Both<number>; // axle end beyond the bearing face
};

export function stackOf(input: Input): { readonly stack: Stack } | { readonly problems: readonly InputProblem[] } {
  const hub = pair(input, 'hub length');
  const outboard = pair(input, 'tyre outboard');
  const gap = pair(input, 'gap');
  const problems = [
    ...signs(input),
    ...axleProblems(input),
    ...budgetProblems(input),
    ...[hub, outboard].flatMap(p => (Array.isArray(p) ? p : [])),
    ...(Array.isArray(gap) && (input.gap ?? input['gap left'] ?? input['gap right']) !== undefined ? gap : []),
  ];
  if (
    !input['overall rear width'] &&
    !input['measured width'] &&
    !input.gap &&
    !input['gap left'] &&
    !input['gap right']
  )
    problems.push({
      path: 'overall rear width',
      expected: 'a wanted width, a measured width, or gaps',
      got: 'none of them',
      remedy: 'add "overall rear width" to get the gaps, or "gap" to get the width',
    });
  if (problems.length > 0 || Array.isArray(hub) || Array.isArray(outboard)) return { problems };
  const faces = input['bearing faces'];
  const bearing = input['bearing face left']?.si ?? faces.si / 2;
  const axle = input['axle length']?.si;
  const beyond = input['axle beyond bearing left']?.si ?? (axle ?? 0) / 2 - bearing;
  return {
    stack: {
      sides: {
        left: { bearing, hub: hub.left.si, outboard: outboard.left.si },
        right: { bearing: faces.si - bearing, hub: hub.right.si, outboard: outboard.right.si },
      },
      parts: [{ of: faces, times: 1 }, ...hub.parts, ...outboard.parts],
      ...(Array.isArray(gap) ? {} : { gaps: { left: gap.left.si, right: gap.right.si, parts: gap.parts } }),
      ...(axle === undefined ? {} : { beyond: { left: beyond, right: axle - faces.si - beyond } }),
    },
  };
}

/** Left and right of a length: one that serves both, or one each. */
function pair(
  input: Input,
  name: 'hub length' | 'tyre outboard' | 'gap',
): (Both<Uncertain> & { readonly parts: readonly Part[] }) | InputProblem[] {
  const both = input[name];
  const left = input[`${name} left`];
  const right = input[`${name} right`];
  if (both && (left || right))
    return [
      wrong(
        name,
        'one for both sides, or one each',
        'both ways',
        `take out "${name}" or "${name} left" and "${name} right"`,
      ),
    ];
  if (both) return { left: both, right: both, parts: [{ of: both, times: 2 }] };
  if (left && right)
    return {
      left,
      right,
      parts: [
        { of: left, times: 1 },
        { of: right, times: 1 },
      ],
    };
  const absent = left ? `${name} right` : right ? `${name} left` : name;
  return [wrong(absent, 'a length with its unit', 'nothing', `add "${absent}"`)];
}

const MAY_BE_ZERO = ['gap', 'gap left', 'gap right', 'tape scale', 'tape reading', 'spread', 'temperature band'];

function signs(input: Input): InputProblem[] {
  return Object.entries(input).flatMap(([path, measure]) => {
    if (measure === undefined || typeof measure === 'string') return [];
    const zero = MAY_BE_ZERO.includes(path);
    if (zero ? measure.si >= 0 : measure.si > 0) return [];
    return [
      wrong(
        path,
        zero ? '0 or more' : 'more than 0',
        measure.text,
        'measure again and write the length without a sign',
      ),
    ];
  });
}

function axleProblems(input: Input): InputProblem[] {
  const faces = input['bearing faces'];
  const left = input['bearing face left'];
  const axle = input['axle length'];
  const end = input['axle beyond bearing left'];
  const found: InputProblem[] = [];
  if (left && left.si >= faces.si)
    found.push(
      wrong(
        'bearing face left',
        `less than bearing faces, ${faces.text}`,
        left.text,
        'measure from the middle of the kart to the left bearing face',
      ),
    );
  if (axle && axle.si <= faces.si + (end?.si ?? 0))
    found.push(
      wrong(
        'axle length',
        `more than bearing faces${end ? ' and the left end together' : `, ${faces.text}`}`,
        axle.text,
        'measure the axle from end to end',
      ),
    );
  if (end && !axle)
    found.push(
      wrong('axle length', 'the axle length beside "axle beyond bearing left"', 'nothing', 'add "axle length"'),
    );
  return found;
}

function budgetProblems({ spread, readings, confidence }: Input): InputProblem[] {
  const found: InputProblem[] = [];
  if (!spread !== !readings)
    found.push(
      wrong(
        spread ? 'readings' : 'spread',
        '"spread" and "readings" together',
        'one of the two',
        'give both, or neither',
      ),
    );
  if (readings && !(Number.isInteger(readings.si) && readings.si >= 2))
    found.push(
      wrong('readings', 'a whole number from 2', readings.text, 'count the readings the spread was worked out from'),
    );
  if (confidence && !(confidence.si >= 0.5 && confidence.si < 1))
    found.push(wrong('confidence', 'from 50 % to below 100 %', confidence.text, 'write for example "95 %"'));
  return found;
}

const wrong = (path: string, expected: string, got: string, remedy: string): InputProblem => ({
  path,
  expected,
  got,
  remedy,
});
