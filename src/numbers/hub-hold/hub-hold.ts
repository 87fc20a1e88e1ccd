/** Hub hold: what a split clamp hub holds by friction, clean against a film, and against what brake, chain and corner ask. */
import type { Card } from '../card.ts';
import { type Answer, type Problems, problems, subject } from '../subject.ts';
import { figures } from './figures.ts';
import { impossible } from './impossible.ts';
import { type Input, schema } from './input.ts';
import { notes, say } from './words.ts';
import { work } from './work.ts';

const card: Card = {
  what: 'A split clamp hub is held on its axle by friction under the least preload of its pinch bolts; the key never counts.',
  equation:
    'F = n (1 - Γ)(M - M0) / (K b);  T = c μ F d;  A = 2 c μ F;  Q = √((2 T/d)² + A²);  S = 2 c μ F / Q;  side = k g N;  torque = min(s B, g N R)',
  symbols: {
    F: 'least force of all bolts together [N]',
    n: 'pinch bolts [1]',
    M: 'torque of the wrench, the least of its range [N·m]',
    M0: 'running torque of a locking nut [N·m]',
    K: 'nut factor, 0.20 (common practice) [1]',
    b: 'diameter of the thread [m]',
    Γ: 'scatter of preload, 35 % by torque wrench dry [1]',
    c: 'how the bore bears: 1 two lines, 4/π close fit, π/2 conforming [1]',
    μ: 'friction of hub on axle: 0.20 clean, 0.10 with a film [1]',
    d: 'diameter of the axle [m]',
    T: 'torque [N·m]',
    A: 'axial force [N]',
    Q: 'torque and axial force as one at the seat [N]',
    S: 'margin against slip, 1.3 wanted (common practice) [1]',
    g: 'grip of the tyre, 1.7 (common practice) [1]',
    N: 'load on the tyre; the outer carries all of the rear in a corner, the inner half (common practice) [N]',
    k: 'dynamic factor, 2 for a load put on suddenly (memory) [1]',
    B: 'torque of brake or engine on the axle; braking not given: the tyre decides [N·m]',
    s: 'share of the axle torque on one hub: half; all on the outer hub in a corner with the inner wheel in the air [1]',
    R: 'rolling radius of the tyre, half of its diameter [m]',
  },
  validity:
    'Bore closes on the axle and the slot stays open; dry means a fresh cloth stays clean; no edge bearing, axle not oval. The key is a locator: it adds nothing to friction and keeps no hub on its axle. The maker of the hub decides its torque.',
  sources: [
    'split-hub',
    'nasa-5020',
    'dynamic-two',
    'key-strength',
    'press-fit',
    'hub-loads',
    'hub-engagement',
    'gravity-1901',
  ],
};

export const hubHold = subject({
  name: 'hub-hold',
  title: 'Hub hold: what a clamped hub holds, clean against a film of oil, with its margins',
  card,
  schema,
  behind: ['least clamp force', 'side load *', 'braking torque *', 'drive torque *', 'margin *', 'mean pressure'],
  example: {
    'axle diameter': '50 mm',
    bolts: '2',
    'bolt diameter': '8 mm',
    'bolt torque': '18 N·m',
    mass: '175 kg',
    'tyre diameter': '274 mm',
    'brake torque': '224 N·m',
    'engine torque': '24.5 N·m',
    'overall ratio': '14:1',
    'hub length': '46 mm',
  },
  solve,
});

function solve(input: Input): Answer | Problems {
  const against = impossible(input);
  if (against.length > 0) return problems(...against);
  const worked = work(input);
  return { kind: 'answer', figures: figures(worked), say: say(worked), notes: notes(worked) };
}
