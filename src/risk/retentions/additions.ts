/** What can be added to a joint as its second retention. */
import type { Joint } from '../../kart/index.ts';
import type { Catalogue, Retention } from './catalogue.ts';

export type Addition = {
  readonly retention: Retention;
  readonly money: number; // in the owner's own, for all pieces of the joint
  readonly minutes: number;
};

/** Cheapest in minutes first. What it needs to be possible stands in `retention.needs`: a person looks. */
export const additionsFor = (joint: Joint, { retentions }: Catalogue): readonly Addition[] =>
  retentions
    .filter(({ fits }) => fits?.includes(joint.kind))
    .map(retention => ({
      retention,
      money: (retention.money ?? 0) * joint.count,
      minutes: (retention.minutes ?? 0) * joint.count,
    }))
    .sort((a, b) => a.minutes - b.minutes || a.money - b.money);
