/** What the coast-down says, and what to doubt about it. Rounded here and nowhere before. */
import { formatQuantity } from '../../quantity/index.ts';
import type { Answer, Figure } from '../subject.ts';
import { airForce, rollingForce } from './balance-speed.ts';
import type { CoastResult, Known } from './both-ways.ts';
import type { Input } from './input.ts';
import type { Coasted } from './work.ts';

/** What drag areas and rolling coefficients of karts are thought to be: memory, not verified. */
const USUAL = { area: [0.3, 0.9], rolling: [0.012, 0.045] } as const;
const STILL = 2; // m/s

const CAUTION =
  'Caution: roll out only on a closed, clear stretch, driver in full gear. Keep a hand on the clutch: with the throttle shut a two-stroke runs lean of oil, and one that seizes in gear locks the rear axle. Tyres, exhaust and engine are hot afterwards.';

/** As many digits as the interval leaves: two of it. */
const digitsFor = (half: number): number =>
  Math.min(6, Math.max(0, 1 - Math.floor(Math.log10(half > 0 ? half : 1e-6))));
const shown = (value: number, unit: string, digits: number): Figure => ({
  si: value,
  unit,
  text: formatQuantity(value, unit, digits),
});
const known = ({ value, half }: Known, unit: string): Figure => shown(value, unit, Math.min(digitsFor(half), 4));
const both = (of: Known, unit: string): string =>
  `${known(of, unit).text} ± ${shown(of.half, unit, Math.min(digitsFor(of.half), 4)).text}`;

/** The limits reach 0: the trace does not tell the one from the other. */
const untold = ({ area, rolling }: CoastResult): boolean => !(area.half < area.value && rolling.half < rolling.value);

export function figures(input: Input, { kart, fits, result, time, top }: Coasted): Answer['figures'] {
  const { area, rolling, slowing, fall } = result;
  const speedUnit = input['first run points'][0]?.speed.unit ?? 'km/h';
  const at = 25; // m/s, 90 km/h
  return {
    'drag area': known(area, 'm²'),
    'drag area within ±': shown(area.half, 'm²', Math.min(digitsFor(area.half), 4)),
    'rolling coefficient': known(rolling, ''),
    'rolling coefficient within ±': shown(rolling.half, '', Math.min(digitsFor(rolling.half), 4)),
    'slowing by rolling': shown(slowing.a0, 'm/s²', 3),
    'slowing by air at 90 km/h': shown(slowing.a2 * at ** 2, 'm/s²', 3),
    'air force at 90 km/h': shown(airForce({ area: area.value, density: kart.density }, at), 'N', 0),
    'rolling force': shown(rollingForce({ rolling: rolling.value, mass: kart.mass }), 'N', 0),
    'scatter of the speeds': shown(Math.max(...fits.map(fit => fit.scatter)), 'm/s', 2),
    ...(Number.isFinite(fall) && { 'fall along the first run': shown(fall, '%', 2) }),
    ...(Number.isFinite(time) && { 'time between the speeds': shown(time, 's', 1) }),
    ...(Number.isFinite(top) && { 'speed that uses up the power': shown(top, speedUnit, 0) }),
  };
}

export function say(input: Input, { result, time, top }: Coasted): readonly string[] {
  const { area, rolling, directions } = result;
  return [
    `Drag area ${both(area, 'm²')}, rolling coefficient ${both(rolling, '')}, 19 times of 20${directions === 2 ? ', both directions averaged' : ''}.`,
    untold(result)
      ? 'Not good enough to use: roll longer, or log more finely.'
      : 'Take these for gearing and lap simulation of this kart.',
    ...(Number.isFinite(time)
      ? [`It rolls from ${input['speed from']?.text} to ${input['speed to']?.text} in ${formatQuantity(time, 's', 1)}.`]
      : []),
    ...(Number.isFinite(top)
      ? [
          `${input.power?.text} is used up at ${formatQuantity(top, input['first run points'][0]?.speed.unit ?? 'km/h', 0)}, if the gearing lets it. Short tracks never reach it: there the gearing caps the speed.`,
        ]
      : []),
    CAUTION,
  ];
}

export function notes(input: Input, { result }: Coasted): readonly string[] {
  const { area, rolling, directions, fall, apart } = result;
  const outside = (
    name: string,
    value: number,
    [low, high]: readonly [number, number],
    unit: string,
  ): readonly string[] =>
    value >= low && value <= high
      ? []
      : [
          `Outside the range this was checked for: ${name} ${formatQuantity(value, unit, 3)}, usually ${formatQuantity(low, unit, 3)} to ${formatQuantity(high, unit, 3)} (memory, not verified). Was a brake dragging, the clutch out, the unit right?`,
        ];
  const bare = (['mass', 'air density'] as const).filter(key => input[key].half === undefined);
  return [
    ...(untold(result)
      ? [
          'Reject: the limits reach 0, so this trace does not tell air from rolling. Roll longer, from near top speed to a third of it, or log more finely.',
        ]
      : []),
    ...outside('drag area', area.value, USUAL.area, 'm²'),
    ...outside('rolling coefficient', rolling.value, USUAL.rolling, ''),
    ...(directions === 1
      ? [
          'Outside the range this was checked for: one direction only. Slope and wind are in it; run the same stretch back.',
        ]
      : []),
    ...(input.wind && input.wind.si > STILL
      ? [
          `Outside the range this was checked for: wind ${input.wind.text}, more than 2 m/s. The mean of both ways takes out only a light wind.`,
        ]
      : []),
    ...(apart
      ? [
          `The two directions differ by more than their scatter: slope or wind. As a slope it would be ${formatQuantity(fall, '%', 2)} down along the first run; the mean takes a slope out.`,
        ]
      : []),
    ...(input.wind ? [] : ['Wind not given: taken as still.']),
    ...(input['turning mass'] ? [] : ['Turning mass taken as 3 % of the mass (common practice).']),
    ...(bare.length > 0 ? [`Taken as exact, because no limits were given: ${bare.join(', ')}.`] : []),
    'Scrub of axle and toe, bearings and gearbox drag stand in the rolling coefficient. A trace that the logger has smoothed makes the limits too narrow.',
  ];
}
