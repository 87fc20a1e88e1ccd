/**
 * What is to be timed, and the timing. A tick is a whole unit of time that the caller chooses (a minute, a tenth of one).
 * The plain problem is activities, what must end before them, and renewable resources. What only a kart asks stands in
 * `kart`; without it nothing of it is paid for.
 */

export type Activity = {
  readonly id: string;
  /** Whole, 0 or more. */
  readonly ticks: number;
  /** How much of each resource it takes while it runs, in the order of `capacity`. */
  readonly needs: readonly number[];
  /** Indices of the activities that end before it starts. */
  readonly after: readonly number[];
  /** Hands at the kart, 1 where nothing is said. */
  readonly crew?: number;
  /** Postures of the kart it can be done in; any where nothing is said. */
  readonly postures?: readonly number[];
  /** It is a second look at this activity: by someone else, or, where there is no one else, not straight after it. */
  readonly looksAt?: number;
};

export type AtTheKart = {
  /** 1 to 3. */
  readonly people: number;
  /** Ticks from posture to posture. Nobody else works at the kart meanwhile, nor while another posture is wanted. */
  readonly change: readonly (readonly number[])[];
  /** The posture it stands in; -1 when nobody knows, and then the first change takes the ticks of `unknown`. */
  readonly posture: number;
  readonly unknown: readonly number[];
  /** Working ticks of each window. No row goes on from one into the next; after the last there is no end. */
  readonly windows?: readonly number[];
};

export type ScheduleProblem = {
  readonly id?: string;
  readonly capacity: readonly number[];
  readonly activities: readonly Activity[];
  /** The order a person would like, all indices: the search starts from it, and of equal plans takes the nearest to it. */
  readonly order?: readonly number[];
  readonly kart?: AtTheKart;
};

export type Bound = { readonly ticks: number; readonly by: string };

export type PostureChange = { readonly at: number; readonly ticks: number; readonly to: number };

export type Schedule = {
  /** Start of each activity [tick]. */
  readonly start: readonly number[];
  readonly makespan: number;
  /** No schedule can be shorter than this. */
  readonly bound: Bound;
  /** Schedules made to find it: one pass over all activities is one. */
  readonly schedules: number;
  readonly kart?: {
    readonly changes: readonly PostureChange[];
    /** Who does each activity, people counted from 0. */
    readonly people: readonly (readonly number[])[];
    /** Second looks for which there was neither another person nor another row in between. */
    readonly tooSoon: readonly number[];
    /** Ticks of work beyond the last window; 0 when all fits. */
    readonly beyond: number;
  };
};

/** How long to search: schedules to make, and the seed of its chances. The same seed gives the same schedule. */
export type Effort = { readonly schedules: number; readonly seed: number };
