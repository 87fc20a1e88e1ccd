/** How a joint is held, as the kart file says and the record shows it. */
import type { State } from '../../book/index.ts';
import type { Joint, Kart } from '../../kart/index.ts';
import { openedBy, standing } from '../../life/index.ts';
import { latent, leftOutToo } from '../fault-tree/index.ts';
import { type Catalogue, namedBy, type Retention, shareOf } from '../retentions/index.ts';
import { type Look, lookedAt } from './hands.ts';
import { likelyOf } from './likely.ts';
import type { Likely } from './model.ts';
import type { RetentionRecord, Role } from './retention-record.ts';

export type Held = {
  readonly text: string; // as the kart file says it
  readonly likely: Likely | null;
  readonly unknown: string | null;
  readonly own: boolean; // more from the owner's record than from the guess
};

export type Second = Held & {
  /** Share of the less likely one's failures that both have in common. */
  readonly share: number;
  readonly looked: string; // 'looked at twice, by two people'
  readonly latent: boolean; // nobody looked since: it may be gone
};

export type JointLook = {
  readonly joint: Joint;
  readonly first: Held;
  readonly second: Second | undefined;
  readonly hands: Look;
  /** What the kart file names as second and does not count, and why. */
  readonly notCounted: string | undefined;
  /** Its check has failed, or it is open: a job already, and no number before that is done. */
  readonly inWork: boolean;
};

export type LookAt = {
  readonly now: string;
  readonly event?: string;
  readonly retentions: Catalogue;
  readonly record: RetentionRecord;
};

export function lookAt(kart: Kart, state: State, joint: Joint, at: LookAt): JointLook {
  const { retentions } = at;
  const against = standsAgainst(kart, state, joint, at);
  const named = namedBy(joint.retention, 'first', retentions);
  const first: Held =
    against !== undefined
      ? unheld(joint.retention, against)
      : named.is === 'holds'
        ? held(joint.retention, named.retention, 'first', at)
        : unheld(joint.retention, `Nobody guessed how often "${joint.retention}" lets go.`);
  const hands = lookedAt(kart, state, joint, at);
  const base = { joint, first, hands, second: undefined, notCounted: undefined, inWork: against !== undefined };
  if (joint.second === undefined) return base;
  if (against !== undefined) return { ...base, notCounted: `${joint.second}: ${against}` };
  const other = namedBy(joint.second, 'second', retentions);
  if (other.is !== 'holds') return { ...base, notCounted: `${joint.second}: ${WHY_NOT[other.is]}` };
  const own = named.is === 'holds' ? named.retention : undefined;
  return { ...base, second: secondOf(joint, hands, at, { own, other: other.retention, first }) };
}

const WHY_NOT = {
  sign: 'it shows that something moved, and holds nothing',
  perhaps: 'nobody said whether this kart has it',
  unknown: 'not known as something that holds a joint',
} as const;

const unheld = (text: string, unknown: string): Held => ({ text, likely: null, unknown, own: false });

function held(text: string, retention: Retention, role: Role, { record }: LookAt): Held {
  const known = record(retention, role);
  return known ? { text, unknown: null, ...known } : unheld(text, `Nobody guessed how often "${text}" lets go.`);
}

/** Open, with a fail that no pass has answered, or to have a second retention that is not there yet. */
function standsAgainst(kart: Kart, state: State, joint: Joint, { now }: LookAt): string | undefined {
  const opened = openedBy(kart, state, joint.id);
  if (opened) return `open since ${opened.at.slice(0, 10)}, not made`;
  const item = kart.items[joint.item];
  const found = item && standing(kart, state, item, { now });
  if (found?.cause === 'asked' && state.items[joint.item]?.asked?.second) return found.why.replace(/\.$/, '');
  return found?.cause === 'failed' || found?.cause === 'not possible' ? found.why.replace(/\.$/, '') : undefined;
}

type Pair = { readonly own: Retention | undefined; readonly other: Retention; readonly first: Held };

function secondOf(joint: Joint, look: Look, at: LookAt, of: Pair): Second {
  const { unverified, alike } = at.retentions;
  const fresh = held(joint.second ?? of.other.name, of.other, 'second', at);
  const factor = at.retentions['trusted to a factor of'];
  const likely =
    look.verified || fresh.likely === null
      ? fresh.likely
      : likelyOf(
          {
            mean: latent(unverified.gone, fresh.likely.chance),
            low: latent(unverified.gone / factor, fresh.likely.low),
            high: latent(Math.min(1, unverified.gone * factor), fresh.likely.high),
          },
          `${fresh.likely.basis} Nobody has looked whether it is there.`,
        );
  const least = Math.min(of.first.likely?.chance ?? 1, likely?.chance ?? 1);
  const share = shareOf(leftOutToo(least, look.dependence), of.own?.way === of.other.way ? alike.share : 0);
  return { ...fresh, likely, share, looked: look.says, latent: !look.verified };
}
