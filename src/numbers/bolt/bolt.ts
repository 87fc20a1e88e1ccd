/** Bolt: strength, torque and preload each from the other, scatter, running torque, release, oil on a dry figure. */
import { formatQuantity } from '../../quantity/index.ts';
import type { Card } from '../card.ts';
import { type Answer, type Figure, type Problems, problems, subject } from '../subject.ts';
import { type Input, schema } from './input.ts';
import { forceText, forceUnit, mostText, notes, say, torqueUnit } from './words.ts';
import { read, type Worked, work } from './work.ts';

const card: Card = {
  what: 'A torque stretches a bolt; most of it goes into friction, so that the preload is only known within a wide range.',
  equation:
    'As = π/4 (d - 0.938194 P)² metric, π/4 (d - 0.9743 P)² inch;  Fp = Sp As;  T = K d F;  T = F (d2/2 tan(φ + ρ) + μh Dk/2);  FM = As ν Rp / √(1 + 3 (3/2 d2/d0 (P/(π d2) + 1.155 μt))²);  F = (1 ± Γ) T/(K d);  Tmax = K d FM/(1 + Γ)',
  symbols: {
    d: 'major diameter of the thread [m]',
    P: 'pitch [m]',
    d2: 'pitch diameter, d - 0.649519 P [m]',
    d0: 'diameter of a circle of the stress area [m]',
    As: 'stress area [m²]',
    Sp: 'proof stress of the class [Pa]',
    Rp: 'yield strength of the class [Pa]',
    Fp: 'proof load [N]',
    T: 'torque of the joint, without the running torque of a locking nut [N·m]',
    K: 'nut factor: 0.20 dry, 0.15 oiled unless measured [1]',
    F: 'preload [N]',
    φ: 'lead angle, tan φ = P/(π d2) [rad]',
    ρ: 'friction angle of the thread, tan ρ = μt/cos 30° [rad]',
    μt: 'friction of the thread [1]',
    μh: 'friction under the head or nut [1]',
    Dk: 'mean diameter of the face under the head, (outer + hole)/2 [m]',
    FM: 'preload at the share ν of yield in tension and twist [N]',
    ν: 'share of yield, 0.9 unless given [1]',
    Γ: 'scatter of the preload: torque wrench 0.35 dry, 0.25 oiled [1]',
  },
  validity:
    'Steel bolts M5 to M16 or inch threads of that size, through steel, tightened by the thread, below yield. Others are answered and marked. The manual of the part, the class rules and the scrutineer decide.',
  sources: [
    'iso-898-1',
    'asme-b1-1',
    'sae-j429',
    'nut-factor',
    'vdi-2230',
    'preload-scatter',
    'ac-43-13-torque',
    'army-locknut',
    'army-lubricated',
    'hex-head',
  ],
};

export const bolt = subject({
  name: 'bolt',
  title: 'Bolt: torque and preload, strength by class, running and release torque',
  card,
  schema,
  behind: [
    'stress area',
    'proof load',
    'breaking load',
    'preload at *',
    'torque at *',
    'release torque',
    'unwinding moment',
  ],
  example: {
    thread: 'M8x1.25',
    class: '8.8',
    threads: 'dry',
    torque: '20 N·m',
    'locking nut': 'new',
    'running torque': '1.5 N·m',
  },
  solve,
});

function solve(input: Input): Answer | Problems {
  const known = read(input);
  if ('problems' in known) return problems(...known.problems);
  const worked = work(input, known.thread, known.strength);
  return { kind: 'answer', figures: figures(worked), say: say(worked), notes: notes(worked) };
}

function figures(w: Worked): Readonly<Record<string, Figure>> {
  const unit = torqueUnit(w);
  const torque = (si: number): Figure => ({ si, unit, text: formatQuantity(si, unit) });
  const force = (si: number): Figure => ({ si, unit: forceUnit(w), text: forceText(si, w) });
  const found: Record<string, Figure> = {
    'stress area': { si: w.area, unit: 'mm²', text: formatQuantity(w.area, 'mm²') },
  };
  if (w.proof !== undefined) found['proof load'] = force(w.proof);
  if (w.ultimate !== undefined) found['breaking load'] = force(w.ultimate);
  if (w.highest) found['preload at share of yield'] = force(w.highest.preload);
  if (w.highest?.torque !== undefined) found['torque at share of yield'] = torque(w.highest.torque);
  if (w.range) {
    found['least torque'] = torque(w.range.min);
    found['largest torque'] = { ...torque(w.range.max), text: mostText(w.range.max, w) };
    if (w.running > 0) {
      found['least wrench setting'] = torque(w.range.min + w.running);
      const most = w.range.max + w.running;
      found['largest wrench setting'] = { ...torque(most), text: mostText(most, w) };
    }
  }
  if (w.made) {
    found.torque = torque(w.made.torque);
    if (w.running > 0) found['wrench setting'] = torque(w.made.torque + w.running);
    found.preload = force(w.made.preload);
    if (w.made.reach) {
      found['least preload'] = force(w.made.reach.min);
      found['largest preload'] = force(w.made.reach.max);
    }
    if (w.proof !== undefined)
      found['share of proof'] = {
        si: w.made.preload / w.proof,
        unit: '%',
        text: formatQuantity(w.made.preload / w.proof, '%', 0),
      };
    if (w.made.release !== undefined) found['release torque'] = torque(w.made.release);
    found['unwinding moment'] = torque(w.made.unwinding);
  }
  if (w.oiledByDryFigure) {
    found['preload oiled'] = force(w.oiledByDryFigure.preload);
    found['preload dry'] = force(w.oiledByDryFigure.meant);
  }
  if (w.leastRunning !== undefined) found['least running torque, used nut'] = torque(w.leastRunning);
  return found;
}
