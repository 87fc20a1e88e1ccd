/**
 * The state of one kart: a pure fold over its facts, which knows ids but not the kart file. What a fact *means* for the
 * kart (what a part disturbs, what lapses) is read from this state together with the kart by life, risk and prep.
 */
import type { Corner, Grade, Posture } from '../kart/index.ts';
import type { Reading } from './fact.ts';

/** A place in the record. `pos` is the place in the total order of facts that count (struck ones do not). */
export type Mark = {
  readonly pos: number;
  readonly fact: string;
  readonly at: string;
  readonly by: string;
  readonly minutes: number; // the kart's run-minutes at that moment
  readonly laps: number;
};

export type Run = Mark & {
  readonly event: string; // the event named, or the UTC day
  readonly runMinutes: number;
  readonly runLaps: number;
  readonly wet: boolean;
};

/** A blow, in a run or as something failed. */
export type Impact = Mark & { readonly corner: Corner; readonly severity: 'knock' | 'hit' | 'crash' };

export type PartState = {
  /** false: it lies beside the kart (or has been moved to another). */
  readonly on: boolean;
  readonly off?: Mark; // last time it came off
  readonly back?: Mark; // last time it went on
  readonly fresh?: Mark; // last time another one went on
  readonly freshFrom?: Mark; // when the one it took the place of came off
  readonly serial?: string;
  /** Age when the clock of the kart stood at `sinceMinutes`; while on, age = age + (now - since). */
  readonly ageMinutes: number;
  readonly ageLaps: number;
  readonly sinceMinutes: number;
  readonly sinceLaps: number;
};

export type Pass = Mark & { readonly reading?: Reading; readonly secondLook?: Mark };
export type Said = Mark & { readonly why: string; readonly reading?: Reading };

export type ItemState = {
  readonly pass?: Pass; // last pass (first look)
  readonly fail?: Said; // last fail
  readonly notPossible?: Said;
  /** Somebody wants it looked at; `second`: because its joint is to have that second retention. */
  readonly asked?: Said & { readonly second?: string };
  readonly set?: Mark & { readonly reading?: Reading };
  /** The last readings, newest last, at most 20. */
  readonly readings: readonly (Mark & { readonly reading: Reading })[];
};

export type JointState = { readonly made?: Pass; readonly loosened?: Mark };

export type Defect = Mark & {
  readonly part: string;
  readonly item?: string;
  readonly defect: string;
  readonly grade: Grade;
  readonly photo?: string;
  /** The part failed while it ran; another one in its place mends that. */
  readonly failed?: true;
  readonly mended?: Mark & { readonly how: string };
};

export type KartEvent = Mark & {
  readonly event: string;
  readonly from: string;
  readonly until: string;
  readonly track?: string;
  readonly runMinutes: number;
  readonly runLaps: number;
  readonly wet: boolean;
};

/** Running hours by which a share of a kind is gone, as a person or its maker says it. */
export type Expected = Mark & {
  readonly halfHours?: number;
  readonly tenthHours?: number;
  readonly interval: boolean; // the tenth is the maker's service interval
  readonly why?: string;
};

export type Release = Mark & {
  readonly event?: string;
  readonly signer: string;
  readonly verdict: 'fit' | 'not fit' | 'not known';
  readonly open: readonly string[];
  readonly statement: string;
};

export type State = {
  readonly count: number; // facts that count
  readonly last?: Mark;
  readonly minutes: number; // run-minutes of the kart
  readonly laps: number;
  readonly meterHours?: number;
  readonly runs: readonly Run[];
  readonly impacts: readonly Impact[];
  readonly parts: Readonly<Record<string, PartState>>;
  readonly items: Readonly<Record<string, ItemState>>;
  readonly joints: Readonly<Record<string, JointState>>;
  readonly defects: readonly Defect[]; // all, in order; open ones have no `mended`
  readonly events: Readonly<Record<string, KartEvent>>;
  readonly posture?: Posture;
  readonly settings: Readonly<Record<string, Mark & { readonly value: string }>>;
  readonly tyres?: Mark & { readonly set: string };
  /** By kind of part. */
  readonly expected: Readonly<Record<string, Expected>>;
  readonly releases: readonly Release[];
  readonly filed?: Mark; // the fact that holds the kart file in force
  readonly struck: Readonly<Record<string, { readonly by: string; readonly why: string }>>;
};
