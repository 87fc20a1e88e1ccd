/** Scales: shares of four readings, the centre of gravity and its height, ballast, and the mass at the flag. */
import { formatQuantity } from '../../quantity/index.ts';
import type { Card } from '../card.ts';
import { chance } from '../figure.ts';
import { type Answer, type Figure, type Problems, problems, subject } from '../subject.ts';
import { type Input, schema } from './input.ts';
import { impossible } from './refusals.ts';
import { notes, say } from './words.ts';
import { asWanted, type Worked, work } from './work.ts';

const card: Card = {
  what: 'Four scales under four wheels give the shares and the middle of the mass; raised once more at the rear, its height; and which ballast, where, brings it to the wanted shares and the least mass.',
  equation:
    'front = (FL + FR)/W;  left = (FL + RL)/W;  cross = (FR + RL)/W;  x = L front;  y = [(FL - FR) tF/2 + (RL - RR) tR/2]/W;  ' +
    'c = P (F1 - F0)/(W (tan θ1 - tan θ0));  h = rR - b sin θ0 + c cos θ0;  ' +
    'minimise Σ m with Σ m >= T + z u + V ρ - W and Σ m (q - s) = -W (q0 - s);  E = W - V ρ',
  symbols: {
    W: 'sum of the four readings, kart and driver [kg]',
    'FL, FR, RL, RR': 'reading under each wheel [kg]',
    L: 'wheelbase, middle of contact to middle of contact [m]',
    'tF, tR': 'front and rear track, middle of contact to middle of contact [m]',
    'x, y': 'middle of the mass, forward of the rear axle and left of the middle line [m]',
    h: 'height of the middle of the mass above the ground [m]',
    'rF, rR': 'loaded radius, ground to the middle of the axle [m]',
    H: 'rise of the supports under the rear wheels [m]',
    P: 'between the axle middles, P² = L² + (rR - rF)² [m]',
    'θ0, θ1': 'slope of the line between the axles, sin θ0 = (rR - rF)/P, sin θ1 = (rR + H - rF)/P [rad]',
    'F0, F1': 'both front scales, level and with the rear raised [kg]',
    'b, c': 'middle of the mass ahead of and above the rear axle along P, b = P F0/W - c tan θ0 [m]',
    m: 'ballast at a place, from 0 to the most that fits [kg]',
    'q, q0, s': 'share of a mass at a place, share now, share wanted [1]',
    'T, z, u':
      'least mass of the rules [kg], score of the wanted chance [1], standard uncertainty of the end mass [kg]',
    'V, ρ': 'fuel that will burn [m³] and its density [kg/m³]',
    E: 'mass when the flag falls [kg]',
  },
  validity:
    'Scales level with each other, tyres at running pressure, driver seated as in the run, wheels free to roll, steering straight. Total 100 to 300 kg, front share 35 to 55 %. A mass at a side is shared over four equal springs on a stiff frame. The rule book and the scrutineer decide.',
  sources: [
    'statics',
    'corner-shares',
    'raised-axle',
    'plane-fit',
    'ballast-lp',
    'ballast-fixing',
    'fuel-density',
    'share-start',
    'jcgm-100',
    'jcgm-106',
  ],
};

export const scales = subject({
  name: 'scales',
  title: 'Scales: front, left and cross share, centre of gravity, ballast, and the mass at the flag',
  card,
  schema,
  behind: [
    'standard uncertainty *',
    'chance of front *',
    'chance of left *',
    'centre *',
    'front share with *',
    'left share with *',
    'cross share with *',
  ],
  example: {
    'front left': '34.5 kg ± 0.1 kg',
    'front right': '37.2 kg ± 0.1 kg',
    'rear left': '48.6 kg ± 0.1 kg',
    'rear right': '51.4 kg ± 0.1 kg',
    wheelbase: '1045 mm',
    'front track': '1080 mm',
    'rear track': '1170 mm',
    'least mass': '175 kg',
    'fuel to burn': '4 l ± 0.5 l',
    'front target': '42.5 % ± 0.5 %',
    'left target': '50 % ± 0.3 %',
    places: [
      { name: 'floor front left', forward: '800 mm', left: '200 mm', most: '6 kg' },
      { name: 'floor front right', forward: '800 mm', left: '-200 mm', most: '6 kg' },
      { name: 'seat left', forward: '300 mm', left: '250 mm', most: '8 kg' },
      { name: 'seat right', forward: '300 mm', left: '-250 mm', most: '8 kg' },
    ],
  },
  solve,
});

function solve(input: Input): Answer | Problems {
  const against = impossible(input);
  if (against.length > 0) return problems(...against);
  const worked = work(input);
  return { kind: 'answer', figures: figures(worked), say: say(worked), notes: notes(worked) };
}

function figures(w: Worked): Readonly<Record<string, Figure>> {
  const mass = (si: number): Figure => ({ si, unit: w.unit, text: formatQuantity(si, w.unit) });
  const share = (si: number): Figure => ({ si, unit: '%', text: formatQuantity(si, '%', 2) });
  const length = (si: number): Figure => ({ si, unit: 'mm', text: formatQuantity(si, 'mm', 1) });
  const found: Record<string, Figure> = { total: mass(w.now.mass), 'standard uncertainty of total': mass(w.now.u) };
  if (w.corners)
    for (const name of ['front', 'left', 'cross'] as const) {
      found[`${name} share`] = share(w.corners.shares[name]);
      found[`standard uncertainty of ${name} share`] = share(w.corners.u[name]);
      const inside = asWanted(w, name);
      if (inside !== undefined) found[`chance of ${name} share as wanted`] = chance(inside);
    }
  if (w.centre) {
    found['centre forward of rear axle'] = length(w.centre.forward);
    found['centre left of middle'] = length(w.centre.left);
  }
  if (w.height) {
    found['centre above ground'] = length(w.height.height);
    found['standard uncertainty of height'] = length(w.height.u);
    found.tilt = { si: w.height.tilt, unit: '°', text: formatQuantity(w.height.tilt, '°') };
  }
  if (w.input['fuel to burn']) found['mass at the flag'] = mass(w.end.mass);
  if (w.least) {
    found['margin at the flag'] = mass(w.end.mass - w.least.limit);
    found['chance of being heavy enough'] = chance(w.least.chance);
    found['least reading before the run'] = mass(w.least.before);
  }
  if (w.ballast && w.after) {
    w.input.places?.forEach(({ name }, n) => {
      found[`ballast ${name}`] = mass(w.ballast?.masses[n] ?? Number.NaN);
    });
    found['ballast in all'] = mass(w.ballast.total);
    found['total with ballast'] = mass(w.now.mass + w.ballast.total);
    for (const name of ['front', 'left', 'cross'] as const)
      found[`${name} share with ballast`] = share(w.after.shares[name]);
  }
  return found;
}
