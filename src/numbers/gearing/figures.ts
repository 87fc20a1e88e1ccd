/** Gearing as figures. */
import { formatQuantity } from '../../quantity/index.ts';
import type { Figure } from '../subject.ts';
import type { Pair } from './pairs.ts';
import type { ShiftPoint } from './shift.ts';
import type { Worked } from './work.ts';

/** An engine speed: no finer than a dial or a log shows it. */
export const rpm = (si: number): Figure => ({ si, unit: 'rpm', text: rpmText(si) });
const rpmText = (si: number): string =>
  Number.isFinite(si)
    ? formatQuantity(Math.round((si * 30) / Math.PI / 10) * 10 * (Math.PI / 30), 'rpm', 0)
    : 'not known';
const ratio = (si: number): Figure => ({ si, unit: ':1', text: formatQuantity(si, ':1', 3) });
const percent = (si: number): Figure => ({ si, unit: '%', text: formatQuantity(si, '%', 1) });
/** A road speed in the unit the question used, with the limits that the tyre gives it. */
export const road = (si: number, { input, round }: Worked): Figure => {
  const unit = input['wanted speed']?.unit ?? input['logged speed']?.unit ?? 'km/h';
  const half = (si * round.half) / round.circumference;
  return {
    si,
    unit,
    text: `${formatQuantity(si, unit, 1)}${half > 0 ? ` ± ${formatQuantity(half, unit, 1)}` : ''}`,
  };
};

export const pairText = ({ front, rear }: Pick<Pair, 'front' | 'rear'>): string => `${front}/${rear}`;

const shift = (point: ShiftPoint): Figure =>
  point.kind === 'not known' ? { si: Number.NaN, unit: 'rpm', text: `not known: ${point.why}` } : rpm(point.rotation);

export function figures(worked: Worked): Readonly<Record<string, Figure>> {
  const { ratios, speeds, afters, choice, shifts, tooth, round, top } = worked;
  const found: Record<string, Figure> = {};
  const single = ratios.length === 1;
  const within = (name: string, n: number): string => (single ? name : `${name} in gear ${n + 1}`);
  ratios.forEach((each, n) => {
    found[within('overall ratio', n)] = ratio(each);
  });
  speeds.forEach((each, n) => {
    found[within('speed', n)] = road(each, worked);
  });
  afters.forEach((each, n) => {
    found[`after shift ${n + 1} to ${n + 2}`] = rpm(each);
    found[`drop at shift ${n + 1} to ${n + 2}`] = percent(
      1 - (ratios[n + 1] ?? Number.NaN) / (ratios[n] ?? Number.NaN),
    );
  });
  shifts.forEach((point, n) => {
    found[`shift ${n + 1} to ${n + 2} at`] = shift(point);
  });
  if (choice) {
    found['wanted rear over front'] = ratio(choice.need);
    found['engine speed with the sprockets on now'] = rpm(choice.now);
    choice.pairs.slice(0, SHOWN).forEach((pair, n) => {
      found[`choice ${n + 1}`] = { ...rpm(pair.rotation), text: `${pairText(pair)}: ${rpm(pair.rotation).text}` };
    });
  }
  found['one front tooth less'] = percent(tooth.lessFront);
  found['one rear tooth more'] = percent(tooth.moreRear);
  if (round.from === 'log')
    found['circumference from the log'] = {
      si: round.circumference,
      unit: 'mm',
      text: formatQuantity(round.circumference, 'mm', 0),
    };
  if (round.slip !== undefined) found['slip and growth'] = percent(round.slip);
  if (top && top.kind !== 'not reached') found['top speed on the level'] = road(top.speed, worked);
  return found;
}

/** Choices told; the rest of the box is further off. */
export const SHOWN = 5;
