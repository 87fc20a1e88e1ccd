/** What another kart file does to a kart: what is on it, what is looked at, what carries its functions, the plan and its fitness. */
import { type Fact, fold, type State } from '../book/index.ts';
import { functionsNeeding, type Item, type JointId, type Kart, type PartId } from '../kart/index.ts';
import { fitness, type Reason } from '../risk/index.ts';
import { eventOf, given } from './asking.ts';
import { planOf } from './plan.ts';

export type PartGone = {
  readonly part: PartId;
  /** Something of it was looked at for safety. */
  readonly safety: boolean;
  readonly carried: readonly string[]; // functions, the gravest first
};
export type FunctionHit = {
  readonly name: string;
  readonly hazard: string | null;
  readonly severity: number;
  /** `gone`: nothing of this kart carries it any more, so what would fail it is not known. */
  readonly is: 'gone' | 'less';
  readonly without: readonly PartId[];
};
export type Was<T> = { readonly before: T; readonly after: T };

export type KartChange = {
  readonly parts: { readonly added: readonly PartId[]; readonly gone: readonly PartGone[] };
  readonly items: { readonly added: readonly Item[]; readonly gone: readonly Item[] };
  readonly seconds: readonly ({ readonly joint: JointId } & Was<string | null>)[];
  readonly dimensions: readonly ({ readonly name: string } & Was<string | null>)[];
  readonly functions: readonly FunctionHit[];
  /** Reasons against running, or not to know, that are gone with what they were about. */
  readonly reasonsGone: readonly string[];
  readonly verdict: Was<'fit' | 'not fit' | 'not known'>;
  readonly plan: Was<{ readonly steps: number; readonly minutes: number }>;
  /** Anything else of the file that the kart shows by nothing above: a torque, a price, minutes. */
  readonly isOther: boolean;
};

/** @param facts of the kart @param now RFC 3339, UTC */
export function kartChange(
  before: Kart,
  after: Kart,
  { facts, now }: { readonly facts: readonly Fact[]; readonly now: string },
): KartChange {
  const state = fold(facts);
  const [was, is] = [before, after].map(kart => standing(kart, state, facts, now)) as [Stands, Stands];
  const seconds = both(before.joints, after.joints).flatMap(([joint, one, other]) =>
    one && other && one.second !== other.second
      ? [{ joint, before: one.second ?? null, after: other.second ?? null }]
      : [],
  );
  const dimensions = both(before.dimensions, after.dimensions).flatMap(([name, one, other]) =>
    one?.text === other?.text ? [] : [{ name, before: one?.text ?? null, after: other?.text ?? null }],
  );
  return {
    parts: {
      added: Object.keys(after.parts).filter(part => !Object.hasOwn(before.parts, part)),
      gone: Object.keys(before.parts).flatMap(part =>
        Object.hasOwn(after.parts, part)
          ? []
          : [{ part, safety: isSafety(before, part), carried: functionsNeeding(before, part).map(({ name }) => name) }],
      ),
    },
    items: { added: lacking(before, after), gone: lacking(after, before) },
    seconds,
    dimensions,
    functions: hits(before, after),
    reasonsGone: was.reasons
      .filter(reason => !is.reasons.some(({ on, what }) => on === reason.on && what === reason.what))
      .map(({ text }) => text),
    verdict: { before: was.verdict, after: is.verdict },
    plan: { before: was.plan, after: is.plan },
    isOther: JSON.stringify(before) !== JSON.stringify(after),
  };
}

type Stands = {
  readonly verdict: KartChange['verdict']['before'];
  readonly reasons: readonly Reason[];
  readonly plan: { readonly steps: number; readonly minutes: number };
};

function standing(kart: Kart, state: State, facts: readonly Fact[], now: string): Stands {
  const fit = fitness(kart, state, { now, ...given({ event: eventOf(state, now, undefined) }) });
  const plan = planOf({ kart, state, now }, facts, {});
  const left = plan.steps.filter(step => step.state !== 'done');
  return {
    verdict: fit.verdict,
    reasons: [...fit.against, ...fit.unknown],
    plan: { steps: left.length, minutes: plan.minutes },
  };
}

const lacking = (kart: Kart, than: Kart): readonly Item[] =>
  Object.values(than.items).filter(({ id }) => !Object.hasOwn(kart.items, id));

const isSafety = (kart: Kart, part: PartId): boolean =>
  Object.values(kart.items).some(item => item.part === part && item.grade === 'safety');

function hits(before: Kart, after: Kart): readonly FunctionHit[] {
  const gone = Object.keys(before.parts).filter(part => !Object.hasOwn(after.parts, part));
  const carriers = new Map<string, PartId[]>();
  for (const part of gone)
    for (const { name } of functionsNeeding(before, part)) carriers.set(name, [...(carriers.get(name) ?? []), part]);
  return Object.values(before.functions)
    .flatMap(({ name, hazard, severity }): readonly FunctionHit[] => {
      const is = Object.hasOwn(after.functions, name) ? 'less' : 'gone';
      const without = carriers.get(name) ?? [];
      return is === 'less' && without.length === 0 ? [] : [{ name, hazard: hazard ?? null, severity, is, without }];
    })
    .sort((a, b) => a.severity - b.severity);
}

/** Every key of either, with what stands there. */
const both = <T>(one: Readonly<Record<string, T>>, other: Readonly<Record<string, T>>) =>
  [...new Set([...Object.keys(one), ...Object.keys(other)])].map(key => [key, own(one, key), own(other, key)] as const);
const own = <T>(record: Readonly<Record<string, T>>, key: string): T | undefined =>
  Object.hasOwn(record, key) ? record[key] : undefined;
