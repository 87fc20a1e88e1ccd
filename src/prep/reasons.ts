/** Why an item matters on this very kart, from its own dimensions; silent where a number it needs is not known. */
import type { Item, Joint, Kart, Reason } from '../kart/index.ts';
import { isThread, readThread, seatReason } from '../numbers/index.ts';

/** The `why` of an item's step: what made it due, and the number that says why it matters. */
export const whyWith = (kart: Kart, item: Item, why: string): string => {
  const reason = item.reason && REASONS[item.reason](kart, item);
  return reason === undefined ? why : `${why} ${reason}`.trim();
};

const REASONS: Readonly<Record<Reason, (kart: Kart, item: Item) => string | undefined>> = {
  'hub-hold': (kart, item) => {
    const part = kart.parts[item.part];
    const clamps = (part?.joints ?? []).flatMap(id => kart.joints[id] ?? []).filter(isClamp);
    const [joint, another] = clamps;
    if (joint === undefined || another !== undefined) return undefined; // which of two holds it, nobody said
    const thread = joint.thread === undefined ? undefined : readThread(joint.thread);
    return seatReason({
      axleDiameter: part?.fits.shaft ?? kart.dimensions['axle diameter'],
      mass: kart.dimensions['mass with driver'] ?? kart.rules?.limits.mass?.min,
      bolts: joint.count,
      thread: thread && isThread(thread) ? thread.diameter : undefined,
      torque: joint.torque?.min,
    });
  },
};

const isClamp = (joint: Joint): boolean => joint.kind === 'clamp bolt';
