/** What is asked of laps over HTTP: two of them, or a change. */
import type { Context } from 'hono';
import { type CompareQuestion, type HelpedQuestion, Refusal } from '../app/index.ts';
import { refused } from './problem.ts';
import { atOf } from './question.ts';

/** `?a=Heat 1%232&b=Heat 1%235` */
export function compareAsk(c: Context): CompareQuestion {
  const [a, b] = [c.req.query('a'), c.req.query('b')];
  if (a !== undefined && b !== undefined) return { ...atOf(c), a, b };
  const lacking = a === undefined ? 'a' : 'b';
  throw new Refusal([
    refused(
      lacking,
      `Expected two laps, a and b, got no ${lacking}.`,
      'Name a session, or one lap of it as Heat 1%232.',
    ),
  ]);
}

/** `worth` and `matters` are seconds with their unit: 0.1 s. */
export function helpedAsk(c: Context): HelpedQuestion {
  const [change, worth, matters] = [c.req.query('change'), seconds(c, 'worth'), seconds(c, 'matters')];
  return {
    ...atOf(c),
    ...(change === undefined ? {} : { change }),
    ...(worth === undefined ? {} : { worth }),
    ...(matters === undefined ? {} : { matters }),
  };
}

function seconds(c: Context, key: string): number | undefined {
  const text = c.req.query(key);
  if (text === undefined) return undefined;
  const value = Number(/^(\d+(?:\.\d+)?) ?s$/.exec(text.trim())?.[1] ?? Number.NaN);
  if (value > 0) return value;
  throw new Refusal([refused(key, `Expected seconds for ${key}, got "${text}".`, `Write ${key}=0.1 s.`)]);
}
