/** What the track sheet holds: for each number of the day the question the record makes, its answer, and what is missing. */
import type { Answer, Problems } from '../../numbers/index.ts';
import type { Outing } from '../setup-history.ts';

/** Numbers of a session to come, in the order in which a person needs them. */
export const TRACK_SUBJECTS = ['air', 'carburation', 'tyres', 'premix', 'gearing'] as const;
export type TrackSubject = (typeof TRACK_SUBJECTS)[number];

/** What nobody wrote down yet, and how to. */
export type Missing = { readonly what: string; readonly how: string };

/** The few figures that decide, as they are said in the pit: 'main jet' '168'. */
export type Lead = { readonly label: string; readonly text: string };

/** One number of the day. `question` can be asked of the subject as it stands, and shows what the answer rests on. */
export type TrackPart = {
  readonly subject: TrackSubject;
  readonly title: string;
  readonly question: Readonly<Record<string, unknown>> | null; // null: too little is known to ask
  readonly answer: Answer | Problems | null;
  readonly lead: readonly Lead[];
  /** Where the figures of the question come from: 'Main jet 165 was right in Heat 1 (1.168 kg/m³).' */
  readonly from: readonly string[];
  readonly missing: readonly Missing[];
  /** The answer goes leaner, or lower, than what was run before: said in words where it is read. */
  readonly warning: string | null;
};

/** What is not as it was when the kart last ran. */
export type Since = { readonly what: string; readonly was: string | null; readonly now: string };

/** The air of one reading of the day. */
export type AirPoint = { readonly at: string; readonly density: number; readonly band: number }; // kg/m³, ±

export type TrackSheet = {
  readonly kart: string;
  readonly invented: boolean;
  readonly at: string;
  readonly last: Outing | null; // the session before
  readonly laps: number | null; // planned, or as many as the session before
  readonly wet: boolean;
  readonly parts: readonly TrackPart[];
  readonly since: readonly Since[];
  readonly air: readonly AirPoint[]; // of the day, oldest first
  readonly baseline: number | null; // air in which the jet was last right [kg/m³]
};

/** What a person knows of the session to come and the record does not. */
export type TrackAsk = {
  readonly now: string;
  readonly laps?: number;
  readonly wet?: boolean;
  /** As typed: what the engine is wanted to turn at which speed, in the last gear. */
  readonly wanted?: { readonly engineSpeed: string; readonly speed: string };
};
