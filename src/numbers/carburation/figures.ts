/** The main jet as figures. A jet is shown as a whole number, rounded to the richer one. */
import { formatQuantity } from '../../quantity/index.ts';
import type { Figure } from '../subject.ts';
import type { Worked } from './work.ts';

export const jetText = (number: number): string => String(Math.ceil(number - 1e-6));
const jet = (si: number): Figure => ({ si, unit: '', text: jetText(si) });
const span = ([low, high]: readonly [number, number]): Figure => ({
  si: high,
  unit: '',
  text: jetText(low) === jetText(high) ? jetText(high) : `${jetText(low)} to ${jetText(high)}`,
});
const density = (si: number): Figure => ({ si, unit: 'kg/m³', text: formatQuantity(si, 'kg/m³', 3) });

/** A change in per cent with its direction in a word: `5.0 % thinner`. */
export const changeText = (ratio: number, [more, less]: readonly [string, string]): string => {
  const size = formatQuantity(Math.abs(ratio - 1), '%', 1);
  return size === '0.0 %' ? 'no change' : `${size} ${ratio > 1 ? more : less}`;
};
const change = (ratio: number, words: readonly [string, string]): Figure => ({
  si: ratio - 1,
  unit: '%',
  text: changeText(ratio, words),
});

export function figures(w: Worked): Readonly<Record<string, Figure>> {
  const { band, was, now, learned, need } = w;
  const { advice } = band;
  const found: Record<string, Figure> = {
    'air then': density(was.density),
    'air now': density(now.density),
    'change of air': change(band.ratio, ['denser', 'thinner']),
    'change of air known to': { si: 2 * w.doubt, unit: '%', text: `± ${formatQuantity(2 * w.doubt, '%', 1)}` },
    'mixture with the jet as it is': change(band.mixture, ['richer', 'leaner']),
    'jet by theory': span(band.theory),
    'jet by the paddock rule': jet(band.paddock),
  };
  if (band.learned) found['jet by the log'] = span(band.learned);
  if (learned?.kind === 'learned')
    found['exponent of the log'] = {
      si: learned.exponent,
      unit: '',
      text: `${learned.exponent.toFixed(2)} (${learned.low.toFixed(2)} to ${learned.high.toFixed(2)}, ${learned.points} sessions)`,
    };
  found['leanest of the band'] = jet(band.low);
  found['richest of the band'] = jet(band.high);
  if (advice.kind === 'fit') found['jet to fit'] = jet(advice.jet);
  if (advice.kind === 'at least') found['jet to fit, at least'] = jet(advice.number);
  if (need !== 1) found['change for the fuel'] = change(need, ['more', 'less']);
  if (w.share !== undefined)
    found['share of the main jet'] = { si: w.share, unit: '%', text: formatQuantity(w.share, '%', 0) };
  if (w.air !== undefined)
    found['air a kilogram of this fuel needs'] = { si: w.air, unit: 'kg', text: formatQuantity(w.air, 'kg', 1) };
  return found;
}
