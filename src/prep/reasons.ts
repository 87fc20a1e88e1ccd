/** Why an item matters on this very kart, from its own dimensions; silent where a number it needs is not known. */
import type { Item, Joint, Kart, Reason } from '../kart/index.ts';
import { fixingRule, isThread, readThread, seatReason } from '../numbers/index.ts';
import { formatQuantity } from '../quantity/index.ts';

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
  'ballast-fixing': ({ rules }) => {
    const limits = rules?.limits ?? {};
    const { rule, missing } = fixingRule(limits);
    const own = rules && [...new Set(FIXING.flatMap(name => limits[name]?.source ?? []))].join('; ');
    const held = [
      `${rule.boltsABlock} bolts or more of ${formatQuantity(rule.boltDiameter, 'mm')} or more through each block`,
      `no block over ${formatQuantity(rule.blockMass, 'kg')}`,
      ...(rule.massABolt === undefined ? [] : [`no more than ${formatQuantity(rule.massABolt, 'kg')} a bolt`]),
    ].join(', ');
    const strictest = 'the strictest of five rule books that differ; ask yours';
    const source = !own ? strictest : missing.length === 0 ? own : `${own}; ${missing.join(', ')}: ${strictest}`;
    return `Ballast that comes off hits whoever is behind: ${held} (${source}).`;
  },
};

/** Limits of a rule set that say how ballast is fixed. */
const FIXING = ['ballast bolt diameter', 'ballast bolts a block', 'ballast block mass', 'ballast mass a bolt'];

const isClamp = (joint: Joint): boolean => joint.kind === 'clamp bolt';
