/** Which second retentions to fit for so much money and so many minutes, on this kart as it stands. */
import type { State } from '../../book/index.ts';
import type { Corner, ItemId, Joint, JointId, Kart, Part, PartId, System } from '../../kart/index.ts';
import { type Analysis, analyse, leftOutToo } from '../fault-tree/index.ts';
import {
  additionsFor,
  type Budget,
  type Choice,
  type ChoiceProblem,
  chooser,
  namedBy,
  pairOf,
  type Retention,
  shareOf,
} from '../retentions/index.ts';
import type { Severity } from '../risk-code.ts';
import { hazardTree, type Looks } from './hazard-tree.ts';
import { fromTo } from './likely.ts';
import { knownOf, looksOf, type WeakLinksAsk } from './weak-links.ts';

/** One second retention for one joint: a job once it is wanted. */
export type Fitting = {
  readonly joint: JointId;
  readonly item: ItemId; // the check of the joint, which becomes due
  readonly part: PartId;
  readonly system: System;
  readonly corner: Corner;
  readonly place: { readonly x: number; readonly y: number };
  readonly retention: string; // as the kart file will name it
  readonly needs: string; // what must be there for it; a person looks
  readonly money: number;
  readonly minutes: number;
  /** Worst severity of a hazard that the joint brings about alone; null where it takes more. */
  readonly singleOf: Severity | null;
};

export type Outcome = {
  readonly fittings: readonly Fitting[];
  readonly money: number;
  readonly minutes: number;
  /** Joints that alone bring about a hazard of that severity, with these fitted; of those something can be added to. */
  readonly singlesLeft: { readonly severity1: number; readonly severity2: number };
  /** From what is known of each hazard; worst severity first. Those that do not change are left out. */
  readonly hazards: readonly {
    readonly function: string;
    readonly severity: Severity;
    readonly from: number;
    readonly to: number;
    readonly words: string;
  }[];
};

export type SecondRetentions = {
  readonly budget: { readonly money: number | null; readonly minutes: number | null };
  readonly chosen: Outcome;
  /** What so many minutes more would fit besides or instead; null where nothing. */
  readonly more: { readonly minutes: number; readonly outcome: Outcome } | null;
  /** The best for each budget of minutes, with the money there is; only where more minutes change something. */
  readonly frontier: readonly Pick<Outcome, 'minutes' | 'money' | 'singlesLeft' | 'hazards'>[];
  readonly candidates: readonly Fitting[];
};

const MORE = 5;
const STEPS = 40;

/** @param budget either left out: as much as it takes. Each 0 or more, else it throws. */
export function secondRetentions(
  kart: Kart,
  state: State,
  ask: WeakLinksAsk,
  budget: { readonly money?: number; readonly minutes?: number } = {},
): SecondRetentions {
  for (const [name, value] of Object.entries(budget))
    if (!(value >= 0)) throw new Error(`secondRetentions: ${name} must be 0 or more, got ${value}`);
  const { money = Number.POSITIVE_INFINITY, minutes = Number.POSITIVE_INFINITY } = budget;
  const asked = problemOf(kart, ask.looks ?? looksOf(kart, state, ask));
  const { within } = chooser(asked.problem);
  const tell = (choice: Choice): Outcome => outcomeOf(asked, choice);
  const best = within({ money, minutes });
  const longer = within({ money, minutes: minutes + MORE });
  const changes = longer.options.join() !== best.options.join();
  return {
    budget: { money: budget.money ?? null, minutes: budget.minutes ?? null },
    chosen: tell(best),
    more: changes ? { minutes: MORE, outcome: tell(longer) } : null,
    frontier: frontierOf(within, money, within({ money, minutes: Number.POSITIVE_INFINITY }).minutes).map(choice => {
      const { minutes: at, money: costs, singlesLeft, hazards } = tell(choice);
      return { minutes: at, money: costs, singlesLeft, hazards };
    }),
    candidates: asked.fittings,
  };
}

function frontierOf(within: (budget: Budget) => Choice, money: number, all: number): readonly Choice[] {
  const step = Math.max(MORE, Math.ceil(all / STEPS / MORE) * MORE);
  const points: Choice[] = [];
  for (let minutes = 0; ; minutes += step) {
    const choice = within({ money, minutes });
    if (choice.options.join() !== points.at(-1)?.options.join()) points.push(choice);
    if (minutes >= all) return points;
  }
}

type AskedHazard = {
  readonly function: string;
  readonly severity: Severity;
  readonly of: ChoiceProblem['hazards'][number];
};
type Asked = {
  readonly problem: ChoiceProblem;
  readonly fittings: readonly Fitting[]; // one for each option
  readonly hazards: readonly AskedHazard[];
};

function problemOf(kart: Kart, looks: Looks): Asked {
  const solved = Object.values(kart.functions).flatMap(fn => {
    const made = hazardTree(kart, fn, looks);
    const analysis = analyse(knownOf(made));
    return analysis.kind === 'analysis' ? [{ fn, made, analysis }] : [];
  });
  const joints = Object.values(kart.joints).filter(joint => isOpenTo(joint, looks, solved));
  const indexOf = new Map(joints.map((joint, n) => [joint.id, n]));
  const hazards = solved.map(({ fn, made, analysis }): AskedHazard => {
    const own = joints.filter(({ id }) => made.events.has(id)).map(({ id }) => id);
    const places = own.map(id => indexOf.get(id) as number);
    const chance = (x: Float64Array): number =>
      analysis.topWith(new Map(own.map((id, n) => [id, x[places[n] as number] as number]))) ?? 0;
    const weight = looks.retentions.weights[fn.severity];
    return { function: fn.name, severity: fn.severity, of: { weight, joints: places, chance } };
  });
  const singleOf = joints.map(({ id }) => worstOf(id, solved));
  const chances = joints.map(joint => looks.joint(joint).first.likely?.chance ?? 0);
  const each = joints.flatMap((joint, n) =>
    additionsFor(joint, looks.retentions).map(({ retention, money, minutes }) => ({
      option: {
        joint: n,
        chance: withSecond(joint, chances[n] as number, retention, looks),
        money,
        minutes,
      },
      fitting: fittingOf(kart.parts[joint.part] as Part, joint, { retention, money, minutes }, singleOf[n] ?? null),
    })),
  );
  return {
    problem: {
      chances,
      singleOf: singleOf.map(severity => severity ?? 0),
      options: each.map(({ option }) => option),
      hazards: hazards.map(({ of }) => of),
    },
    fittings: each.map(({ fitting }) => fitting),
    hazards,
  };
}

type Solved = {
  readonly fn: { readonly severity: Severity };
  readonly made: { events: ReadonlyMap<string, unknown> };
  readonly analysis: Analysis;
};

/** Not in work already, and an event by itself of something that can be lost: with a second that counts it is none. */
const isOpenTo = (joint: Joint, looks: Looks, solved: readonly Solved[]): boolean =>
  !looks.joint(joint).inWork &&
  additionsFor(joint, looks.retentions).length > 0 &&
  solved.some(({ made }) => made.events.has(joint.id));

const worstOf = (joint: JointId, solved: readonly Solved[]): Severity | undefined =>
  solved
    .filter(({ analysis }) => analysis.singlePoints.includes(joint))
    .map(({ fn }) => fn.severity)
    .sort()[0];

/** As it will be when it was fitted and looked at twice by the same person, the least that alone at the bench can be done. */
function withSecond(joint: Joint, first: number, second: Retention, { retentions: catalogue, record }: Looks): number {
  const q = record(second, 'second')?.likely.chance ?? 1;
  const named = namedBy(joint.retention, 'first', catalogue);
  const alike = named.is === 'holds' && named.retention.way === second.way ? catalogue.alike.share : 0;
  const share = shareOf(leftOutToo(Math.min(first, q), catalogue.dependence['same person later']), alike);
  return pairOf(first, q, share).chance;
}

const fittingOf = (
  part: Part,
  joint: Joint,
  of: { readonly retention: Retention; readonly money: number; readonly minutes: number },
  singleOf: Severity | null,
): Fitting => ({
  joint: joint.id,
  item: joint.item,
  part: part.id,
  system: part.system,
  corner: part.corner,
  place: part.place,
  retention: of.retention.name,
  needs: of.retention.needs ?? '',
  money: of.money,
  minutes: of.minutes,
  singleOf,
});

function outcomeOf({ problem, fittings, hazards }: Asked, { options, money, minutes }: Choice): Outcome {
  const x = Float64Array.from(problem.chances);
  const held = new Set<number>();
  for (const place of options) {
    const { joint, chance } = problem.options[place] as ChoiceProblem['options'][number];
    x[joint] = chance;
    held.add(joint);
  }
  const left = (severity: number): number =>
    problem.singleOf.filter((of, joint) => of === severity && !held.has(joint)).length;
  const base = Float64Array.from(problem.chances);
  return {
    fittings: options.map(place => fittings[place] as Fitting),
    money,
    minutes,
    singlesLeft: { severity1: left(1), severity2: left(2) },
    hazards: hazards
      .map(({ function: name, severity, of }) => ({
        function: name,
        severity,
        from: of.chance(base),
        to: of.chance(x),
      }))
      .filter(({ from, to }) => to < from)
      .map(one => ({ ...one, words: fromTo(one.from, one.to) }))
      .sort((a, b) => a.severity - b.severity),
  };
}
