/** Lives as plain lines: the table of all parts, and the sheet of one. */
import type { LifeAnswer, LivesAnswer } from '../../app/index.ts';
import type { Known, LifeLine, LifeSheet } from '../../life/index.ts';
import { CAUTION } from './plan.ts';
import { count, heading, wrap } from './wrap.ts';

export function livesText({ kart, event, hours, parts }: LivesAnswer): string {
  const known = parts.filter(({ chance }) => chance !== null);
  const failed = parts.filter(({ fate }) => fate === 'failed');
  const unknown = parts.filter(({ chance, fate }) => chance === null && fate !== 'failed');
  let text = wrap(`Kart ${kart}, ${over(event, hours)}: how likely each part fails at its age.`);
  text += wrap(`Starting guesses and your own record. ${CAUTION}`);
  if (failed.length > 0) text += wrap(`Has failed already: ${failed.map(({ part }) => part).join(', ')}. Replace it.`);
  if (known.length > 0) text += `\n${known.map(lineText).join('')}`;
  if (known.some(({ mostlyGuess }) => mostlyGuess)) text += wrap('* mostly our starting guess.', '  ');
  return text + unknownText(unknown);
}

const over = (event: string | null, hours: number | null): string =>
  hours === null ? 'no event ahead' : `over ${round(hours)} h${event === null ? '' : ` of ${event}`}`;

const lineText = ({ part, age, words, mostlyGuess }: LifeLine): string =>
  `  ${part.padEnd(26)} ${`${round(age ?? 0)} h`.padStart(8)}  ${words?.short ?? ''}${mostlyGuess ? ' *' : ''}\n`;

function unknownText(unknown: readonly LifeLine[]): string {
  const whys = [...new Set(unknown.map(({ unknown: why }) => why ?? ''))];
  return whys
    .map(why => {
      const parts = unknown.filter(one => one.unknown === why).map(({ part }) => part);
      return wrap(`Not known of ${count(parts.length, 'part')}: ${parts.join(', ')}. ${why}`);
    })
    .join('');
}

export function lifeText({ kart, event, life }: LifeAnswer): string {
  const { part, kind, age, unknown, fate, words, basis, record } = life;
  let text = wrap(`Kart ${kart}, ${part} (${kind}), ${over(event, life.hours)}.`);
  text += age === null ? '' : wrap(`It has run ${round(age)} h${fate === 'failed' ? ' and has failed' : ''}.`);
  text += words ? wrap(words.long) : wrap(`Not known: ${unknown}`);
  if (basis) text += wrap(basis);
  text += heading('how long these last');
  text += wrap(
    `On record: ${count(record.lives, 'life', 'lives')} on kart ${record.karts.join(', ')}, ${record.failed} failed.`,
    '  ',
  );
  if (life.median && life.tenth) {
    text += wrap(`Half are gone by ${known(life.median)}; 1 in 10 by ${known(life.tenth)}.`, '  ');
  }
  text += shapeText(life);
  for (const { age: at, share, watched, low, high } of life.survival)
    text += wrap(
      `Past ${round(at)} h the record alone has ${percent(share)} left${Number.isFinite(low) ? `, between ${percent(low)} and ${percent(high)}` : ''} (${watched} watched).`,
      '  ',
    );
  text += heading('when to replace it');
  if (life.replacement) text += life.replacement.say.map(say => wrap(say, '  ')).join('');
  else text += wrap('Not known: it takes a life, hours to come, and a part that runs.', '  ');
  if (life.cost) {
    const { perHour, perEvent, counts } = life.cost;
    text += wrap(
      `It costs ${money(perHour)} an hour${perEvent ? `, ${money(perEvent)} an event` : ''}: ${counts}.`,
      '  ',
    );
  }
  text += life.lacking.map(one => wrap(one, '  - ')).join('');
  return text + wrap(CAUTION);
}

function shapeText({ shape, guess, mostlyGuess }: LifeSheet): string {
  if (!shape) return '';
  const band = ({ low, middle, high }: { low: number; middle: number; high: number }): string =>
    `${round(middle)} (${round(low)} to ${round(high)})`;
  const said = `Shape: guessed ${band(shape.guessed)}, now ${band(shape.now)}; above 1 it wears.`;
  return wrap(`${said}${mostlyGuess ? ' Mostly our starting guess.' : ''}${guess ? ` Guess: ${guess}.` : ''}`, '  ');
}

const known = ({ mean, low, high }: Known): string => `${round(mean)} h (between ${round(low)} and ${round(high)} h)`;
const money = ({ mean, low, high }: Known): string =>
  `${round(mean)} of money (between ${round(low)} and ${round(high)})`;
/** Two figures: no more is known. */
const round = (x: number): string => Number(x.toPrecision(2)).toLocaleString('en-GB');
const percent = (share: number): string => `${round(100 * share)} %`;
