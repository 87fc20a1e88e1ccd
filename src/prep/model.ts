/** What is due, and the plan to do it in: the shapes every face shows. Plain JSON. */
import type { FactKind } from '../book/index.ts';
import type { Grade, ItemId, JointId, PartId, Posture, System, WorkAction } from '../kart/index.ts';
import type { Cause } from '../life/index.ts';

export type Due = {
  readonly item: ItemId;
  readonly title: string;
  readonly part: PartId;
  readonly system: System;
  readonly grade: Grade;
  /** One sentence, from the record. */
  readonly why: string;
  readonly cause: Cause | 'found';
  /** Ids of the facts the sentence rests on. */
  readonly facts: readonly string[];
  /** It holds today, but would lapse during the next event's expected running. */
  readonly ahead: boolean;
  /** Another one goes on in place of the part. */
  readonly renews?: true;
  /** After an impact: its place on the way of the blow into the frame, 1 the wheel. */
  readonly path?: number;
};

export type StepAction = WorkAction | 'mend' | 'take-off' | 'refit' | 'second-look' | 'posture';

/** An amount as shown: SI value, the unit it is shown in, and the text. */
export type Shown = { readonly si: number; readonly unit: string; readonly text: string };

export type Step = {
  readonly n: number; // 1, 2, 3 ...
  /** The same step in the next plan has the same key: 'take-off rear hub left', 'second-look rear hub left/pinch bolts'. */
  readonly key: string;
  readonly action: StepAction;
  /** What the hand is on: a part, a joint, or 'kart' for a posture. */
  readonly on: string;
  readonly title: string;
  readonly system: System;
  readonly item: ItemId | null;
  readonly joint: JointId | null;
  readonly part: PartId | null;
  readonly grade: Grade;
  readonly why: string;
  readonly how: string;
  readonly accept: string;
  readonly source: string;
  readonly minutes: number;
  readonly posture: Posture | 'any';
  readonly after: readonly number[]; // numbers of the steps that must be done first
  readonly target: Shown | null;
  readonly tolerance: { readonly min: Shown | null; readonly max: Shown | null; readonly text: string } | null;
  readonly unit: string | null; // unit a reading is asked in; null when none is asked
  readonly tools: readonly string[];
  readonly consumables: readonly string[];
  readonly caution: string | null;
  /** This item also owes a second look, which is a step of its own. */
  readonly secondLook: boolean;
  readonly state: 'done' | 'ready' | 'waiting';
  /** The kind of fact that doing it writes. */
  readonly writes: FactKind;
  /** The find that doing it mends, by its fact; how it was mended is asked for. */
  readonly mends: string | null;
  /** For a refit: another part goes on than came off. */
  readonly fresh: boolean;
  /** When, in minutes of work from the first hand on the kart; null once done. */
  readonly start: number | null;
  readonly end: number | null;
  /** Who does it, counted from 1; more than one where it takes more. */
  readonly people: readonly number[];
  /** It takes more people than there are: somebody must be asked to help. */
  readonly helpers: number;
  /** The working time it falls into, counted from 1; null without any, and beyond the last. */
  readonly window: number | null;
  /** Minutes that closing up takes one person after it, with nothing else begun any more; null once done. */
  readonly closing: number | null;
  /** How its minutes came about; null where nobody timed such work yet. */
  readonly timing: { readonly typical: number; readonly slow: number; readonly timings: number } | null;
  readonly whyNow: readonly WhyNow[];
};

/**
 * Why a row stands where it stands. `minutes`: how much longer the work would take elsewhere, found by planning it so with
 * the same hands: 0 costs nothing; null where the reason makes no difference to time but to what holds. Each row but a turn of
 * the kart has the minutes it costs as late as the others allow, as `posture` or as `later`.
 */
export type WhyNow = {
  readonly kind:
    | 'waits for'
    | 'open now'
    | 'posture'
    | 'person free'
    | 'must be last'
    | 'second look'
    | 'closing'
    | 'order'
    | 'later';
  readonly say: string;
  readonly steps: readonly number[];
  readonly minutes: number | null;
};

export type LeftOut = {
  readonly item: ItemId;
  readonly title: string;
  readonly grade: Grade;
  readonly minutes: number; // what it would add to this plan
  readonly consequence: string;
  /** The least time, the last of the given ones made longer, of which the plan takes it; null till that was worked out. */
  readonly needs: number | null;
};

/** A time in which somebody works on the kart. */
export type PlanWindow = { readonly minutes: number; readonly from?: string };
export type WindowShown = PlanWindow & {
  readonly n: number;
  readonly used: number; // minutes with a hand on the kart
};

export type WhileOpen = {
  readonly item: ItemId;
  readonly title: string;
  readonly grade: Grade;
  readonly minutes: number; // of the item itself
  readonly saves: number; // minutes of taking off and refitting that doing it now saves
  readonly why: string;
};

export type Plan = {
  readonly kart: string;
  readonly event: string | null;
  readonly people: number;
  readonly minutes: number; // of the steps still to do, one after the other
  readonly span: number; // from the first hand on the kart to the last, time between windows left out
  /** No plan for these jobs can have a shorter span; this one is at most `span - bound` from the best. */
  readonly bound: number;
  readonly boundBy: string; // what says so
  readonly window: number | null; // all windows together
  readonly windows: readonly WindowShown[];
  /** Minutes that are missing for all safety work; null when it fits or no window was given. Above 0 it is not fit to run. */
  readonly safetyShortBy: number | null;
  /** So many people would do all safety work in the time there is; null where three would not, or nothing is missing. */
  readonly safetyFitsWith: number | null;
  /** Whatever lies open by then can still be closed up in time: minutes of the span; null without a time that ends. */
  readonly closeBy: number | null;
  readonly leftOut: readonly LeftOut[];
  /** Minutes to which the `needs` of what is left out are found: with so much less it does not enter. Null without any. */
  readonly needsStep: number | null;
  readonly whileOpen: readonly WhileOpen[];
  readonly steps: readonly Step[];
};
