/** A step as it is read out: the caution before the work, units as they are spoken. */
import type { Step } from '../../prep/index.ts';
import { aimsOf } from '../choice/aims.ts';
import { actionOf, titleOf } from '../words/reads.ts';
import { workWords } from '../words/work.ts';

export function aloudOf(step: Step): string {
  const place = step.item !== null && step.part !== null ? `, ${step.part}` : '';
  const { target, allowed } = aimsOf(step);
  const aims = [target, allowed].filter(text => text !== '');
  return spoken(
    [
      workWords.stepSpoken(step.n, actionOf(step), titleOf(step), place),
      step.caution === null ? '' : workWords.cautionSpoken(step.caution),
      aims.length === 0 ? '' : workWords.targetSpoken(aims.join('; ')),
      step.how === '' ? '' : `${step.how}.`,
      step.accept === '' ? '' : workWords.itHoldsWhen(step.accept),
    ]
      .filter(Boolean)
      .join(' '),
  );
}

const UNITS: readonly (readonly [string, string])[] = [
  ['N·m', workWords.newtonMetres],
  ['mm', 'millimetres'],
  ['in', 'inches'],
  ['kg', 'kilograms'],
  ['bar', 'bar'],
  ['°C', workWords.degreesCelsius],
  ['°F', workWords.degreesFahrenheit],
  ['ft·lb', workWords.footPounds],
  ['in·lb', workWords.inchPounds],
  ['psi', 'psi'],
  ['lb', 'pounds'],
  ['°', 'degrees'],
  ['min', 'minutes'],
  ['%', workWords.perCent],
];

/** '142.5 mm' → '142.5 millimetres'; a word that only looks like a unit has no number before it. */
const spoken = (text: string): string =>
  UNITS.reduce(
    (said, [unit, word]) =>
      said.replace(new RegExp(`(\\d) ?${unit}(?![\\p{L}\\d·])`, 'gu'), (_, digit: string) => `${digit} ${word}`),
    text,
  ).replace(/\.\.+/g, '.');
