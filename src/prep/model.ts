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
  readonly cause: Cause;
  /** Ids of the facts the sentence rests on. */
  readonly facts: readonly string[];
  /** It holds today, but would lapse during the next event's expected running. */
  readonly ahead: boolean;
};

export type StepAction = WorkAction | 'take-off' | 'refit' | 'second-look' | 'posture';

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
  /** For a refit: another part goes on than came off. */
  readonly fresh: boolean;
};

export type LeftOut = {
  readonly item: ItemId;
  readonly title: string;
  readonly grade: Grade;
  readonly minutes: number; // what it would add to this plan
  readonly consequence: string;
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
  readonly minutes: number; // of the steps still to do
  /** No plan for these jobs can take less; the plan is at most `minutes - bound` from the best. */
  readonly bound: number;
  readonly window: number | null;
  /** Minutes by which the safety work alone exceeds the window; null when it fits or no window was given. */
  readonly safetyShortBy: number | null;
  readonly leftOut: readonly LeftOut[];
  readonly whileOpen: readonly WhileOpen[];
  readonly steps: readonly Step[];
};
