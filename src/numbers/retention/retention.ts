/** Retention: sizes and rules of pin, wire, strap, clip and locking nut, and whether a second one fails another way. */

import type { Measure } from '../../quantity/index.ts';
import { isThread, readThread } from '../bolt/index.ts';
import type { Card } from '../card.ts';
import { type Answer, type InputProblem, type Problems, problems, subject } from '../subject.ts';
import { FACTS } from './facts.ts';
import { ASKED, type Input, KEYS, schema } from './input.ts';
import { failsAnotherWay, MEANS, meansOf } from './means.ts';
import { SPLIT_PINS, STRAPS } from './tables.ts';

const card: Card = {
  what: 'What keeps a joint that has been made, and a second means that lets go in another way.',
  equation:
    'pin = largest nominal ≤ hole;  aged strap = 0.5 loop strength;  wire span ≤ 6 in;  second ≠ first in how it lets go',
  symbols: {
    hole: 'diameter of the hole; it is the nominal size of a split pin [m]',
    'loop strength': 'of the closed loop of a new strap, not doubled for its two bands [N]',
    span: 'distance of wire between two heads [m]',
  },
  validity:
    'Split pins 1.6 to 4 mm, double-twist wire 0.020 to 0.060 in, nylon straps 2.5 to 12.7 mm. Aircraft practice where it is quoted. The class rules and the scrutineer decide which means are asked for.',
  sources: [
    'iso-1234',
    'pin-for-bolt',
    'twist-per-inch',
    'lockwire-rules',
    'strap-strength',
    'strap-ageing',
    'ac-43-13-locking',
    'ac-43-13-torque',
    'army-locknut',
    'clip-practice',
  ],
};

export const retention = subject({
  name: 'retention',
  title: 'Retention: split pin, safety wire, strap, clip, locking nut, and the second means',
  card,
  schema,
  example: {
    means: 'split pin',
    thread: 'M8x1.25',
    'hole diameter': '2 mm',
    first: 'castle nut torque',
    second: 'split pin',
  },
  solve,
});

const CAUTION =
  'Caution: wire ends, pins and cut straps are sharp: eye protection on, catch what is cut off, and count it. A clip, pin or strap that came off is replaced, not put back.';

function solve(input: Input): Answer | Problems {
  const against = contradictions(input);
  if (against.length > 0) return problems(...against);
  const facts = input.means && FACTS[input.means](input);
  const practice = MEANS.filter(each => each.name === input.means);
  const pair = together(input);
  return {
    kind: 'answer',
    figures: facts?.figures ?? {},
    say: [...practice.map(each => each.how), ...(facts?.say ?? []), ...pair, CAUTION],
    notes: [
      ...(facts?.notes ?? []),
      ...practice.flatMap(each => (each.renew === 'each time' ? ['New each time it was taken out.'] : [])),
    ],
  };
}

function together({ first, second }: Input): readonly string[] {
  if (first === undefined || second === undefined) return [];
  const answer = failsAnotherWay(first, second);
  if (answer === 'yes')
    return [
      `"${second}" lets go in another way than "${first}": it is a second means. One hand fitting both in one go can still forget both.`,
    ];
  const marks = meansOf(second).filter(each => each.letsGo === undefined);
  if (answer === 'no')
    return [
      `"${second}" is no second means to "${first}": ${marks.length > 0 && marks.length === meansOf(second).length ? 'it shows, but holds nothing' : 'it lets go in the same way, or leaves a choice that does'}. Add a pin, a wire or a strap.`,
    ];
  return [
    `It is not known whether "${second}" lets go in another way than "${first}": name them in words such as ${MEANS.map(each => each.name).join(', ')}.`,
  ];
}

function contradictions(input: Input): readonly InputProblem[] {
  const found: InputProblem[] = [];
  const { means } = input;
  if (means === undefined && (input.first === undefined || input.second === undefined))
    found.push({
      path: 'means',
      expected: `one of ${ASKED.join(', ')}, or "first" with "second"`,
      got: 'nothing',
      remedy: 'say what is fitted',
    });
  const pairs = new Set<string>(['means', 'first', 'second', ...(means ? KEYS[means] : [])]);
  for (const path of Object.keys(input))
    if (!pairs.has(path))
      found.push({
        path,
        expected: means
          ? `a key that belongs to a ${means}${KEYS[means].length > 0 ? `: ${KEYS[means].join(', ')}` : ', which has none'}`
          : 'a key that belongs to "means"',
        got: `"${path}"`,
        remedy: `it belongs to ${ASKED.filter(each => (KEYS[each] as readonly string[]).includes(path)).join(', ')}: take it out, or correct "means"`,
      });
  for (const path of ['hole diameter', 'wire diameter', 'spacing', 'strap width', 'load', 'running torque'] as const) {
    const value = input[path];
    if (value && !(value.si > 0))
      found.push({ path, expected: 'more than 0', got: value.text, remedy: 'write it without a sign' });
  }
  const { heads } = input;
  if (heads && !(Number.isInteger(heads.si) && heads.si >= 1))
    found.push({
      path: 'heads',
      expected: 'a whole number, 1 or more',
      got: heads.text,
      remedy: 'count the heads that are wired',
    });
  const thread = input.thread === undefined ? undefined : readThread(input.thread);
  if (thread && !isThread(thread))
    found.push({ path: 'thread', expected: thread.expected, got: `"${input.thread}"`, remedy: thread.remedy });
  return [...found, ...sizes(input)];
}

function sizes(input: Input): readonly InputProblem[] {
  const found: InputProblem[] = [];
  const hole = input['hole diameter'];
  const wire = input['wire diameter'];
  const width = input['strap width'];
  if (input.means === 'split pin' && hole && hole.si > 0 && hole.si < (SPLIT_PINS[0]?.nominal ?? 0) - 1e-9)
    found.push({
      path: 'hole diameter',
      expected: '1.6 mm or more',
      got: hole.text,
      remedy: 'give the diameter, not the radius; smaller pins are not listed',
    });
  if (input.means === 'split pin' && hole) found.push(...tooWide(hole, input.thread));
  if (hole && wire && wire.si > hole.si)
    found.push({
      path: 'wire diameter',
      expected: `at most the hole, ${hole.text}`,
      got: wire.text,
      remedy: 'exchange the two if they were swapped, or use thinner wire',
    });
  if (width && width.si > 0 && width.si < (STRAPS[0]?.width ?? 0) - 1e-9)
    found.push({
      path: 'strap width',
      expected: '2.5 mm or more',
      got: width.text,
      remedy: 'use a wider strap: nothing narrower is listed',
    });
  return found;
}

/** Beyond this the hole wants a pin that is not listed: the next size of ISO 1234 [m]. */
const NEXT_PIN = 0.005;

/** A hole for a far larger pin, or one that leaves less than half of the bolt (common practice). */
function tooWide(hole: Measure, marking: string | undefined): readonly InputProblem[] {
  const thread = marking === undefined ? undefined : readThread(marking);
  const bolt = thread && isThread(thread) ? thread : undefined;
  const half = bolt !== undefined && hole.si >= bolt.diameter / 2 - 1e-9;
  if (!half && hole.si < NEXT_PIN - 1e-9) return [];
  return [
    {
      path: 'hole diameter',
      expected: half ? `less than half of the bolt, ${bolt.name}` : 'less than 5 mm',
      got: hole.text,
      remedy: half
        ? 'measure the hole again; one drilled out so far weakens the bolt: use a new one'
        : 'measure the hole, not the bolt; larger pins are not listed',
    },
  ];
}
