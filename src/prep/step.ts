/** A job as the person at the bench reads it: one step, with its number, caution and what doing it writes. */
import type { Mark, State } from '../book/index.ts';
import type { Item, Kart, Part, Posture } from '../kart/index.ts';
import { mendItem } from './mend.ts';
import type { Step } from './model.ts';
import { secondLookMinutes } from './order.ts';
import { whyWith } from './reasons.ts';
import { aimOf, compressionSaid } from './targets/index.ts';
import type { Job } from './work.ts';

type Place = Pick<
  Step,
  'n' | 'after' | 'state' | 'start' | 'end' | 'people' | 'helpers' | 'window' | 'closing' | 'timing' | 'whyNow'
>;

export const bareStep: Place = {
  n: 0,
  after: [],
  state: 'waiting',
  start: null,
  end: null,
  people: [],
  helpers: 0,
  window: null,
  closing: null,
  timing: null,
  whyNow: [],
};

export const stepOf = (kart: Kart, state: State, job: Job, place: Place): Step => {
  switch (job.is) {
    case 'take-off':
      return handling(job.part, 'take-off', job.why, job.fresh, place);
    case 'refit':
      return replacing(handling(job.part, 'refit', job.why, job.fresh, place), job.item);
    case 'item':
      return { ...work(kart, state, job.item, whyWith(kart, job.item, job.why), place), key: job.key };
    case 'second-look':
      return secondLook(kart, state, job.item, job.why, place);
  }
};

const handling = (part: Part, action: 'take-off' | 'refit', why: string, fresh: boolean, place: Place): Step => {
  const h = action === 'take-off' ? part.takeOff : part.refit;
  const another = action === 'refit' && fresh;
  return {
    ...place,
    key: `${action} ${part.id}`,
    action,
    on: part.id,
    title: action === 'take-off' ? `Take off: ${part.id}` : another ? `Fit the new ${part.id}` : `Refit: ${part.id}`,
    system: part.system,
    item: null,
    joint: null,
    part: part.id,
    grade: 'safety',
    why,
    how: '',
    accept: '',
    source: 'common practice',
    minutes: h.minutes,
    posture: h.posture,
    target: null,
    tolerance: null,
    unit: null,
    tools: h.tools,
    consumables: [],
    caution: h.caution ?? null,
    secondLook: false,
    writes: action === 'take-off' ? 'taken off' : 'fitted',
    mends: null,
    fresh: another,
  };
};

/** A refit for a part that failed: what is to be heeded with that comes besides what the hands heed anyway. */
const replacing = (refit: Step, item: Item | undefined): Step => {
  if (!item) return refit;
  const cautions = [refit.caution, item.caution].filter(one => one);
  return { ...refit, item: item.id, how: item.how, accept: item.accept, caution: cautions.join(' ') };
};

const work = (kart: Kart, state: State, item: Item, why: string, place: Place): Step => {
  const { target, tolerance, unit, say } = aimOf(kart, item);
  return {
    ...place,
    key: `${item.action} ${item.id}`,
    action: item.action,
    on: item.joint ?? item.part,
    title: item.title,
    system: item.system,
    item: item.id,
    joint: item.joint ?? null,
    part: item.part,
    grade: item.grade,
    why,
    how: item.how,
    accept: [item.accept, ...say, ...compressionSaid(kart, state, item)].join('. '),
    source: item.source,
    minutes: item.minutes,
    posture: item.posture,
    target,
    tolerance,
    unit,
    tools: item.tools,
    consumables: item.consumables,
    caution: item.caution ?? null,
    secondLook: item.secondLook,
    writes: item.mends === undefined ? (item.joint ? 'made' : 'checked') : item.action === 'mend' ? 'mended' : 'fitted',
    mends: item.action === 'mend' ? (item.mends ?? null) : null,
    fresh: item.action === 'replace' && item.mends !== undefined,
  };
};

const secondLook = (kart: Kart, state: State, item: Item, why: string, place: Place): Step => ({
  ...work(kart, state, item, why, place),
  key: `second-look ${item.id}`,
  action: 'second-look',
  title: `Second look: ${item.title}`,
  minutes: secondLookMinutes(item.minutes),
  writes: 'checked',
  tools: [],
  consumables: [],
});

const POSTURE_WORDS: Readonly<Record<Posture, string>> = {
  stand: 'Kart on the stand',
  ground: 'Kart on the ground',
  scales: 'Kart on the scales',
  side: 'Kart on its side',
};
const POSTURE_CAUTION: Readonly<Record<Posture, string | null>> = {
  stand: 'Lift with two, or one end at a time; lock or chock the stand; nobody under the kart.',
  ground: 'Chock a wheel; no engine running while it comes down.',
  scales: 'Level floor; chock until the driver is in.',
  side: 'Fuel, coolant and battery out or shut first; two people; nobody on the low side.',
};

export const postureStep = (kart: Kart, posture: Posture, minutes: number, place: Place): Step => ({
  ...place,
  key: `posture ${posture}`,
  action: 'posture',
  on: 'kart',
  title: POSTURE_WORDS[posture],
  system: 'chassis and seat',
  item: null,
  joint: null,
  part: null,
  grade: 'safety',
  why: 'The next steps need it so.',
  how: '',
  accept: '',
  source: kart.postures?.[posture]?.source ?? 'common practice',
  minutes,
  posture,
  target: null,
  tolerance: null,
  unit: null,
  tools: [],
  consumables: [],
  caution: POSTURE_CAUTION[posture],
  secondLook: false,
  writes: 'put on',
  mends: null,
  fresh: false,
});

/** Steps done stay in sight for a day: long enough for an evening and the morning after. */
const IN_SIGHT_MS = 24 * 3_600_000;

/** What was done within the last day, and since the kart last ran or was signed for, in the order it was done. */
export const doneSteps = (kart: Kart, state: State, now: string): Step[] => {
  const oldest = new Date(Date.parse(now) - IN_SIGHT_MS).toISOString();
  const since = Math.max(state.runs.at(-1)?.pos ?? -1, state.releases.at(-1)?.pos ?? -1);
  const done: { pos: number; make: (place: Place) => Step }[] = [];
  const add = (mark: Mark | undefined, make: (place: Place, why: string) => Step): void => {
    if (mark && mark.pos > since && mark.at >= oldest)
      done.push({ pos: mark.pos, make: place => make(place, `Done by ${mark.by}.`) });
  };
  for (const part of Object.values(kart.parts)) {
    const s = state.parts[part.id];
    add(s?.off, (place, why) => handling(part, 'take-off', why, false, place));
    if (s?.on) add(s.back, (place, why) => handling(part, 'refit', why, s.fresh?.pos === s.back?.pos, place));
  }
  for (const item of Object.values(kart.items)) {
    const pass = state.items[item.id]?.pass;
    add(pass, (place, why) => work(kart, state, item, why, place));
    add(pass?.secondLook, (place, why) => secondLook(kart, state, item, why, place));
  }
  for (const { failed, ...find } of state.defects)
    if (!failed || find.mended?.fact !== state.parts[find.part]?.fresh?.fact)
      // another one fitted stands among the parts
      add(find.mended, (place, why) => work(kart, state, mendItem(kart, find), why, place));
  return done.sort((a, b) => a.pos - b.pos).map((d, i) => d.make({ ...bareStep, n: i + 1, state: 'done' }));
};
