/** The chain: which it is, how many links, where the engine stands, how worn, how slack, in line, how hard pulled. */
import type { Card } from '../card.ts';
import { type Answer, type Problems, problems, subject } from '../subject.ts';
import { figures } from './figures.ts';
import { impossible } from './impossible.ts';
import { type Input, schema } from './input.ts';
import { notes, say } from './words.ts';
import { work } from './work.ts';

const card: Card = {
  what: 'A chain goes round two sprockets in an even number of links; the engine moves until it is taut, then gives back a little slack. Wear makes each pitch longer.',
  equation:
    'L = 2C + (z1 + z2)/2 + ((z2 - z1)/2π)²/C;  k = L - (z1 + z2)/2;  C = [k + √(k² - 8((z2 - z1)/2π)²)]/4;  d = p/sin(π/z);  wrap = π - 2 asin((R - r)/c);  stretch = l/(n p) - 1;  limit = min(1.5 %, 3 %, 200 %/z2);  Δc = (s² - w²)/(4 c);  v = N z1 p/(2π);  F = P/v;  Fc = m v²;  ripple = 1 - cos(π/z1)',
  symbols: {
    L: 'links round both sprockets [1]',
    C: 'middle of one sprocket to middle of the other, in pitches [1]',
    c: 'the same as a length [m]',
    z1: 'teeth of the front sprocket, at the engine [1]',
    z2: 'teeth of the rear sprocket, on the axle [1]',
    z: 'teeth of either [1]',
    p: 'pitch of the chain, pin to pin [m]',
    d: 'pitch diameter; r and R half of it, front and rear [m]',
    l: 'length measured over n pitches [m]',
    n: 'pitches measured [1]',
    Δc: 'move of the engine away from the axle that changes slack s to w [m]',
    s: 'slack now, whole movement at mid-span; w wanted [m]',
    N: 'speed of the front sprocket [rad/s]',
    v: 'speed of the chain [m/s]',
    P: 'power through the chain [W]',
    F: 'pull of the driving run [N]',
    Fc: 'pull that its own speed adds [N]',
    m: 'mass of a metre of chain [kg/m]',
  },
  validity:
    'Two sprockets in one plane, taut chain, no tensioner; the short length formula is within a few hundredths of a link of the pitch circles. Slack by straight lines with one run taut. The makers of chain and kart win.',
  sources: [
    'chain-length',
    'chain-sizes',
    'chain-wear',
    'chain-slack',
    'chain-line',
    'chain-clip',
    'chain-force',
    'sprocket-teeth',
  ],
};

export const chainDrive = subject({
  name: 'chain',
  title: 'Chain: links, distance, wear, slack, line',
  card,
  schema,
  behind: [
    'pitch*',
    'roller',
    'between inner plates',
    'links around',
    'wrap *',
    'length *',
    'most stretch *',
    'swing *',
  ],
  example: {
    chain: '428',
    'front sprocket': '17',
    'rear sprocket': '25',
    'centre distance': '230 mm',
    'room away': '8 mm',
    'room toward': '6 mm',
    'links now': '60',
    'measured length': '256.2 mm ± 0.2 mm',
    'pitches measured': '20',
    slack: '18 mm',
    'out of line': '0.4 mm',
  },
  solve,
});

function solve(input: Input): Answer | Problems {
  const against = impossible(input);
  if (against.length > 0) return problems(...against);
  const worked = work(input);
  return { kind: 'answer', figures: figures(worked), say: say(worked), notes: notes(worked) };
}
