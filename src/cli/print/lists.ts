/** What is due, how fit the kart is, and the record: each as plain lines. */
import type { DueAnswer, FactLine, FitAnswer } from '../../app/index.ts';
import type { Fact } from '../../book/index.ts';
import { CAUTION } from './plan.ts';
import { count, heading, shortTime, wrap } from './wrap.ts';

export function dueText({ kart, event, due }: DueAnswer): string {
  const until = event === null ? 'no event ahead' : `next event ${event}`;
  let text = wrap(`Kart ${kart}, ${until}: ${count(due.length, 'item')} due.`);
  let grade = '';
  for (const one of due) {
    if (one.grade !== grade) text += heading(one.grade);
    grade = one.grade;
    text += wrap(`${one.item}: ${one.title}${one.ahead ? ' (will lapse during the event)' : ''}`, '  ');
    text += wrap(one.why, '      ');
  }
  return text;
}

const VERDICT = {
  fit: 'FIT: nothing in the record stands against running.',
  'not fit': 'NOT FIT: the record stands against running.',
  'not known': 'NOT KNOWN: the record does not say enough.',
} as const;

export function fitText(fit: FitAnswer): string {
  const forEvent = fit.event === null ? '' : `, for ${fit.event}`;
  const list = (title: string, reasons: FitAnswer['open'], grades: boolean): string =>
    reasons.length === 0
      ? ''
      : heading(title) +
        reasons.map(reason => wrap(`${grades ? `${reason.grade}: ` : ''}${reason.text}`, '  - ')).join('');
  return (
    wrap(`Kart ${fit.kart}${forEvent}, as of ${shortTime(fit.at)}.`) +
    wrap(VERDICT[fit.verdict]) +
    wrap(`This is what the record shows and what it does not; a person judges the kart and signs. ${CAUTION}`) +
    list('against running', fit.against, false) +
    list('not known', fit.unknown, false) +
    list('open, below safety', fit.open, true)
  );
}

export const factsText = (lines: readonly FactLine[]): string => lines.map(factText).join('');

function factText({ fact, struck }: FactLine): string {
  const mark = struck ? `STRUCK by ${struck.by} (${struck.why}): ` : '';
  const said = wrap(`${mark}${inWords(fact)}`, `${shortTime(fact.at)}  `);
  return `${said}      ${fact.by}, id ${fact.id}\n`;
}

const ENVELOPE = new Set([
  'v',
  'id',
  'kart',
  'at',
  'recorded',
  'by',
  'device',
  'seq',
  'prev',
  'hash',
  'kind',
  'salt',
  'salts',
  'gone',
]);

/** 'checked: item rear hub left/seat, result pass, reading 146 mm' */
export function inWords(fact: Fact): string {
  if (fact.kind === 'kart filed') return `kart filed: ${count(fact.text.split('\n').length, 'line')}`;
  if (fact.kind === 'redacted') return `redacted: what named ${fact.as}, of ${count(fact.facts.length, 'fact')}`;
  const rest = Object.entries(fact)
    .filter(([key, value]) => !ENVELOPE.has(key) && value !== undefined)
    .map(([key, value]) => `${key} ${plain(value)}`);
  return `${fact.kind}${rest.length === 0 ? '' : ': '}${rest.join(', ')}`;
}

function plain(value: unknown): string {
  if (value === true) return 'yes';
  if (Array.isArray(value)) return value.length > 0 && value.length <= 3 ? value.join('; ') : `${value.length}`;
  if (typeof value !== 'object' || value === null) return String(value);
  if ('text' in value) return String(value.text);
  return Object.entries(value)
    .map(([key, one]) => `${key} ${plain(one)}`)
    .join(' ');
}
