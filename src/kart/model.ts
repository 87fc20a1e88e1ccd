/**
 * What a kart is, once its file, its template, its kinds and its rule set have been read and found consistent.
 * Plain JSON throughout: the same object is sent to a phone and planned with there.
 */
import type { Measure } from '../quantity/index.ts';

/** The order in which a mechanic walks round, and in which every list is given. */
export const SYSTEMS = [
  'brakes',
  'steering and front end',
  'axle and hubs',
  'wheels and tyres',
  'throttle and pedals',
  'fuel',
  'driveline',
  'chassis and seat',
  'ballast and driver equipment',
  'engine',
  'clutch, gearbox and shifter',
  'intake',
  'ignition and electrics',
  'cooling',
  'exhaust',
  'bodywork',
] as const;
export type System = (typeof SYSTEMS)[number];

/** The order that never changes. */
export const GRADES = ['safety', 'reliability', 'performance', 'cosmetics'] as const;
export type Grade = (typeof GRADES)[number];

export const POSTURES = ['stand', 'ground', 'scales', 'side'] as const;
export type Posture = (typeof POSTURES)[number];

/** What a hand does to an item. `secure` makes a joint that has no torque: a clip, a pin, a wire, a strap. */
export const WORK_ACTIONS = [
  'clean',
  'look',
  'measure',
  'torque',
  'replace',
  'set',
  'lubricate',
  'secure',
  'function-test',
] as const;
export type WorkAction = (typeof WORK_ACTIONS)[number];

/** Numbers that can tell why an item matters on this very kart; prep writes the sentence. */
export const REASONS = ['hub-hold', 'ballast-fixing'] as const;
export type Reason = (typeof REASONS)[number];

/** Numbers that give an item its target and limits from the kart's dimensions, or say what its readings mean together; prep works them out. */
export const NUMBERS = [
  'rear-track',
  'hub-engagement',
  'brake-bias',
  'toe',
  'least-mass',
  'weight-shares',
  'ignition-timing',
  'least-squish',
  'compression-trend',
] as const;
export type NumberName = (typeof NUMBERS)[number];

/** When a pass stops counting. */
export type Lapse =
  | { readonly on: 'event' } // each event, before its first session
  | { readonly on: 'session' } // before every session
  | { readonly on: 'first run' } // after the first session of an event, or the first after a disturbance or a fitting
  | { readonly on: 'after session' } // after every session, at the latest at the day's end
  | { readonly on: 'hours'; readonly limit: number } // run-hours
  | { readonly on: 'laps'; readonly limit: number }
  | { readonly on: 'days'; readonly limit: number }
  | { readonly on: 'wet' }
  | { readonly on: 'impact' }
  | { readonly on: 'disturbed' } // its own part, or something that names it under `disturbs`, was taken off or set
  | { readonly on: 'fitted' }; // a new part or first assembly

/** Corner of the kart as the driver sits in it; 'whole' where no corner applies. */
export const CORNERS = ['front left', 'front right', 'rear left', 'rear right', 'whole'] as const;
export type Corner = (typeof CORNERS)[number];

export type PartId = string; // 'rear hub left'
export type JointId = string; // 'rear hub left/pinch bolts'
export type ItemId = string; // 'rear hub left/seat'; the item of a joint has the joint's id

export type Handling = {
  readonly minutes: number;
  readonly people?: number; // whom it takes at once; 1 when left out
  readonly posture: Posture | 'any';
  readonly tools: readonly string[];
  readonly caution?: string;
};

export type Part = {
  readonly id: PartId;
  readonly system: System;
  readonly kind: string;
  /** Can it be taken off at all? The frame cannot. */
  readonly removable: boolean;
  /** Alternatives, each a set of parts that must all be off before this one can come off or go on. Empty: free. */
  readonly behind: readonly (readonly PartId[])[];
  readonly takeOff: Handling;
  readonly refit: Handling;
  readonly joints: readonly JointId[];
  /** Items that are due again once this part has been off. Never one that needs this part off to be done. */
  readonly disturbs: readonly ItemId[];
  readonly fits: Readonly<Record<string, Measure>>;
  /** Names of the functions it carries: stop, steer ... */
  readonly carries: readonly string[];
  readonly corner: Corner;
  /** Seen from above, metres from the middle of the rear axle, x forward, y to the left; for the drawing only. */
  readonly place: { readonly x: number; readonly y: number };
  readonly maker?: string;
  /** Its place on the way of a blow from a wheel into the frame, 1 the wheel, by the end of the kart it comes in at. */
  readonly loadPath?: { readonly front?: number | undefined; readonly rear?: number | undefined };
};

export type Joint = {
  readonly id: JointId;
  readonly part: PartId;
  readonly name: string;
  readonly kind: string; // bolt, clamp, clevis pin, clip, hose clamp, tie strap, spring, bond, key ...
  readonly count: number;
  readonly thread?: string; // 'M8x1.25'
  readonly propertyClass?: string; // '8.8'
  readonly torque?: {
    readonly min: Measure;
    readonly max: Measure;
    readonly source: string;
    /** Worked out from thread and class, because nobody gave one: what to mind about it. */
    readonly computed?: readonly string[];
  };
  readonly retention: string;
  readonly second?: string;
  /** Functions that end when it lets go; left out: every one that its part carries. */
  readonly carries?: readonly string[];
  /** The check every made joint owes; its id is the joint's id. */
  readonly item: ItemId;
};

export type ItemMeasure = {
  readonly unit: string; // the unit the person is asked in: 'mm', 'N·m', 'bar'
  readonly target?: Measure;
  readonly min?: Measure;
  readonly max?: Measure;
  /** Outside this a reading is more likely a slip of the hand: ask again, keep what was said. */
  readonly plausible?: { readonly min: Measure; readonly max: Measure };
  /** Key of a limit in the kart's rule set; it overrides a wider min or max. */
  readonly rule?: string;
  /** The number that computes target and limits from the kart's dimensions. */
  readonly number?: NumberName;
  /** Name of the kart dimension the reading is a reading of, e.g. 'overall rear width'. */
  readonly dimension?: string;
};

export type Item = {
  readonly id: ItemId;
  readonly key: string; // the part of the id after the slash
  readonly part: PartId;
  readonly joint?: JointId;
  readonly system: System;
  readonly title: string;
  /** `mend` in no file: prep adds an item for a find that is not mended, and one to `replace` a part that failed. */
  readonly action: WorkAction | 'mend';
  readonly mends?: string; // the find or failure, by its fact
  readonly how: string;
  readonly accept: string;
  readonly source: string; // 'common practice', 'memory, ask the maker', or body and article
  readonly grade: Grade;
  readonly when: readonly Lapse[];
  readonly minutes: number;
  readonly people?: number; // whom it takes at once; 1 when left out
  readonly posture: Posture | 'any';
  /** Alternatives of what must be off to do it. Empty: nothing. */
  readonly needsOff: readonly (readonly PartId[])[];
  /** Only with every part on and every joint made: weighing, alignment, a roll under own brakes. */
  readonly complete: boolean;
  /** Items due again once this one has been set (or replaced). No circle is possible. */
  readonly disturbs: readonly ItemId[];
  /** Joints that doing this opens. */
  readonly opens: readonly JointId[];
  readonly secondLook: boolean;
  readonly measure?: ItemMeasure;
  readonly tools: readonly string[];
  readonly consumables: readonly string[];
  readonly caution?: string;
  /** The number that says why it matters, from the kart's own dimensions. */
  readonly reason?: Reason;
};

export type Limit = { readonly min?: Measure; readonly max?: Measure; readonly text?: string; readonly source: string };

export type RuleSet = {
  readonly id: string;
  readonly body: string;
  readonly year: number;
  readonly note: string;
  readonly limits: Readonly<Record<string, Limit>>;
};

/** What a reading is taken with. */
export type Instrument = {
  readonly name: string;
  readonly resolution: Measure; // the finest step it can be read to
  readonly inches?: Measure; // the same where the reading is taken in inches
  readonly scaleError: Measure; // limits ± of its own scale; of dimension ratio, a share of the reading
  readonly ends: 1 | 2; // 2 where both ends of a length are read
  readonly source: string;
};

/** What a function needs: a part, or all of, any of, k of n. */
export type Need =
  | { readonly part: PartId }
  | { readonly allOf: readonly Need[] }
  | { readonly anyOf: readonly Need[] }
  | { readonly kOf: number; readonly of: readonly Need[] };

export type KartFunction = {
  readonly name: string;
  readonly severity: 1 | 2 | 3 | 4;
  readonly hazard?: string; // what there is without it: 'no brakes'
  readonly needs: Need;
};

/** How long parts of a kind last, as a person expects it, in running time; one answer or both. */
export type ExpectedLife = {
  readonly tenthGoneBy?: Measure;
  readonly halfGoneBy?: Measure; // later than a tenth
  readonly source: string;
};

/** One piece of a kind, new. What is not said is not known. */
export type SpareCost = {
  readonly price?: number; // money of the owner's own
  readonly mass?: Measure;
  readonly change?: Measure; // time it takes to change one at the track
  /** false: its parts differ (left and right), so each has spares of its own. */
  readonly alike: boolean;
  readonly source?: string;
};

/** What parts and failures cost, in one money of the owner's own. */
export type KartCosts = {
  readonly lostWeekend?: number; // what an event costs that a failure ends
  /** Chance of failing over one event that is put up with where it can hurt (severity 1 or 2), 0 to 1. */
  readonly acceptedChance?: number;
  readonly spares: Readonly<Record<string, SpareCost>>; // by kind
};

/** What the number on a main jet means: its bore in hundredths of a millimetre, or what flows through it. */
export const JET_NUMBERS = ['diameter', 'flow'] as const;
export type JetNumbers = (typeof JET_NUMBERS)[number];

/** What the engine's own sheet says; each figure is known or it is not there. */
export type EngineSheet = {
  readonly primary?: number;
  readonly gears?: readonly number[]; // first gear first
  /** At full throttle, by rising speed [rad/s, N·m]. */
  readonly torque?: readonly { readonly speed: Measure; readonly torque: Measure }[];
  readonly limiter?: Measure; // highest speed its maker allows
  readonly jetsNumberedBy?: JetNumbers;
  readonly mixingRatio?: string; // petrol to oil, by volume, as its maker writes it: '20:1'
  readonly source?: string;
};

/** What is at hand to choose from at the track, smallest first. */
export type PostureChange = {
  readonly minutes: number; // from any other posture
  readonly from?: Readonly<Partial<Record<Posture, number>>>; // minutes, where they differ
  readonly people?: number;
  readonly source?: string;
};

export type Box = {
  readonly mainJets: readonly number[];
  readonly frontSprockets: readonly number[]; // teeth
  readonly rearSprockets: readonly number[];
};

export type Kart = {
  readonly format: 1;
  readonly name: string;
  readonly template?: string;
  readonly invented: boolean; // demo data says so
  readonly rules?: RuleSet;
  /** What the library lists to measure with, by name. */
  readonly instruments?: Readonly<Record<string, Instrument>>;
  readonly dimensions: Readonly<Record<string, Measure>>;
  /** Dimensions that stand as the template has them: nobody has measured them on this kart. */
  readonly unmeasured?: readonly string[];
  readonly parts: Readonly<Record<PartId, Part>>;
  readonly joints: Readonly<Record<JointId, Joint>>;
  readonly items: Readonly<Record<ItemId, Item>>;
  readonly functions: Readonly<Record<string, KartFunction>>;
  readonly engine?: EngineSheet;
  readonly box?: Box;
  /** By kind. */
  readonly lives?: Readonly<Record<string, ExpectedLife>>;
  readonly costs?: KartCosts;
  /** How it comes into each posture, where that is said. */
  readonly postures?: Readonly<Partial<Record<Posture, PostureChange>>>;
};
