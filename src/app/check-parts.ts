/** Parts come off when their way in is off, and go on the same way back. */
import type { Part } from '../kart/index.ts';
import type { Check, Context } from './context.ts';
import { type Problem, refuse } from './problem.ts';
import { suggestion } from './words.ts';

export function partKnown(id: string, { kart, where }: Context): readonly Problem[] {
  if (kart.parts[id]) return [];
  const known = Object.keys(kart.parts);
  return [
    refuse(
      'unknown part',
      `${where}.part`,
      `Expected a part of kart "${kart.name}", got "${id}".`,
      `Use a name from its kart file.${suggestion(id, known)}`,
    ),
  ];
}

const isOn = (id: string, { state }: Context): boolean => state.parts[id]?.on !== false;

/** The shortest list of parts that are on and in the way, or undefined when one way in is clear. */
function inTheWay(part: Part, context: Context): readonly string[] | undefined {
  const ways = part.behind.map(way => way.filter(id => isOn(id, context)));
  if (ways.length === 0 || ways.some(way => way.length === 0)) return undefined;
  return ways.reduce((least, way) => (way.length < least.length ? way : least));
}

function blocked(part: Part, doing: string, context: Context): readonly Problem[] {
  const way = inTheWay(part, context);
  if (!way) return [];
  return [
    refuse(
      'way in still on',
      `${context.where}.part`,
      `Expected ${part.behind.length > 1 ? 'one way in to be clear' : 'what is in the way to be off'} before ${part.id} ${doing}, and on the kart: ${way.join(', ')}.`,
      `Record first that it came off: ${way.join(', ')}; or correct \`behind\` in the kart file if ${part.id} comes off without.`,
    ),
  ];
}

const BEGINNINGS: ReadonlySet<string> = new Set(['kart filed', 'event', 'fitted', 'note', 'struck']);
/** Nothing has been done to the kart yet, nor has it run. */
const isBeginning = ({ kind }: { readonly kind: string }): boolean => BEGINNINGS.has(kind);

export const fittedRight: Check<'fitted'> = (payload, context) => {
  const part = context.kart.parts[payload.part];
  if (!part) return partKnown(payload.part, context);
  // What cannot come off (a helmet, a bonded part) can still be replaced by another.
  if (!part.removable && payload.fresh === true) return [];
  // What was new before this book began is said with the hours it has run since.
  if (payload.fresh === true && payload.carriedMinutes !== undefined && context.facts.every(isBeginning)) return [];
  if (isOn(part.id, context))
    return [
      refuse(
        'already on',
        `${context.where}.part`,
        `Expected a part that is off, and ${part.id} is on the kart.`,
        'Record first that it was taken off, or strike the fact that says it is on.',
      ),
    ];
  return blocked(part, 'goes on', context);
};

export const offRight: Check<'taken off'> = (payload, context) => {
  const part = context.kart.parts[payload.part];
  if (!part) return partKnown(payload.part, context);
  if (!part.removable)
    return [
      refuse(
        'not removable',
        `${context.where}.part`,
        `Expected a part that can come off, and ${part.id} cannot by its kart file.`,
        'Name the part that came off, or set `removable: true` for its kind.',
      ),
    ];
  if (!isOn(part.id, context))
    return [
      refuse(
        'already off',
        `${context.where}.part`,
        `Expected a part that is on, and ${part.id} is off since ${context.state.parts[part.id]?.off?.at ?? 'before'}.`,
        'Record that it was fitted, or strike the fact that says it is off.',
      ),
    ];
  return blocked(part, 'comes off', context);
};

export const movedRight: Check<'moved'> = (payload, context) => {
  const part = context.kart.parts[payload.part];
  if (!part) return partKnown(payload.part, context);
  if (!isOn(part.id, context)) return [];
  return [
    refuse(
      'way in still on',
      `${context.where}.part`,
      `Expected a part that is off before it moves to another kart, and ${part.id} is on.`,
      'Record first that it was taken off.',
    ),
  ];
};
