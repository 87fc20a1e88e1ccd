/** Threads and class marks of joints: only those that exist; and a torque worked out where nobody gave one. */
import {
  isJointTorque,
  isOtherMark,
  isPipeThread,
  isStrength,
  isThread,
  jointTorque,
  readThread,
  strengthOf,
  type Thread,
} from '../numbers/index.ts';
import type { Measure } from '../quantity/index.ts';
import type { Joint } from './model.ts';
import type { Place, Report } from './problem.ts';
import { show } from './problem.ts';
import type { JointFile } from './shapes.ts';
import { locate } from './source.ts';

/** A bolt, screw or stud is stretched by its torque; a nut, a set screw or a bleed screw is not. */
const STRETCHED = /\b(?:bolt|screw|stud)s?\b/;
const NOT_STRETCHED = /\b(?:nuts?|set screws?|bleed screws?)\b/;
const isStretched = (kind: string | undefined): boolean =>
  kind !== undefined && STRETCHED.test(kind) && !NOT_STRETCHED.test(kind);

/** Reports a thread that does not exist and a class mark that none of its kind has, with the nearest that does. */
export function examineFastener(file: Partial<JointFile>, place: Place, report: Report): void {
  const { thread: marking, class: mark, kind } = file;
  const thread = marking === undefined || isPipeThread(marking) ? undefined : readThread(marking);
  if (thread !== undefined && !isThread(thread))
    report(locate(file, place, ['thread']), {
      expected: thread.expected,
      got: show(marking),
      remedy: thread.remedy,
    });
  if (mark === undefined || (!isStretched(kind) && isOtherMark(mark))) return;
  const strength = strengthOf(mark, seriesOf(thread !== undefined && isThread(thread) ? thread : undefined, mark));
  if (!isStrength(strength))
    report(locate(file, place, ['class']), {
      expected: strength.expected,
      got: show(mark),
      remedy: `${strength.remedy}, and keep it in quotes`,
    });
}

/** Without a thread that can be read, the mark itself tells metric from inch. */
const seriesOf = (thread: Thread | undefined, mark: string): Pick<Thread, 'series' | 'diameter'> =>
  thread ?? { series: /gr/i.test(mark) ? 'unified' : 'metric', diameter: 0.008 };

/**
 * The torque of a bolt whose file names thread and class but no torque: a range that is marked as computed.
 * Undefined for whatever is not stretched by its torque, and where thread or class are not known.
 */
export function computedTorque(file: Partial<JointFile>): Joint['torque'] {
  const { thread, class: propertyClass, kind } = file;
  if (!isStretched(kind) || thread === undefined || propertyClass === undefined || file.torque !== undefined)
    return undefined;
  const range = jointTorque({ thread, propertyClass, lockingNut: /locking nut/.test(file.retention ?? '') });
  if (!isJointTorque(range)) return undefined;
  // To the tenth of N·m that a wrench shows, and never wider than it was computed.
  return {
    min: shown(Math.ceil(range.min * 10 - 1e-9) / 10),
    max: shown(Math.floor(range.max * 10 + 1e-9) / 10),
    source: range.source,
    computed: range.notes,
  };
}

const shown = (torque: number): Measure => ({
  si: torque, // N·m
  unit: 'N·m',
  text: `${torque.toFixed(1)} N·m`,
  dimension: 'torque',
});
