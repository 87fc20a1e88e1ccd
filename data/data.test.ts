import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { disturbersOf, type Item, type Kart, readKart, SYSTEMS, workOrder } from '../src/kart/index.ts';
import { aimOf } from '../src/prep/index.ts';

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));
const texts = (folder: string): Record<string, string> =>
  Object.fromEntries(
    readdirSync(here(folder))
      .filter(file => file.endsWith('.yaml'))
      .map(file => [file, readFileSync(here(`${folder}/${file}`), 'utf8')]),
  );
const library = { kinds: texts('kinds'), templates: texts('templates'), rules: texts('rules') };

const read = (text: string): Kart => {
  const result = readKart(text, library);
  if (!result.ok) throw new Error(result.problems.map(p => p.message).join('\n'));
  return result.kart;
};
const TEMPLATES = ['six-speed gearbox', 'single-speed direct-drive', 'four-stroke junior'] as const;
const karts = new Map(TEMPLATES.map(name => [name, read(`kart: 1\nname: "1"\ntemplate: ${name}\n`)]));
const sixSpeed = read('kart: 1\nname: "1"\ntemplate: six-speed gearbox\n');
const kart41 = read(readFileSync(here('demo/kart-41.yaml'), 'utf8'));

const itemsOf = (kart: Kart): readonly Item[] => Object.values(kart.items);
const everyItem = [...karts.values()].flatMap(itemsOf);
/** Checks that differ: the same check on the left and on the right counts once. */
const differing = (kart: Kart): number => new Set(itemsOf(kart).map(i => `${kart.parts[i.part]?.kind}/${i.key}`)).size;
const ids = (items: Iterable<Item>): string[] => [...new Set([...items].map(i => i.id))];

describe('the templates', () => {
  test.each(TEMPLATES)('%s reads without a problem', name => {
    expect(readKart(`kart: 1\nname: "1"\ntemplate: ${name}\n`, library)).toMatchObject({ ok: true });
  });

  test.each(Object.keys(library.rules).map(file => file.replace('.yaml', '')))(
    'the rules %s can be raced under',
    id => {
      expect(readKart(`kart: 1\nname: "1"\ntemplate: six-speed gearbox\nrules: ${id}\n`, library)).toMatchObject({
        ok: true,
      });
    },
  );

  test('the six-speed template has 120 different checks or more, over every system', () => {
    expect(differing(sixSpeed)).toBeGreaterThanOrEqual(120);
    expect(new Set(itemsOf(sixSpeed).map(i => i.system))).toEqual(new Set(SYSTEMS));
  });

  test('the other templates have 60 different checks or more', () => {
    for (const kart of karts.values()) expect(differing(kart)).toBeGreaterThanOrEqual(60);
  });

  test('every kind of part is used by a template', () => {
    const used = new Set([...karts.values()].flatMap(k => Object.values(k.parts).map(p => p.kind)));
    const kinds = Object.values(library.kinds).flatMap(text => [...text.matchAll(/^(\w[^:\n]*):$/gm)].map(m => m[1]));
    expect(kinds.filter(kind => !used.has(kind ?? ''))).toEqual([]);
  });

  test('some parts can be reached more than one way', () => {
    const choices = Object.values(sixSpeed.parts).filter(p => p.behind.length > 1);
    expect(choices.length).toBeGreaterThanOrEqual(3);
  });

  test('an axle set computed for 54 3/4 in is what the six-speed template describes', () => {
    // Width over bearing faces, hubs and tyres, W = B + 2 (g + L + e): g is 142.875 mm for 54 3/4 in (1390.65 mm).
    const mm = (name: string): number => (sixSpeed.dimensions[name]?.si ?? Number.NaN) * 1000;
    const gap = (mm('overall rear width') - mm('bearing faces')) / 2 - mm('hub length left') - mm('tyre outboard left');
    expect(gap).toBeCloseTo(142.875, 9);
    expect(mm('overall rear width')).toBeCloseTo(54.75 * 25.4, 9);
  });
});

describe('every item', () => {
  test('says where it comes from', () => {
    expect(ids(everyItem.filter(i => i.source.trim() === ''))).toEqual([]);
  });

  test('that is measured knows what is more likely a slip of the hand, and no target or limit lies there', () => {
    const bad = everyItem.filter(({ measure: m, joint }) => {
      if (!m || joint !== undefined) return false;
      if (!m.plausible) return true;
      const { min, max } = m.plausible;
      return [m.target, m.min, m.max].some(q => q && !(q.si >= min.si && q.si <= max.si));
    });
    expect(ids(bad)).toEqual([]);
  });

  test('of a clamped hub that has its seat cleaned names the number that says why', () => {
    const seats = everyItem.filter(i => i.key === 'seat' && i.part.startsWith('rear hub'));
    expect(seats.length).toBeGreaterThanOrEqual(6);
    expect(ids(seats.filter(i => i.reason !== 'hub-hold'))).toEqual([]);
  });

  test('promises nothing: no text of a kind says that something is safe', () => {
    expect(Object.entries(library.kinds).filter(([, text]) => /\bsafe\b/i.test(text))).toEqual([]);
  });
});

describe('every number that an item names', () => {
  /** What readings mean together is said of the record; what only this engine's sheet or a rule set can give no template has. */
  const given = (kart: Kart, { measure }: Item): boolean =>
    measure?.number !== undefined &&
    measure.number !== 'compression-trend' &&
    (measure.number !== 'least-mass' || kart.rules !== undefined) &&
    (measure.number !== 'ignition-timing' || kart === kart41);
  test('gives its target or its least from the dimensions of each template and of kart 41, and misses none', () => {
    for (const kart of [...karts.values(), kart41]) {
      const named = itemsOf(kart).filter(item => given(kart, item));
      expect(named.length).toBeGreaterThanOrEqual(7);
      for (const item of named) {
        const { target, min, say } = aimOf(kart, item);
        expect(target ?? min, `${kart.template} ${item.id}: ${say.join(' ')}`).toBeTruthy();
        expect(say.join(' '), item.id).not.toContain('Not computed');
      }
    }
  });
  test('aims at what a person can plausibly read, between the limits', () => {
    for (const item of itemsOf(kart41)) {
      const { plausible } = item.measure ?? {};
      const { target, tolerance } = aimOf(kart41, item);
      if (!target || item.joint !== undefined) continue;
      for (const range of [plausible, tolerance]) {
        expect(target.si, item.id).toBeGreaterThanOrEqual(range?.min?.si ?? Number.NEGATIVE_INFINITY);
        expect(target.si, item.id).toBeLessThanOrEqual(range?.max?.si ?? Number.POSITIVE_INFINITY);
      }
    }
  });
});

describe('second looks', () => {
  const LOSES_CONTROL = [
    'brakes',
    'steering and front end',
    'axle and hubs',
    'wheels and tyres',
    'throttle and pedals',
  ];
  const asked = everyItem.filter(i => LOSES_CONTROL.includes(i.system) && i.grade === 'safety');

  test('every joint and every function test whose failure loses brakes, steering, a wheel or the throttle asks for one', () => {
    const alone = asked.filter(i => (i.joint !== undefined || i.action === 'function-test') && !i.secondLook);
    expect(ids(alone)).toEqual([]);
  });

  test('of the other safety items there, only looks and readings that repeat every event go without', () => {
    // Common practice: the work checklist asks no second look for these.
    const without = new Set(asked.filter(i => !i.secondLook).map(i => i.key));
    expect([...without].sort()).toEqual([
      'bead pegs',
      'bearings',
      'cable',
      'fluid level',
      'free play',
      'hose',
      'rim',
      'rod ends',
      'run-out',
      'straight',
      'thickness',
      'tyre',
      'upper bush',
    ]);
  });

  test('heavy parts, fuel, chain, kill switch, frame and counted tools ask for one too', () => {
    const keys = [
      'block bolts',
      'mount clamps',
      'seat bolts',
      'welds',
      'final pass',
      'kill switch works',
      'tools counted',
    ];
    keys.push('routing', 'leak check', 'guard', 'sprocket bolts', 'joining link', 'springs', 'oil change', 'renew');
    for (const key of keys)
      expect(
        itemsOf(sixSpeed).some(i => i.key === key && i.secondLook),
        key,
      ).toBe(true);
  });
});

describe('cautions', () => {
  // Each usual danger of the work, and what the caution at the step must name. Common practice.
  const DANGERS: readonly { readonly when: RegExp; readonly says: RegExp }[] = [
    { when: /brake cleaner/, says: /toxic gas/ },
    { when: /penetrant/, says: /burn/i },
    { when: /brake fluid, sealed/, says: /eyes/ },
    { when: /carburettor cleaner|"fuel"/, says: /flame/ },
    { when: /engine at idle|short warm-up|^at idle|filler at start/, says: /kill switch in hand/ },
    { when: /piston kit/, says: /crankcase/ },
    { when: /silencer packing/, says: /mask/ },
  ];
  test.each(DANGERS)('a step with $when names its danger', ({ when, says }) => {
    const steps = everyItem.filter(i => when.test(JSON.stringify([i.how, i.consumables])) || when.test(i.how));
    expect(steps.length).toBeGreaterThan(0);
    expect(ids(steps.filter(i => !says.test(i.caution ?? '')))).toEqual([]);
  });

  test('chain, sprockets, fuel, brake fluid, lead and whatever is hot warn when they come off', () => {
    const parts = Object.values(sixSpeed.parts);
    for (const kind of [
      'chain',
      'rear sprocket',
      'fuel tank',
      'master cylinder',
      'ballast block',
      'exhaust pipe',
      'radiator',
    ])
      expect(
        parts.filter(p => p.kind === kind && !p.takeOff.caution),
        kind,
      ).toEqual([]);
  });
});

describe('what disturbs what', () => {
  const next = workOrder(sixSpeed);
  const reaches = (from: string, to: string): boolean => {
    const seen = new Set([`do ${from}`]);
    for (const step of seen) for (const after of next.get(step) ?? []) seen.add(after);
    return seen.has(`do ${to}`);
  };

  test('measuring goes rear track, ride height, caster and camber, toe, weights, toe again', () => {
    const steps = [
      'rear hub left/rear track',
      'frame/ride height rear',
      'frame/ride height front',
      'kingpin left/caster and camber',
      'steering column/toe',
      'frame/corner weights',
      'steering column/toe again',
    ];
    for (const [i, step] of steps.slice(1).entries()) expect(reaches(steps[i] ?? '', step), step).toBe(true);
  });

  test('moving a hub leaves its pinch bolts to be made, setting toe the lock nuts of both tie rods', () => {
    expect(sixSpeed.items['rear hub left/rear track']?.opens).toEqual(['rear hub left/pinch bolts']);
    expect(sixSpeed.items['steering column/toe']?.opens).toEqual(['tie rod left/lock nuts', 'tie rod right/lock nuts']);
  });

  test('hub seats, carrier seats and the axle under them are cleaned each time they come apart', () => {
    for (const part of ['rear hub left', 'rear hub right', 'disc carrier', 'sprocket carrier'])
      expect(disturbersOf(sixSpeed).whileOff.get(part), part).toContain(`${part}/seat`);
    expect(disturbersOf(sixSpeed).whileOff.get('axle')).toContain('axle/no film');
  });

  test('a hub off the axle disturbs the rear track of its own side only', () => {
    const disturbed = sixSpeed.parts['rear hub left']?.disturbs ?? [];
    expect(disturbed).toContain('rear hub left/rear track');
    expect(disturbed).not.toContain('rear hub right/rear track');
  });
});

describe('kart 41', () => {
  test('says that it is invented and runs under invented rules', () => {
    expect(kart41.invented).toBe(true);
    expect(kart41.rules?.body).toMatch(/invented/);
  });

  test('keeps to the limits of its club', () => {
    for (const [name, limit] of Object.entries(kart41.rules?.limits ?? {})) {
      const si = kart41.dimensions[name]?.si;
      if (si === undefined) continue;
      expect(si, name).toBeGreaterThanOrEqual(limit.min?.si ?? 0);
      expect(si, name).toBeLessThanOrEqual(limit.max?.si ?? Number.POSITIVE_INFINITY);
    }
  });
});
