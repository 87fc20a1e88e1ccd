/** A plan as bars: one lane a person, time downwards, so that it reads on a phone and on paper. Units of the view box. */
import type { Plan } from '../../prep/index.ts';
import { planWords } from '../words/plan.tsx';
import { actionOf } from '../words/reads.ts';
import { toDo } from './carried.ts';
import { whenOf } from './said.ts';

export type Bar = {
  readonly key: string;
  readonly lane: number; // from 0
  readonly top: number;
  readonly height: number;
  readonly label: string; // '' where there is no room
};
export type Block = { readonly top: number; readonly height: number; readonly text: string };
export type Mark = { readonly y: number; readonly text: string };
export type Bars = {
  readonly height: number;
  readonly bars: readonly Bar[];
  /** Between two rows of one person: waits for another. */
  readonly waits: readonly Omit<Bar, 'label'>[];
  /** How the kart stands. */
  readonly postures: readonly Block[];
  /** Where a time ends or begins. */
  readonly windows: readonly Mark[];
  readonly hours: readonly Mark[];
  /** From here on there is time only for closing up. */
  readonly closing: Block | undefined;
};

/** As long as a phone is patient: from half a screen to some screens. */
const [SHORTEST, LONGEST] = [280, 1500];
const TOP = 22;
const LABEL = 11; // a row of words

export function barsOf(plan: Plan): Bars {
  const rows = toDo(plan).filter(({ start, end }) => start !== null && end !== null);
  const total = Math.max(plan.span, plan.window ?? 0, 1);
  const unit = Math.min(Math.max(total * 3, SHORTEST), LONGEST) / total;
  const y = (minute: number): number => TOP + minute * unit;
  const bars = rows.flatMap(step => {
    const [from, to] = [step.start ?? 0, step.end ?? 0];
    const height = (to - from) * unit;
    const label = height >= LABEL ? `${step.n} ${actionOf(step)}` : '';
    const lanes = step.action === 'posture' ? [] : step.people;
    return lanes.map((one): Bar => ({ key: `${step.n} ${one}`, lane: one - 1, top: y(from), height, label }));
  });
  return {
    height: y(total) + 26,
    bars,
    waits: waitsOf(bars),
    postures: posturesOf(plan, rows, y),
    windows: windowsOf(plan, y),
    hours: plan.windows.length > 0 ? [] : hoursOf(total, y),
    closing:
      plan.closeBy === null || plan.window === null
        ? undefined
        : {
            top: y(plan.closeBy),
            height: (plan.window - plan.closeBy) * unit,
            text: planWords.beginClosingUp(whenOf(plan, plan.closeBy)),
          },
  };
}

function waitsOf(bars: readonly Bar[]): Bars['waits'] {
  return [0, 1, 2].flatMap(lane => {
    const own = bars.filter(bar => bar.lane === lane).toSorted((a, b) => a.top - b.top);
    return own.slice(1).flatMap((bar, i) => {
      const before = own[i];
      const top = before === undefined ? 0 : before.top + before.height;
      return before !== undefined && bar.top - top > 2
        ? [{ key: `wait ${bar.key}`, lane, top, height: bar.top - top }]
        : [];
    });
  });
}

/** From one turn of the kart to the next; before the first it stands as it stands. */
function posturesOf(plan: Plan, rows: ReturnType<typeof toDo>, y: (minute: number) => number): readonly Block[] {
  const turns = rows.filter(({ action }) => action === 'posture');
  return turns.map((turn, i): Block => {
    const top = y(turn.start ?? 0);
    return { top, height: y(turns[i + 1]?.start ?? plan.span) - top, text: turn.posture };
  });
}

function windowsOf({ windows }: Plan, y: (minute: number) => number): readonly Mark[] {
  let begun = 0;
  const marks = windows.map((window): Mark => {
    const at = begun;
    begun += window.minutes;
    return { y: y(at), text: window.from === undefined ? `time ${window.n}` : whenOf({ windows }, at, window.n) };
  });
  return [...marks, ...(windows.length > 0 ? [{ y: y(begun), text: planWords.endOfTimeThere }] : [])];
}

/** Whole hours, or so many of them that their words do not touch. */
function hoursOf(total: number, y: (minute: number) => number): readonly Mark[] {
  const every = [30, 60, 120, 240, 480, 960].find(minutes => y(minutes) - y(0) >= 40) ?? 1920;
  return Array.from({ length: Math.floor(total / every) + 1 }, (_, n) => ({
    y: y(n * every),
    text: n === 0 ? 'start' : every % 60 === 0 ? `${(n * every) / 60} h` : `${n * every} min`,
  }));
}
