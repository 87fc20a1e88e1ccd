/** What to do, and what to doubt, after the scales. */
import { formatQuantity } from '../../quantity/index.ts';
import { chance } from '../figure.ts';
import { asWanted, type Worked } from './work.ts';

const USUAL = { front: 0.43, left: 0.5 } as const; // published chassis set-up guide, 2005; source share-start

const LIFT =
  'Caution: engine off. Raise the kart empty, on supports that cannot slide or tip; then the driver sits in, a helper steadying each side; the driver is out again before it comes down. Nobody reaches under it.';
const FASTEN =
  'Caution: ballast that comes loose at speed hits people. Through-bolt it to seat or frame by the rule set, class 8.8, washers of 30 mm on both faces, a second means on every bolt, a second look. Lead: gloves, wash hands. Then weigh again.';

const percent = (share: number): string => formatQuantity(share, '%', 2);

export const say = (w: Worked): readonly string[] => [
  ...weighed(w),
  ...sides(w),
  ...height(w),
  ...flag(w),
  ...ballast(w),
];

function weighed({ now, unit, corners }: Worked): readonly string[] {
  const total = `Total ${formatQuantity(now.mass, unit)}`;
  if (corners === undefined) return [`${total}.`];
  const { front, left, cross } = corners.shares;
  return [
    `${total}: front ${percent(front)}, left ${percent(left)}, cross (front right with rear left) ${percent(cross)}.`,
  ];
}

/** What must come onto which wheels; without a wish, nothing is asked for. */
function sides(w: Worked): readonly string[] {
  const { corners, input, now, unit, ballast } = w;
  if (corners === undefined || ballast !== undefined) return [];
  return (['front', 'left'] as const).flatMap(name => {
    const wanted = input[`${name} target`];
    if (wanted === undefined) return [];
    const off = wanted.si - corners.shares[name];
    const sure = asWanted(w, name);
    const how = sure === undefined ? '' : `; the chance that it truly is: ${chance(sure).text}`;
    if (Math.abs(off) <= (wanted.half ?? 0)) return [`The ${name} share is where it is wanted${how}.`];
    const [from, onto] = name === 'front' ? ['rear', 'front'] : ['right', 'left'];
    const [give, take] = off > 0 ? [from, onto] : [onto, from];
    return [
      `For ${wanted.text} ${name}, ${formatQuantity(Math.abs(off) * now.mass, unit)} must go from the ${give} wheels to the ${take} wheels: move seat or ballast to the ${take}, then weigh again.`,
    ];
  });
}

function height({ height }: Worked): readonly string[] {
  if (height === undefined) return [];
  return [
    `The middle of the mass is ${formatQuantity(height.height, 'mm', 0)} above the ground, ± ${formatQuantity(2 * height.u, 'mm', 0)}.`,
    LIFT,
  ];
}

function flag({ least, end, now, unit, input, confidence }: Worked): readonly string[] {
  if (least === undefined) return [];
  const limit = `the least mass of ${formatQuantity(least.limit, unit)}`;
  const when = input['fuel to burn'] ? 'At the flag' : 'As weighed';
  const margin = end.mass - least.limit;
  const level = formatQuantity(confidence, '%');
  if (margin < 0)
    return [
      `${when}: ${formatQuantity(-margin, unit)} under ${limit}. Add ${formatQuantity(least.before - now.mass, unit)} or more, so that it shows at ${level}.`,
    ];
  const short = least.before - now.mass;
  return [
    short <= 0
      ? `${when}: over ${limit} by ${formatQuantity(margin, unit)}; the chance of being heavy enough is ${chance(least.chance).text}.`
      : `${when}: over ${limit} by ${formatQuantity(margin, unit)}, but too near it to be sure: the chance is ${chance(least.chance).text}. Add ${formatQuantity(short, unit)} for ${level}.`,
  ];
}

function ballast({ ballast: found, after, input, unit, fixings, rule }: Worked): readonly string[] {
  if (found === undefined || after === undefined) return [];
  const mass = (kg: number): string => formatQuantity(kg, unit);
  const lines = (input.places ?? []).flatMap(({ name }, n) => {
    const held = fixings[n];
    const kg = found.masses[n] ?? 0;
    if (held === undefined) return [];
    const blocks = held.blocks === 1 ? 'one block' : `${held.blocks} blocks`;
    const bolts = `${held.boltsABlock} bolts of ${formatQuantity(rule.boltDiameter, 'mm')} or more`;
    return [`Fix ${mass(kg)} at ${name}: ${blocks}, ${bolts} through ${held.blocks === 1 ? 'it' : 'each'}.`];
  });
  const reached = `front ${percent(after.shares.front)}, left ${percent(after.shares.left)}, cross ${percent(after.shares.cross)}`;
  return [
    ...(lines.length === 0 ? ['No ballast is needed for this.'] : lines),
    ...(lines.length === 0 ? [] : [`That is ${mass(found.total)} in all, and should give ${reached}.`]),
    ...missed(found, input, unit),
    ...(lines.length === 0 ? [] : [FASTEN]),
  ];
}

/** What these places cannot reach, and by how much. */
function missed(found: NonNullable<Worked['ballast']>, input: Worked['input'], unit: string): readonly string[] {
  const names = (['front', 'left'] as const).filter(name => input[`${name} target`] !== undefined);
  const sides = names.flatMap((name, n) => {
    const aim = found.aims[n];
    if (aim === undefined || aim.missing === 0) return [];
    const amount = formatQuantity(Math.abs(aim.missing), unit);
    return [
      `${input[`${name} target`]?.text} ${name} cannot be met here: with ${percent(aim.reached)}, the ${name} wheels carry ${amount} too ${aim.missing > 0 ? 'little' : 'much'}. ${name === 'front' ? 'Move the seat, or name a place further forward or back.' : 'Move the seat sideways, or name a place further out.'}`,
    ];
  });
  const mass =
    found.massShort > 0
      ? [
          `The least mass cannot be met here: even with every place full, ${formatQuantity(found.massShort, unit)} are missing. Name more places.`,
        ]
      : [];
  return [...mass, ...sides];
}

export const notes = (w: Worked): readonly string[] => [...unusual(w), ...assumed(w), ...meaning(w)];

function unusual({ now, corners, input, height }: Worked): readonly string[] {
  const outside = 'Outside the range this was checked for:';
  const found: string[] = [];
  if (now.mass < 100 || now.mass > 300)
    found.push(`${outside} total ${formatQuantity(now.mass, 'kg')}, usually 100 kg to 300 kg with its driver.`);
  const least = input['least mass'];
  if (least && Math.abs(least.si - now.mass) > 0.4 * now.mass)
    found.push(
      `${outside} least mass ${least.text} against ${formatQuantity(now.mass, 'kg')}. See that both are kart with driver, and in the unit that was meant.`,
    );
  if (corners) {
    const { front, left } = corners.shares;
    if (front < 0.35 || front > 0.55)
      found.push(`${outside} front share ${percent(front)}. See that front and rear readings are not exchanged.`);
    if (left < 0.4 || left > 0.6)
      found.push(`${outside} left share ${percent(left)}. See that each scale reads 0 empty.`);
  }
  for (const name of ['wheelbase', 'front track', 'rear track'] as const) {
    const si = input[name]?.si;
    if (si !== undefined && (si < 0.7 || si > 1.5)) found.push(`${outside} ${name} ${formatQuantity(si, 'mm')}.`);
  }
  const { wheelbase, rise } = input;
  if (wheelbase && rise && (rise.si > 0.5 * wheelbase.si || rise.si < 0.1))
    found.push(`${outside} rise ${rise.text}: raise it by 200 to 400 mm.`);
  // With a seated driver 220 to 280 mm is usual (memory); well beyond that, a reading is wrong.
  if (height && !(height.height > 0.18 && height.height < 0.45))
    found.push(
      `${outside} height ${formatQuantity(height.height, 'mm', 0)}. Weigh again, with wheels free to roll and the driver still.`,
    );
  for (const { name, forward, left } of input.places ?? [])
    if (forward.si < -0.3 || forward.si > (wheelbase?.si ?? 1) + 0.5 || Math.abs(left.si) > 0.75)
      found.push(`${outside} ${name} lies beyond the frame.`);
  return found;
}

function assumed({ assumed: taken, ruleMissing, ballast: found }: Worked): readonly string[] {
  return [
    ...(taken.scale
      ? ['Scales without limits were taken as ± 0.2 kg each (common practice): write "36 kg ± 0.1 kg".']
      : []),
    ...(taken.fuel ? ['Fuel was taken as 0.745 kg/l ± 0.03 kg/l (common practice).'] : []),
    ...(found && ruleMissing.length > 0
      ? [
          `Not given, so taken from the strictest of several rule books: ${ruleMissing.join(', ')}. Ask the rule book of the event.`,
        ]
      : []),
  ];
}

function meaning({ corners, input, height, ballast: found }: Worked): readonly string[] {
  return [
    ...(corners && !input['front target'] && !input['left target']
      ? [
          `A usual start is front ${formatQuantity(USUAL.front, '%')}, left ${formatQuantity(USUAL.left, '%')} (published chassis set-up guide, 2005); the maker's sheet wins.`,
        ]
      : []),
    ...(corners
      ? ['Cross comes from the heights of the four corners and from a bent frame; ballast hardly moves it.']
      : []),
    ...(found ? ['How a side load is shared between front and rear depends on the frame: weigh again.'] : []),
    ...(height ? ['A small error at the front scales moves the height a lot: repeat, and take the mean.'] : []),
  ];
}
