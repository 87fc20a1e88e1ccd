/** The chain worked out in numbers, before it is put into figures and words. */
import { type ChainWear, chainPull, chainSpeed, chainWear, moveForSlack, ownPull, ripple, SLACK } from './condition.ts';
import type { Input } from './input.ts';
import { chainLinks, type Links, type Round, wrapOf } from './length.ts';
import { CHAIN_SIZES, type ChainSize } from './sizes.ts';

export type Worked = {
  readonly input: Input;
  readonly size: ChainSize;
  readonly round: Round;
  readonly ripple: number; // of the front sprocket [1]
  readonly run?: {
    readonly exact: number; // links, not rounded
    readonly choices: readonly Links[];
    readonly wrap: number; // of the smaller sprocket [rad]
    readonly cut?: number; // links to take out of the chain at hand; below 0 it is too short
  };
  readonly wear?: ChainWear;
  readonly slack?: { readonly verdict: 'tight' | 'slack' | 'right' | 'not known'; readonly move?: number };
  readonly pull?: { readonly speed: number; readonly drive: number; readonly own?: number };
};

/** Where the slack is set to: the middle of its band [m]. */
export const SLACK_AIM = (SLACK.least + SLACK.most) / 2;

export function work(input: Input): Worked {
  const size = CHAIN_SIZES[input.chain];
  const round = { front: input['front sprocket'].si, rear: input['rear sprocket'].si };
  const run = runOf(input, round, size.pitch);
  const wear = wearOf(input, size.pitch, round.rear);
  const slack = slackOf(input);
  const pull = pullOf(input, size.pitch, round.front);
  return {
    input,
    size,
    round,
    ripple: ripple(round.front),
    ...(run && { run }),
    ...(wear && { wear }),
    ...(slack && { slack }),
    ...(pull && { pull }),
  };
}

function runOf(input: Input, round: Round, pitch: number): Worked['run'] {
  const { 'centre distance': centre, 'room away': away, 'room toward': toward, 'links now': now } = input;
  if (!centre) return undefined;
  const slot = away && toward ? { slot: { away: away.si, toward: toward.si } } : {};
  const found = chainLinks({ round, pitch, centre: centre.si, ...slot });
  const [best] = found.choices;
  return {
    ...found,
    wrap: wrapOf(round, pitch, centre.si),
    ...(now && best && { cut: now.si - best.links }),
  };
}

function wearOf(input: Input, pitch: number, largest: number): ChainWear | undefined {
  const { 'measured length': read, 'pitches measured': count } = input;
  if (!read || !count) return undefined;
  const half = read.half === undefined ? {} : { half: read.half };
  return chainWear({ length: read.si, ...half, pitches: count.si, pitch, largest });
}

function slackOf({ slack, 'centre distance': centre }: Input): Worked['slack'] {
  if (!slack) return undefined;
  const verdict = slack.si < SLACK.least ? 'tight' : slack.si > SLACK.most ? 'slack' : 'right';
  return { verdict, ...(centre && verdict !== 'right' && { move: moveForSlack(slack.si, SLACK_AIM, centre.si) }) };
}

function pullOf(input: Input, pitch: number, teeth: number): Worked['pull'] {
  const { power, 'front sprocket speed': turning, 'chain mass': mass, 'links now': links } = input;
  if (!power || !turning) return undefined;
  const speed = chainSpeed({ rotation: turning.si, teeth, pitch });
  return {
    speed,
    drive: chainPull(power.si, speed),
    ...(mass && links && { own: ownPull(mass.si / (links.si * pitch), speed) }),
  };
}
