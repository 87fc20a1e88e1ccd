/** Random karts and random histories, for properties that must hold whatever the kart is. Shrinks to small ones. */
import fc from 'fast-check';
import type { Fact, Payload } from '../src/book/index.ts';
import {
  CORNERS,
  circleInWork,
  GRADES,
  type Item,
  type Joint,
  type Kart,
  type Lapse,
  type Part,
  POSTURES,
  SYSTEMS,
  WORK_ACTIONS,
} from '../src/kart/index.ts';

const DAY = Date.UTC(2026, 0, 1);
/** The n-th minute of the year: facts of a history get one each, in order. */
export const minute = (n: number): string => new Date(DAY + n * 60_000).toISOString();

/** Facts without their seals: what a fold reads, without the cost of hashing thousands of histories. */
export const facts = (payloads: readonly Payload[], from = 0, by = 'A. Tester'): Fact[] =>
  payloads.map((p, i) => {
    const n = from + i;
    return {
      ...p,
      v: 1,
      id: `f${n}`,
      kart: 'random',
      at: minute(n),
      recorded: minute(n),
      by,
      device: 'bench',
      seq: n + 1,
      prev: '0'.repeat(64),
      hash: `${n}`.padStart(64, '0'),
    } as Fact;
  });

const lapse: fc.Arbitrary<Lapse> = fc.oneof(
  fc.constantFrom<Lapse>(
    { on: 'event' },
    { on: 'session' },
    { on: 'first run' },
    { on: 'after session' },
    { on: 'wet' },
    { on: 'impact' },
    { on: 'disturbed' },
    { on: 'fitted' },
  ),
  fc.record({ on: fc.constant('hours' as const), limit: fc.integer({ min: 1, max: 10 }) }),
  fc.record({ on: fc.constant('laps' as const), limit: fc.integer({ min: 5, max: 200 }) }),
  fc.record({ on: fc.constant('days' as const), limit: fc.integer({ min: 1, max: 400 }) }),
);

const posture = fc.constantFrom('any' as const, 'any' as const, ...POSTURES);
const handling = fc.record({ minutes: fc.integer({ min: 0, max: 20 }), posture, tools: fc.constant([]) });

const turn = fc.record(
  {
    minutes: fc.integer({ min: 0, max: 12 }),
    from: fc.dictionary(fc.constantFrom(...POSTURES), fc.integer({ min: 0, max: 12 })),
  },
  { requiredKeys: ['minutes'] },
);

type Rough = {
  readonly postures: NonNullable<Kart['postures']>;
  readonly parts: readonly {
    ways: readonly (readonly number[])[];
    takeOff: Part['takeOff'];
    refit: Part['refit'];
    joints: number;
    disturbs: readonly number[];
    corner: Part['corner'];
    system: Part['system'];
    removable: boolean;
  }[];
  readonly items: readonly {
    part: number;
    action: Item['action'];
    grade: Item['grade'];
    when: readonly Lapse[];
    minutes: number;
    posture: Item['posture'];
    ways: readonly (readonly number[])[];
    self: boolean;
    complete: boolean;
    disturbs: readonly number[];
    opens: readonly number[];
    secondLook: boolean;
  }[];
};

const few = (max: number): fc.Arbitrary<number[]> => fc.array(fc.nat(40), { minLength: 1, maxLength: max });

const rough: fc.Arbitrary<Rough> = fc.record({
  postures: fc.record({ stand: turn, ground: turn, scales: turn, side: turn }, { requiredKeys: [] }),
  parts: fc.array(
    fc.record({
      ways: fc.array(few(2), { maxLength: 3 }),
      takeOff: handling,
      refit: handling,
      joints: fc.nat(2),
      disturbs: fc.array(fc.nat(40), { maxLength: 2 }),
      corner: fc.constantFrom(...CORNERS),
      system: fc.constantFrom(...SYSTEMS),
      removable: fc.boolean().map(b => b || true),
    }),
    { minLength: 1, maxLength: 10 },
  ),
  items: fc.array(
    fc.record({
      part: fc.nat(40),
      action: fc.constantFrom(...WORK_ACTIONS),
      grade: fc.constantFrom(...GRADES),
      when: fc.array(lapse, { minLength: 1, maxLength: 4 }),
      minutes: fc.nat(30),
      posture,
      ways: fc.array(few(2), { maxLength: 3 }),
      self: fc.boolean(),
      complete: fc.boolean(),
      disturbs: fc.array(fc.nat(40), { maxLength: 2 }),
      opens: fc.array(fc.nat(40), { maxLength: 2 }),
      secondLook: fc.boolean(),
    }),
    { maxLength: 14 },
  ),
});

/** Wishes that would leave no order are dropped one by one, as a mechanic would correct the file. */
const build = (r: Rough): Kart => {
  const n = r.parts.length;
  const partId = (i: number): string => `part ${i}`;
  const unique = <T>(list: readonly T[]): T[] => [...new Set(list)];
  const parts: Record<string, Part> = {};
  const joints: Record<string, Joint> = {};
  const items: Record<string, Item> = {};
  const base = { how: '', accept: '', source: 'common practice', tools: [], consumables: [] };

  r.parts.forEach((p, i) => {
    const names = Array.from({ length: p.joints }, (_, k) => `${partId(i)}/joint ${k}`);
    parts[partId(i)] = {
      id: partId(i),
      system: p.system,
      kind: 'thing',
      removable: p.removable,
      // Only parts further out: a reach cannot go in a circle.
      behind: i === 0 ? [] : p.ways.map(w => unique(w.map(k => partId(k % i)))),
      takeOff: p.takeOff,
      refit: p.refit,
      joints: names,
      disturbs: [],
      fits: {},
      carries: [],
      corner: p.corner,
      place: { x: 0, y: 0 },
    };
    names.forEach((id, k) => {
      joints[id] = { id, part: partId(i), name: `joint ${k}`, kind: 'bolt', count: 2, retention: 'nut', item: id };
      items[id] = {
        ...base,
        id,
        key: `joint ${k}`,
        part: partId(i),
        joint: id,
        system: p.system,
        title: `Joint ${k}`,
        action: 'torque',
        grade: 'safety',
        when: [{ on: 'event' }, { on: 'disturbed' }],
        minutes: 1,
        posture: 'any',
        needsOff: [],
        complete: false,
        disturbs: [],
        opens: [],
        secondLook: k === 0,
      };
    });
  });
  r.items.forEach((it, i) => {
    const part = partId(it.part % n);
    const complete = it.complete;
    const ways = complete ? [] : it.ways.map(w => unique([...(it.self ? [part] : []), ...w.map(k => partId(k % n))]));
    const id = `${part}/item ${i}`;
    items[id] = {
      ...base,
      id,
      key: `item ${i}`,
      part,
      system: SYSTEMS[i % SYSTEMS.length] ?? 'brakes',
      title: `Item ${i}`,
      action: it.action,
      grade: it.grade,
      when: it.when,
      minutes: it.minutes,
      posture: it.posture,
      needsOff: ways,
      complete,
      disturbs: [],
      opens: [],
      secondLook: it.secondLook,
    };
  });

  let kart: Kart = {
    format: 1,
    name: 'random',
    invented: true,
    dimensions: {},
    parts,
    joints,
    items,
    functions: {},
    postures: r.postures,
  };
  if (circleInWork(kart)) {
    // An item that lapses when disturbed and a way in may already bite each other: then nothing is disturbed.
    kart = {
      ...kart,
      items: mapValues(items, it => (it.joint ? it : { ...it, when: [{ on: 'event' }], needsOff: [] })),
    };
  }
  const itemIds = Object.keys(items);
  const jointIds = Object.keys(joints);
  const attempt = (next: Kart): void => {
    if (!circleInWork(next)) kart = next;
  };
  r.parts.forEach((p, i) => {
    const part = kart.parts[partId(i)];
    for (const d of p.disturbs) {
      const id = itemIds[d % Math.max(1, itemIds.length)];
      if (part && id)
        attempt({
          ...kart,
          parts: {
            ...kart.parts,
            [part.id]: {
              ...(kart.parts[part.id] ?? part),
              disturbs: unique([...(kart.parts[part.id] ?? part).disturbs, id]),
            },
          },
        });
    }
  });
  r.items.forEach((it, i) => {
    const id = `${partId(it.part % n)}/item ${i}`;
    const change = (more: (item: Item) => Item): void => {
      const item = kart.items[id];
      if (item) attempt({ ...kart, items: { ...kart.items, [id]: more(item) } });
    };
    for (const d of it.disturbs) {
      const other = itemIds[d % itemIds.length];
      if (other && other !== id) change(item => ({ ...item, disturbs: unique([...item.disturbs, other]) }));
    }
    for (const o of it.opens) {
      const joint = jointIds[o % Math.max(1, jointIds.length)];
      if (joint) change(item => ({ ...item, opens: unique([...item.opens, joint]) }));
    }
  });
  return kart;
};

const mapValues = <V>(from: Readonly<Record<string, V>>, f: (v: V) => V): Record<string, V> =>
  Object.fromEntries(Object.entries(from).map(([k, v]) => [k, f(v)]));

export const randomKart: fc.Arbitrary<Kart> = rough.map(build);

/** A history that could have been written down about this kart, sloppy hands included. */
export const randomHistory = (kart: Kart): fc.Arbitrary<Payload[]> => {
  const parts = Object.keys(kart.parts);
  const joints = Object.keys(kart.joints);
  const items = Object.keys(kart.items);
  const one = (list: readonly string[], f: (id: string) => Payload): fc.Arbitrary<Payload>[] =>
    list.length === 0 ? [] : [fc.constantFrom(...list).map(f)];
  return fc.array(
    fc.oneof(
      fc.record({
        kind: fc.constant('ran' as const),
        minutes: fc.integer({ min: 1, max: 60 }),
        laps: fc.nat(30),
        wet: fc.boolean(),
        event: fc.constantFrom('one', 'two', 'three'),
      }),
      fc.constantFrom(...CORNERS).map(
        (corner): Payload => ({
          kind: 'ran',
          minutes: 5,
          laps: 3,
          event: 'two',
          impact: { corner, severity: 'knock' },
        }),
      ),
      ...one(items, item => ({ kind: 'checked', item, result: 'pass' })),
      ...one(items, item => ({ kind: 'checked', item, result: 'pass' })),
      ...one(items, item => ({ kind: 'checked', item, result: 'pass', secondLook: true })),
      ...one(items, item => ({ kind: 'checked', item, result: 'fail', why: 'worn' })),
      ...one(items, item => ({ kind: 'checked', item, result: 'not possible', why: 'no light' })),
      ...one(items, item => ({ kind: 'set', item })),
      ...one(joints, joint => ({ kind: 'made', joint })),
      ...one(joints, joint => ({ kind: 'loosened', joint })),
      ...one(parts, part => ({ kind: 'taken off', part })),
      ...one(parts, part => ({ kind: 'fitted', part })),
      ...one(parts, part => ({ kind: 'fitted', part, fresh: true })),
      fc.constantFrom(...POSTURES).map((p): Payload => ({ kind: 'put on', posture: p })),
    ),
    { maxLength: 40 },
  );
};

export const randomCase: fc.Arbitrary<{ kart: Kart; history: Payload[] }> = randomKart.chain(kart =>
  randomHistory(kart).map(history => ({ kart, history })),
);
