/** Tyres: cold for hot from this kart's own runs, altitude and water, stagger, treads, the age of a set. */
import { wrong } from '../asked.ts';
import type { Card } from '../card.ts';
import { type Answer, type Problems, problems, subject } from '../subject.ts';
import { impossible } from './impossible.ts';
import { type Input, schema } from './input.ts';
import { setPart, staggerPart, treadPart } from './others.ts';
import { joined } from './parts.ts';
import { pressurePart } from './pressures.ts';

const card: Card = {
  what: 'The air in a tyre follows its absolute pressure and temperature; how hot it gets is taken from this kart’s own runs on similar days.',
  equation:
    'p1 = (p2 + pa) T1/T2 - pa;  with liquid water: p1 = (p2 + pa - ps(T2)) T1/T2 + ps(T1) - pa;  T2 = a + b Ttrack ± t s √(1 + 1/n + (Ttrack - mean)²/Σ);  m = ps V M/(R T);  R = (t/2)(C2 + C1)/(C2 - C1);  S = t C/R;  crown = middle - (inside + outside)/2',
  symbols: {
    p1: 'gauge pressure cold; p2 hot [Pa]',
    pa: 'absolute pressure of the air around [Pa]',
    T1: 'temperature of the tyre when it is set; T2 of the air in it after the run [K]',
    Ttrack: 'temperature of the track surface [K]',
    a: 'intercept of the line through the runs [K]',
    b: 'slope of that line [1]',
    s: 'scatter of the runs about it [K]',
    n: 'similar runs [1]',
    t: "in the line: 95 % point of Student's t; in stagger: middle to middle of the rear tyres [1, m]",
    ps: 'saturation pressure of water [Pa]',
    m: 'liquid water that fills the tyre with vapour [kg]',
    V: 'volume of the tyre [m³]',
    C1: 'way round the smaller rear tyre; C2 the larger; C their mean [m]',
    R: 'radius to the middle of the axle that the pair rolls round [m]',
    S: 'stagger, C2 - C1 [m]',
    crown: 'middle over the mean of the edges [K]',
  },
  validity:
    'Gauge and absolute never mixed; volume unchanged (a tyre that grows rises a little less); at least three similar runs, five for a slope; both rear tyres rolling without slip; treads as a trend only. Maker and class rules win.',
  sources: ['tyre-gas', 'line-fit', 'student-t', 'tyre-cone', 'tread-three', 'tyre-practice', 'ashrae-psychrometrics'],
};

const dry = { tyre: 'rear', surface: 'dry', cold: '0.60 bar' } as const;
export const tyres = subject({
  name: 'tyres',
  title: 'Tyres: cold pressure for hot, stagger, tread temperatures, the age of a set',
  card,
  schema,
  behind: ['air in tyre *', 'similar runs *', 'round *', 'stagger known within', 'spread *'],
  example: {
    'ambient pressure': '1002 hPa',
    'track height': '90 m',
    'cold temperature': '16 °C',
    'track temperature': '26 °C',
    surface: 'dry',
    laps: '12',
    wanted: [
      { tyre: 'front', hot: '0.80 bar' },
      { tyre: 'rear', hot: '0.85 bar' },
    ],
    record: [
      { ...dry, 'cold temperature': '13 °C', hot: '0.86 bar', 'track temperature': '18 °C', laps: '12' },
      { ...dry, 'cold temperature': '15 °C', hot: '0.86 bar', 'track temperature': '22 °C', laps: '12' },
      { ...dry, 'cold temperature': '17 °C', hot: '0.87 bar', 'track temperature': '25 °C', laps: '10' },
      { ...dry, 'cold temperature': '20 °C', hot: '0.86 bar', 'track temperature': '30 °C', laps: '14' },
      { ...dry, 'cold temperature': '21 °C', hot: '0.88 bar', 'track temperature': '34 °C', laps: '12' },
    ],
    'hot temperature': '58 °C',
    water: 'none',
    rear: {
      'rolled left': '2604 mm ± 2 mm',
      'rolled right': '2616 mm ± 2 mm',
      turns: '3',
      'contact track': '1140 mm',
    },
    treads: [{ tyre: 'rear left', inside: '62 °C', middle: '66 °C', outside: '60 °C' }],
    set: { 'heat cycles': '4', age: '200 d' },
  },
  solve,
});

const CAUTION =
  "Caution: a tyre under pressure can burst. Stay under the maker's most pressure, also when a bead is seated; face and hands out of the plane of the wheel. One run too soft can leave its rim. Tyres, discs, exhaust and engine are hot after a run: gloves. Wheel on a stand: engine off before hands go near. The maker's figures and the class rules win.";

function solve(input: Input): Answer | Problems {
  const against = impossible(input);
  if (against.length > 0) return problems(...against);
  const { figures, say, notes } = joined([pressurePart(input), staggerPart(input), treadPart(input), setPart(input)]);
  const empty = (input.wanted ?? []).flatMap(({ tyre, hot }, n) =>
    (figures[`cold ${tyre}`]?.si ?? 1) > 0
      ? []
      : [
          wrong(
            `wanted/${n}/hot`,
            'more than the air in the tyre gains by itself',
            hot.text,
            'want more hot, or check both temperatures',
          ),
        ],
  );
  return empty.length > 0 ? problems(...empty) : { kind: 'answer', figures, say: [...say, CAUTION], notes };
}
