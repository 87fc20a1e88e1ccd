/** The plan on paper or in a terminal: every step with its number, target, caution and reason. */

import type { Replanned } from '../../app/index.ts';
import type { Plan, Step } from '../../prep/index.ts';
import { own } from '../units.ts';
import { count, duration, heading, wrap } from './wrap.ts';

export const CAUTION =
  "The maker's manual, the class rules and local law win over any figure here; in doubt ask a qualified person.";

export function planText(plan: Plan): string {
  return head(plan) + body(plan, stepText) + tail(plan);
}

/** One line a step, with the caution where the step is read. */
export function planShort(plan: Plan): string {
  return head(plan) + body(plan, stepLine) + tail(plan);
}

function head(plan: Plan): string {
  const todo = plan.steps.filter(step => step.state !== 'done');
  const event = plan.event === null ? 'no event ahead' : `next event ${plan.event}`;
  return (
    wrap(
      `Kart ${plan.kart}, ${event}: ${count(todo.length, 'step')}, ${duration(plan.minutes)} of work${spanOf(plan)}. ${shortestOf(plan)}`,
    ) +
    windowsOf(plan) +
    shortOf(plan) +
    helpOf(todo) +
    wrap(CAUTION)
  );
}

const spanOf = ({ people, span }: Plan): string =>
  people === 1 ? '' : `, done in ${duration(span)} by ${people} people`;

/** "Shortest" only where plan and bound are equal. */
function shortestOf({ span, bound, boundBy }: Plan): string {
  const most = span - bound;
  return most <= 0
    ? 'No plan for this work is shorter.'
    : `At most ${duration(most)} longer than the shortest there can be (${duration(bound)}, by ${boundBy}).`;
}

function windowsOf({ window, windows, closeBy }: Plan): string {
  if (window === null) return '';
  const each = windows.map(
    ({ minutes, used, from }) => `${duration(used)} of ${duration(minutes)}${from ? ` from ${from}` : ''}`,
  );
  const closing =
    closeBy === null ? '' : ` What lies open after ${duration(closeBy)} of it can still be closed up in time.`;
  return wrap(`Time there is: ${duration(window)}; planned: ${each.join(', then ')}.${closing}`);
}

function shortOf({ safetyShortBy, safetyFitsWith }: Plan): string {
  if (safetyShortBy === null) return '';
  const enough = safetyFitsWith === null ? '' : ` With ${safetyFitsWith} people it fits.`;
  return wrap(
    `NOT FIT TO RUN AFTER THIS PLAN: not all safety work fits. ${duration(safetyShortBy)} more are needed for it.${enough}`,
  );
}

function helpOf(todo: readonly Step[]): string {
  const more = todo.filter(({ helpers }) => helpers > 0);
  if (more.length === 0) return '';
  const minutes = more.reduce((sum, step) => sum + step.minutes, 0);
  return wrap(`Ask somebody to help: ${count(more.length, 'step')} take more people, ${duration(minutes)} in all.`);
}

/** What a plan does otherwise than the one before. */
export function differenceText({ since, added, done, dropped, moved, minutes }: Replanned): string {
  const list = (title: string, steps: readonly Step[]): string =>
    steps.length === 0
      ? ''
      : heading(title) + steps.map(step => wrap(`${name(step)}. ${step.why}`, label(step))).join('');
  const more =
    minutes === 0 ? 'as long as before' : minutes > 0 ? `${duration(minutes)} more` : `${duration(-minutes)} less`;
  const nothing = added.length + done.length + dropped.length + moved.length === 0 ? ' Nothing has changed.' : '';
  return (
    wrap(`Against the plan of ${since}: ${more}, what was done meanwhile left out.${nothing}`) +
    list('new', added) +
    list('no longer due', dropped) +
    list('done meanwhile', done) +
    list('at another place in the order', moved)
  );
}

function body(plan: Plan, show: (step: Step) => string): string {
  const todo = plan.steps.filter(step => step.state !== 'done');
  const done = plan.steps.length - todo.length;
  let system = '';
  let text = done === 0 ? '' : `\nDone already: ${count(done, 'step')}.\n`;
  for (const step of todo) {
    if (step.system !== system) text += heading(step.system);
    system = step.system;
    text += show(step);
  }
  return text;
}

const label = (step: Step): string => `${String(step.n).padStart(4)}  `;

/** Actions whose title says itself what is done: 'Take off: rear wheel left'. */
const TELLING = new Set(['take-off', 'refit', 'posture', 'second-look']);

/** 'clean: rear hub left: Hub seat clean, dry' */
function name({ action, part, title }: Step): string {
  if (TELLING.has(action)) return title;
  const what = title.replace(/^(Mend|Replace): /, ''); // the action says it
  const where = part === null || what.includes(part) ? '' : `${part}: `;
  return `${action.replace('-', ' ')}: ${where}${what}`;
}

const marks = (step: Step): string =>
  [duration(step.minutes), ...(step.secondLook && step.action !== 'second-look' ? ['second look owed'] : [])].join(
    ', ',
  );

function stepText(step: Step): string {
  const indent = '      ';
  const line = (label: string, text: string | null): string => (text ? wrap(text, `${indent}${label.padEnd(9)}`) : '');
  return (
    wrap(`${name(step)}  (${marks(step)})`, label(step)) +
    line('CAUTION', step.caution) +
    line('target', targetOf(step)) +
    line('how', step.how) +
    line('accept', step.accept) +
    line('with', [...step.tools, ...step.consumables].join(', ')) +
    line('why', step.why) +
    line('now', step.whyNow.map(nowText).join('; ')) +
    line('who', whoOf(step)) +
    line('timed', timedOf(step)) +
    line('after', step.after.join(', '))
  );
}

const nowText = ({ say, steps, minutes }: Step['whyNow'][number]): string =>
  `${say}${steps.length > 0 ? ` (${steps.join(', ')})` : ''}${costOf(minutes)}`;
const costOf = (minutes: number | null): string =>
  minutes === null ? '' : minutes === 0 ? ', costs nothing more' : `, ${duration(minutes)} more another time`;

/** Only where it says something: several people, or more than there are. */
function whoOf({ people, helpers, start, end }: Step): string | null {
  if (start === null || end === null) return null;
  const help = helpers > 0 ? `and ${helpers} more to help` : '';
  const who =
    people.some(one => one > 1) || people.length > 1 ? `person ${people.join(' and ')}, from ${duration(start)}` : '';
  return [who, help].filter(Boolean).join(', ') || null;
}

const timedOf = ({ timing, grade }: Step): string | null =>
  timing === null
    ? null
    : `${count(timing.timings, 'time')} on this kart: usually ${duration(timing.typical)}, 8 times of 10 within ${duration(timing.slow)}${grade === 'safety' ? ', which is planned' : ''}`;

function stepLine(step: Step): string {
  const target = targetOf(step);
  return (
    wrap(`${name(step)}${target ? `, ${target}` : ''}  (${marks(step)})`, label(step)) +
    (step.caution ? wrap(step.caution, '      CAUTION  ') : '')
  );
}

function targetOf({ target, tolerance }: Step): string | null {
  if (!target) return tolerance ? own(tolerance.text) : null;
  return own(tolerance && tolerance.text !== target.text ? `${target.text} (${tolerance.text})` : target.text);
}

function tail(plan: Plan): string {
  let text = '';
  if (plan.leftOut.length > 0) {
    text += heading('left out, for want of time');
    if (plan.needsStep === null) text += wrap('With how much time each would enter: ask with --needs.', '  ');
    else if (plan.needsStep > 1)
      text += wrap(`The times with which it enters are found to ${duration(plan.needsStep)}.`, '  ');
    for (const out of plan.leftOut)
      text += wrap(
        `${out.title} (${out.grade}, ${duration(out.minutes)}): ${out.consequence}${out.needs === null ? '' : ` Enters with ${duration(out.needs)} in all.`}`,
        '  ',
      );
  }
  if (plan.whileOpen.length > 0) {
    text += heading('while it is open');
    for (const open of plan.whileOpen)
      text += wrap(
        `${open.title} (${open.grade}, ${duration(open.minutes)}, saves ${duration(open.saves)} later): ${open.why}`,
        '  ',
      );
  }
  return text;
}
