/** What to do, and what to doubt, about a bolt. */
import { formatQuantity, inUnit } from '../../quantity/index.ts';
import { floorTo } from '../figure.ts';
import { doubts, NUT_FACTOR } from './joint-torque.ts';
import { AIRCRAFT_TORQUE, POUND_INCH } from './tables.ts';
import type { Worked } from './work.ts';

const CAUTION =
  'Caution: a bolt that has been stretched, a locking nut that turns down by hand, a damaged thread: replace it, never use it again. Brakes, steering, hubs and wheels: the figure of their maker wins, and somebody qualified decides in doubt.';

/** The unit a person wrote torques in, N·m when none was written. */
export const torqueUnit = ({ input }: Pick<Worked, 'input'>): string =>
  (input.torque ?? input['dry figure'] ?? input['running torque'])?.unit ?? 'N·m';
export const forceUnit = ({ input }: Pick<Worked, 'input'>): string => input.preload?.unit ?? 'kN';

/** A torque that is a limit: rounded down where it is shown, so that it never reads higher than it is. */
export const mostText = (si: number, w: Pick<Worked, 'input'>): string =>
  torqueText(floorTo(si, inSi(0.1, torqueUnit(w))), w);
export const torqueText = (si: number, w: Pick<Worked, 'input'>): string => formatQuantity(si, torqueUnit(w));
/** So much of a unit in SI. */
const inSi = (amount: number, unit: string): number => amount / inUnit(1, unit);
/** To 0.1 kN: the scatter of any tightening is many times that. */
export const forceText = (si: number, w: Worked): string =>
  formatQuantity(si, forceUnit(w), forceUnit(w) === 'kN' ? 1 : 0);

export const say = (w: Worked): readonly string[] => [
  ...wrench(w),
  ...reached(w),
  ...oiled(w),
  ...nut(w),
  ...table(w),
  CAUTION,
];

function wrench(w: Worked): readonly string[] {
  if (w.range === undefined) return [];
  const { min, max } = w.range;
  const set = `${torqueText(min + w.running, w)} to ${mostText(max + w.running, w)}`;
  const with_ = w.running > 0 ? `, of which ${torqueText(w.running, w)} turn the locking nut` : '';
  return [
    `Without a figure of its maker, set the wrench to ${set}${with_}. Threads ${w.state}; even the highest preload of the scatter then stays below 90 % of yield.`,
  ];
}

function reached(w: Worked): readonly string[] {
  if (w.made === undefined) return [];
  const { torque, preload, reach, release } = w.made;
  const said = [
    `${torqueText(torque, w)} on the joint gives about ${forceText(preload, w)} of preload${w.running > 0 ? `: set the wrench to ${torqueText(torque + w.running, w)}, running torque included` : ''}.`,
  ];
  if (reach === undefined) said.push('Tightened by feel no preload can be relied on: use a torque wrench.');
  else
    said.push(
      `Count on ${forceText(reach.min, w)} against slip, and on ${forceText(reach.max, w)} for the strength of the bolt.`,
    );
  const top = reach?.max;
  if (w.proof !== undefined && top !== undefined && !(top <= w.proof))
    said.push(
      `Too much: up to ${formatQuantity(top / w.proof, '%', 0)} of the proof load, ${forceText(w.proof, w)}. The bolt may stretch for good: use ${mostText(w.range?.max ?? Number.NaN, w)} at most, or a stronger bolt.`,
    );
  else if (w.highest && top !== undefined && !(top <= w.highest.preload))
    said.push(
      `Tight: up to ${formatQuantity(top / w.highest.preload, '%', 0)} of the highest preload, ${forceText(w.highest.preload, w)}.`,
    );
  if (release !== undefined)
    said.push(
      release > 0
        ? `It takes about ${torqueText(release, w)} to undo; a wrench pulled in the tightening direction shows friction, not preload.`
        : 'With this friction the joint unwinds by itself: it needs a lock.',
    );
  return said;
}

function oiled(w: Worked): readonly string[] {
  const o = w.oiledByDryFigure;
  const figure = w.input['dry figure'];
  if (o === undefined || figure === undefined) return [];
  const share = (force_: number): string =>
    w.proof === undefined ? '' : `, ${formatQuantity(force_ / w.proof, '%', 0)} of the proof load`;
  return [
    `${figure.text} on oiled threads gives about ${forceText(o.preload, w)}${share(o.preload)}, in place of ${forceText(o.meant, w)} dry${share(o.meant)}: a third more.`,
    `Clean the threads dry, or use the maker's figure for oiled ones. A table rule takes 10 % off for engine oil, ${torqueText(o.tableTorque, w)}; physics would take more.`,
  ];
}

function nut(w: Worked): readonly string[] {
  if (w.input['locking nut'] === undefined) return [];
  const said = [
    'Let the locking nut run down first and read what that takes: it is added to the torque of the joint. At least two threads stand proud of it.',
  ];
  if (w.input['locking nut'] === 'used') {
    const running = w.input['running torque']?.si;
    if (w.leastRunning === undefined || running === undefined)
      said.push(
        w.leastRunning === undefined
          ? 'Throw the nut away if fingers can turn it down; a new one is the usual rule on brakes, steering, hubs and wheels (common practice).'
          : `Throw the nut away unless it takes at least ${torqueText(w.leastRunning, w)} to run down.`,
      );
    else
      said.push(
        running >= w.leastRunning
          ? `It takes at least the ${torqueText(w.leastRunning, w)} of the table to run down.`
          : `Throw the nut away: it takes less than the ${torqueText(w.leastRunning, w)} of the table to run down.`,
      );
  }
  return said;
}

function table(w: Worked): readonly string[] {
  const line = AIRCRAFT_TORQUE[w.thread.name];
  if (line === undefined) return [];
  const printed = (o: { readonly min: number; readonly max: number; readonly most: number }): string => {
    const [min, max, most] = [o.min, o.max, o.most].map(v => formatQuantity(v * POUND_INCH, torqueUnit(w)));
    return `${min} to ${max}, at most ${most}`;
  };
  const thin = line.shear ? `, and ${printed(line.shear)} for a thin shear nut` : '';
  return [`An aircraft table prints ${printed(line)}, for a tension nut${thin}, on dry cadmium-plated threads.`];
}

export function notes(w: Worked): readonly string[] {
  const { input } = w;
  const friction = input['thread friction']?.si;
  return [
    ...(w.strength
      ? doubts(w.thread, w.strength)
      : ['Add "class", the mark on the head: without it strength and torque range are not known.']),
    ...(input.threads === undefined
      ? [
          'It is not known whether the threads are dry: the torque is that of oiled ones, the least preload that of dry ones.',
        ]
      : []),
    ...(w.made && input['nut factor'] === undefined && friction === undefined
      ? [`Nut factor taken as ${NUT_FACTOR[w.state].toFixed(2)}; published ones run from 0.10 to 0.35 for steel.`]
      : []),
    ...(friction !== undefined && !(friction >= 0.04 && friction <= 0.3)
      ? [`Outside the range this was checked for: friction ${friction}; 0.04 to 0.30.`]
      : []),
    ...(input['locking nut'] && !input['running torque']
      ? ['The running torque of the locking nut is not known: measure it and add it.']
      : []),
    ...(w.method === 'turn of nut' || w.method === 'stretch'
      ? ['The scatter of this way of tightening comes from a weak source.']
      : []),
    ...(w.highest && w.highest.torque === undefined
      ? ['Give "face diameter" and "hole diameter" for the torque at yield and the release torque.']
      : []),
    'A thread in aluminium, a clamp on a thin casting or a tube takes less than the bolt could bear (common practice). The manual of the part and the class rules win.',
  ];
}
