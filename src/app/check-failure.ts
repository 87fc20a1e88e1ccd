/** What failed, and what is to be looked at for it: parts, joints, items and functions of this kart, at an age that can be. */
import { partAge } from '../book/index.ts';
import { itemKnown, jointKnown } from './check-items.ts';
import { partKnown } from './check-parts.ts';
import type { Check, Context } from './context.ts';
import { type Problem, refuse } from './problem.ts';
import { suggestion } from './words.ts';

export const failedRight: Check<'failed'> = (payload, context) => {
  const { kart, where } = context;
  const problems = [...partKnown(payload.part, context)];
  const joint = payload.joint === undefined ? undefined : kart.joints[payload.joint];
  if (payload.joint !== undefined && !joint) problems.push(...jointKnown(payload.joint, context));
  if (joint && joint.part !== payload.part)
    problems.push(
      refuse(
        'unknown joint',
        `${where}.joint`,
        `Expected a joint of ${payload.part}, got "${joint.id}".`,
        `It holds ${joint.part}: name that part, or one of ${kart.parts[payload.part]?.joints.join(', ') || 'no joint'}.`,
      ),
    );
  const known = Object.keys(kart.functions);
  for (const lost of payload.lost ?? [])
    if (!known.includes(lost))
      problems.push(
        refuse(
          'wrong shape',
          `${where}.lost`,
          `Expected functions of kart "${kart.name}", got "${lost}".`,
          `It has: ${known.join(', ')}.${suggestion(lost, known)}`,
        ),
      );
  return [...problems, ...ageCanBe(payload.part, payload.afterMinutes, context)];
};

/** Said twice as old as the record has it, or half: a slip between minutes and hours more often than runs that nobody wrote down. */
function ageCanBe(part: string, said: number | undefined, { state, sure, where }: Context): readonly Problem[] {
  const { minutes } = partAge(state, part);
  if (said === undefined || sure || minutes === 0 || (said >= minutes / 2 && said <= minutes * 2)) return [];
  return [
    refuse(
      'far outside',
      `${where}.afterMinutes`,
      `Expected about the ${hours(minutes)} that the record has for ${part}, got ${hours(said)}.`,
      'Leave it out to take what is on record; if it is so, record the same once more as sure.',
    ),
  ];
}

const hours = (minutes: number): string => `${Number((minutes / 60).toFixed(1))} h`;

export const lookAskedRight: Check<'look asked'> = (payload, context) =>
  payload.items.flatMap(item => itemKnown(item, context));
