/** Air: its density against the standard day, what the engine breathes, and how well it is known. */
import type { Card } from '../card.ts';
import { type Answer, type Problems, problems, subject } from '../subject.ts';
import { impossible } from './impossible.ts';
import { type Input, schema } from './input.ts';
import { figures, notes, say } from './words.ts';
import { work } from './work.ts';

const card: Card = {
  what: 'Temperature, pressure at the track and humidity give the density of the air, and with it how much oxygen a stroke can draw.',
  equation:
    'ρ = p Ma/(Z R T) (1 - xv (1 - Mv/Ma));  xv = h f ps/p;  ρd = p (1 - xv) Ma/(Z R T);  pv = h ps(T) = ps(Td);  ' +
    'H = (T0/λ) (1 - (ρ/ρ0)^(1/(n - 1)));  QNH: p = p0 ((q/p0)^(1/n) - λ z/T0)^n;  sea level: p = s exp(-0.03416356 z/(T + 0.12 e + 0.00325 z));  ' +
    'J1349: 1.18 (990/pd) √((t + 273)/298) - 0.18;  ISO 1585: (99/pd)^1.2 ((t + 273)/298)^0.6;  DIN 70020: (1013/p) √((t + 273)/293);  J607: (29.92/pd) √((F + 460)/520);  u² = Σ (∂ρ/∂x u(x))²',
  symbols: {
    ρ: 'density of the air as it is, ρ0 1.2250 of the standard day [kg/m³]',
    ρd: 'mass of dry air in a cubic metre [kg/m³]',
    p: 'absolute pressure at the track, p0 101325; pd without the vapour’s, in the unit of its standard [Pa]',
    T: 'temperature, T0 288.15; t in °C, F in °F [K]',
    h: 'relative humidity, 0 to 1 [1]',
    ps: 'saturation pressure of water, pv of the vapour there is, e the same in hPa [Pa]',
    Td: 'dew point, frost point below 0 °C [K]',
    xv: 'share of the molecules that are water [1]',
    f: 'enhancement of vapour in real air [1]',
    Z: 'compressibility, nearly 1 [1]',
    'Ma, Mv': 'molar mass of dry air and of water [kg/mol]',
    R: 'gas constant, 8.314472 [J/(mol·K)]',
    H: 'density altitude, geopotential [m]',
    z: 'track above the sea [m]',
    'q, s': 'airfield QNH, sea level pressure of a map or an app [Pa]',
    'λ, n': 'lapse 0.0065 K/m and power 5.25588 of the standard atmosphere [K/m, 1]',
    u: 'standard uncertainty; limits ± a of a reading count as a/√3, the band shown is two of it [as its quantity]',
  },
  validity:
    'Density 15 to 27 °C, 600 to 1100 hPa (memory), within 0.07 % of two ideal gases from 0 to 45 °C and 850 to 1050 hPa. Heights -450 to 4500 m. Power factors compare two days of one engine; none was written for tuned two-strokes. The limits of ISO 1585 are 0.93 to 1.07, 15 to 35 °C, 80 to 110 kPa (memory).',
  sources: [
    'cipm-2007',
    'ashrae-psychrometrics',
    'iso-2533',
    'density-altitude-rules',
    'sea-level-reduction',
    'weather-span',
    'power-standards',
    'iso-1585',
    'paddock-instruments',
    'jcgm-100',
    'gravity-1901',
  ],
};

export const air = subject({
  name: 'air',
  title: 'Air: density against the standard day, density altitude, pressure at the track, power by a standard',
  card,
  schema,
  behind: ['density known to', 'vapour pressure', 'dew point', 'standard uncertainty *', 'uncertainty from *'],
  example: {
    temperature: '24 °C ± 1 °C',
    pressure: '1009 hPa ± 1 hPa',
    'pressure is': 'QNH',
    humidity: '55 % ± 5 %',
    elevation: '310 m ± 10 m',
    'baseline density': '1.185 kg/m³ ± 0.003 kg/m³',
  },
  solve,
});

function solve(input: Input): Answer | Problems {
  const against = impossible(input);
  if (against.length > 0) return problems(...against);
  const worked = work(input);
  if (worked === undefined)
    return problems({
      path: 'pressure',
      expected: 'a pressure that air at a track can have',
      got: input.pressure.text,
      remedy: 'correct the pressure, its kind or the elevation',
    });
  return { kind: 'answer', figures: figures(worked), say: say(worked), notes: notes(worked) };
}
