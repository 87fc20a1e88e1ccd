/** The plan on paper or in a terminal: every step with its number, target, caution and reason. */
import type { Plan, Step } from '../../prep/index.ts';
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
  const most = Math.max(0, plan.minutes - plan.bound);
  const best =
    most === 0
      ? 'No plan for this work is shorter.'
      : `At most ${duration(most)} longer than the shortest there can be.`;
  return (
    wrap(`Kart ${plan.kart}, ${event}: ${count(todo.length, 'step')}, ${duration(plan.minutes)}. ${best}`) +
    (plan.window === null ? '' : wrap(`Time there is: ${duration(plan.window)}.`)) +
    (plan.safetyShortBy === null
      ? ''
      : wrap(`THE SAFETY WORK ALONE DOES NOT FIT: ${duration(plan.safetyShortBy)} more are needed.`)) +
    wrap(CAUTION)
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
  const where = part === null || title.includes(part) ? '' : `${part}: `;
  return `${action.replace('-', ' ')}: ${where}${title}`;
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
    line('after', step.after.join(', '))
  );
}

function stepLine(step: Step): string {
  const target = targetOf(step);
  return (
    wrap(`${name(step)}${target ? `, ${target}` : ''}  (${marks(step)})`, label(step)) +
    (step.caution ? wrap(step.caution, '      CAUTION  ') : '')
  );
}

function targetOf({ target, tolerance }: Step): string | null {
  if (!target) return tolerance?.text ?? null;
  return tolerance && tolerance.text !== target.text ? `${target.text} (${tolerance.text})` : target.text;
}

function tail(plan: Plan): string {
  let text = '';
  if (plan.leftOut.length > 0) {
    text += heading('left out, for want of time');
    for (const out of plan.leftOut)
      text += wrap(`${out.title} (${out.grade}, ${duration(out.minutes)}): ${out.consequence}`, '  ');
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
