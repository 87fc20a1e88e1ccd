/**
 * Work on a kart as a bare problem, for one team that does one thing at a time: parts that come off and go back, jobs,
 * and postures of the kart with the minutes from each to each. Crew and tools are not looked at here.
 */
import type { Access } from './least.ts';

/** The posture of work that fits any. */
export const ANY = 'any';

export type WorkPart = {
  readonly id: string;
  readonly access: Access;
  readonly removeMin: number;
  readonly refitMin: number;
  /** Straight after the refit; counted with it. */
  readonly verifyMin: number;
  readonly posture: string;
};

export type WorkJob = {
  readonly id: string;
  readonly minutes: number;
  readonly posture: string;
  /** 0 safety, 1 reliability, 2 performance, 3 cosmetics. */
  readonly tier: number;
  readonly value: number;
  /** Of a safety job, 1 the gravest. */
  readonly severity?: number | undefined;
  /** One of the lists must be wholly off; none: nothing need be. */
  readonly needsRemoved: Access;
  readonly needsOn: readonly string[];
  /** Jobs to be done before. */
  readonly after: readonly string[];
  /** Everything must be on, and afterwards nothing comes off but `keepAfter`. */
  readonly needsComplete: boolean;
  readonly keepAfter: readonly string[];
  /** Parts that do not come off after it. */
  readonly invalidatedBy: readonly string[];
};

export type Work = {
  readonly parts: readonly WorkPart[];
  readonly jobs: readonly WorkJob[];
  readonly postures: readonly string[];
  /** Minutes from a posture to another. */
  readonly change: Readonly<Record<string, Readonly<Record<string, number>>>>;
  readonly start: { readonly posture: string; readonly off: readonly string[]; readonly done: readonly string[] };
  /** The posture in which it must end, or any. */
  readonly end: string;
};

export type WorkStep =
  | { readonly step: 'remove' | 'refit and verify'; readonly part: string; readonly minutes: number }
  | { readonly step: 'job'; readonly job: string; readonly minutes: number }
  | { readonly step: 'posture'; readonly posture: string; readonly minutes: number };

/** What a part costs from now on: coming off if it is on, going back, the check. */
export const partMinutes = (part: WorkPart): number => part.removeMin + part.refitMin + part.verifyMin;
