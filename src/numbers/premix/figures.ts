/** Fuel and oil as figures: oil to the millilitre, fuel to the tenth of a litre upward where too little stops the kart. */
import { formatQuantity } from '../../quantity/index.ts';
import { chance } from '../figure.ts';
import type { Figure } from '../subject.ts';
import type { Worked } from './work.ts';

export const litres = (si: number, digits = 2): Figure => ({ si, unit: 'l', text: formatQuantity(si, 'l', digits) });
/** Never shown less than it is. */
export const atLeast = (si: number): Figure => ({
  si,
  unit: 'l',
  text: formatQuantity(Math.ceil(si * 1e4 - 1e-6) / 1e4, 'l', 1),
});
export const millilitres = (si: number): Figure => ({ si, unit: 'ml', text: formatQuantity(si, 'ml', 0) });
export const mass = (si: number): Figure => ({ si, unit: 'kg', text: formatQuantity(si, 'kg', 1) });
const ratio = (si: number): Figure => ({ si, unit: ':1', text: `${si.toFixed(1).replace(/\.0$/, '')}:1` });

/** `1.6 % leaner`; no change reads so. */
export const mixtureText = (by: number): string => {
  const size = formatQuantity(Math.abs(by - 1), '%', 1);
  return size === '0.0 %' ? 'no change' : `${size} ${by > 1 ? 'richer' : 'leaner'}`;
};

export function figures(w: Worked): Readonly<Record<string, Figure>> {
  const { pour, perLap, session, flag, theory } = w;
  const found: Record<string, Figure> = {
    'ratio by volume': ratio(w.ratio),
    'ratio by mass': ratio(w.byMass),
    'density of the mix': { si: w.density, unit: 'kg/m³', text: formatQuantity(w.density, 'kg/m³', 0) },
  };
  if (pour) {
    found['oil to pour'] = millilitres(pour.oil);
    found['oil to pour by mass'] = {
      si: pour.oil * w.densities.oil,
      unit: 'g',
      text: formatQuantity(pour.oil * w.densities.oil, 'g', 0),
    };
    if (w.input['volume is'] === 'mix in the can') found['petrol to pour'] = litres(pour.petrol);
    found['mix in the can then'] = litres(pour.mix);
  }
  if (w.mixture !== undefined)
    found['petrol through the same jet'] = { si: w.mixture - 1, unit: '%', text: mixtureText(w.mixture) };
  if (perLap?.kind === 'known') {
    found['fuel a lap'] = litres(perLap.mean, 3);
    found['fuel a lap, at most'] = litres(perLap.high, 3);
    found['spread between sessions'] = litres(perLap.spread, 3);
  }
  if (session && session.kind !== 'not known') {
    found['fuel to have in the tank'] = atLeast(session.fill);
    found['burnt in the session'] = litres(session.burn.mean);
    found['burnt at most'] = litres(session.burn.high);
    found['mass burnt'] = mass(session.burn.mean * w.density);
    found['left at the flag, at least'] = litres(session.leftLeast);
    if (session.over > 0) found['more than the tank holds'] = litres(session.over);
  }
  if (theory) {
    found['fuel a lap by theory, from'] = litres(theory[0], 3);
    found['fuel a lap by theory, to'] = litres(theory[1], 3);
  }
  if (flag) {
    found['mass at the flag'] = mass(flag.end);
    found['chance of being heavy enough'] = chance(flag.chance);
    found['least on the scales before'] = mass(flag.before);
  }
  return found;
}
