/** What is asked of a route: its query, read into the question that the app answers. Throws `Refusal` for what it cannot read. */
import type { Context } from 'hono';
import {
  type AlikeQuestion,
  type At,
  type ForEvent,
  type LifeQuestion,
  type LogSaid,
  type PlanAsk,
  type PredictQuestion,
  Refusal,
  type SheetQuestion,
  type SparesQuestion,
  type TrackQuestion,
  type WeakLinksQuestion,
} from '../app/index.ts';
import { refused } from './problem.ts';

export const atOf = (c: Context): At => {
  const moment = c.req.query('at');
  return moment === undefined ? {} : { at: moment };
};
export const askOf = (c: Context): ForEvent => {
  const event = c.req.query('event');
  return { ...atOf(c), ...(event === undefined ? {} : { event }) };
};
/** `windows` are minutes with commas between: 180,300. */
export const planAsk = (c: Context): PlanAsk => {
  const [minutes, people, windows] = [count(c, 'minutes'), count(c, 'people'), c.req.query('windows')];
  const needs = yes(c, 'needs');
  return {
    ...askOf(c),
    ...(minutes === undefined ? {} : { minutes }),
    ...(people === undefined ? {} : { people }),
    ...(needs === undefined ? {} : { needs }),
    ...(windows === undefined
      ? {}
      : { windows: windows.split(',').map(text => ({ minutes: Number(text.trim() || Number.NaN) })) }),
  };
};
export const sheetAsk = (c: Context): SheetQuestion => {
  const [against, about] = [c.req.query('against'), c.req.query('about')];
  return { ...atOf(c), ...(against === undefined ? {} : { against }), ...(about === undefined ? {} : { about }) };
};
export const predictAsk = (c: Context): PredictQuestion => {
  const asked = ['session', 'gearing', 'box'].flatMap(key => {
    const text = c.req.query(key);
    return text === undefined ? [] : [[key, text]];
  });
  return { ...atOf(c), ...Object.fromEntries(asked) };
};
export const weakAsk = (c: Context): WeakLinksQuestion => {
  const [minutes, money, season] = [amount(c, 'minutes'), amount(c, 'money'), count(c, 'season')];
  return {
    ...askOf(c),
    ...(season === undefined ? {} : { season }),
    ...(minutes === undefined ? {} : { minutes }),
    ...(money === undefined ? {} : { money }),
  };
};
export const alikeAsk = (c: Context): AlikeQuestion => {
  const [fact, of] = [c.req.query('fact'), c.req.query('of')];
  return { ...atOf(c), ...(fact === undefined ? {} : { fact }), ...(of === undefined ? {} : { of }) };
};
export const lifeAsk = (c: Context): LifeQuestion & { readonly cap?: number } => {
  const [hours, cap] = [amount(c, 'hours'), amount(c, 'cap')];
  return { ...askOf(c), ...(hours === undefined ? {} : { hours }), ...(cap === undefined ? {} : { cap }) };
};
export const sparesAsk = (c: Context): SparesQuestion => {
  const asked = Object.entries({
    hours: amount(c, 'hours'),
    money: amount(c, 'money'),
    kilograms: amount(c, 'kilograms'),
    minutes: amount(c, 'minutes'),
  }).filter(([, value]) => value !== undefined);
  return { ...askOf(c), ...(Object.fromEntries(asked) as Pick<SparesQuestion, 'hours'>) };
};
export const trackAsk = (c: Context): TrackQuestion => {
  const [laps, wet, wanted] = [count(c, 'laps'), yes(c, 'wet'), wantedOf(c)];
  return {
    ...atOf(c),
    ...(laps === undefined ? {} : { laps }),
    ...(wet === undefined ? {} : { wet }),
    ...(wanted === undefined ? {} : { wanted }),
  };
};

/** What is said of a log that is sent as it is: in the query, for the body is the file. */
export function logAsk(c: Context): LogSaid {
  const [minutes, wet, sure] = [amount(c, 'minutes'), yes(c, 'wet'), yes(c, 'sure')];
  const texts = ['event', 'session', 'track', 'conditions', 'run'].flatMap(key => {
    const text = c.req.query(key);
    return text === undefined ? [] : [[key, text]];
  });
  const [gates, columns, without] = [c.req.queries('gate'), c.req.queries('column'), c.req.queries('without')];
  return {
    ...atOf(c),
    ...{ by: c.req.query('by') ?? '', name: c.req.query('name') ?? 'log' },
    ...Object.fromEntries(texts),
    ...(minutes === undefined ? {} : { minutes }),
    ...(wet === undefined ? {} : { wet }),
    ...(sure === undefined ? {} : { sure }),
    ...(gates && { gates }),
    ...(columns && { columns }),
    ...(without && { without: without.map(Number) }),
  };
}

function wantedOf(c: Context): TrackQuestion['wanted'] {
  const [engineSpeed, speed] = [c.req.query('engineSpeed'), c.req.query('speed')];
  if (engineSpeed === undefined && speed === undefined) return undefined;
  if (engineSpeed !== undefined && speed !== undefined) return { engineSpeed, speed };
  const [there, lacking] = speed === undefined ? ['engineSpeed', 'speed'] : ['speed', 'engineSpeed'];
  throw new Refusal([
    refused(lacking, `Expected ${lacking} with ${there}, got none.`, 'Give both, read at one moment, or neither.'),
  ]);
}

function yes(c: Context, key: string): boolean | undefined {
  const text = c.req.query(key);
  if (text === undefined) return undefined;
  if (text === 'true' || text === 'false') return text === 'true';
  throw new Refusal([
    refused(key, `Expected true or false for ${key}, got "${text}".`, `Leave ${key} out, or say it.`),
  ]);
}

export function count(c: Context, key: string): number | undefined {
  const text = c.req.query(key);
  if (text === undefined) return undefined;
  if (/^\d{1,9}$/.test(text)) return Number(text);
  throw new Refusal([
    refused(key, `Expected a whole number for ${key}, got "${text}".`, `Leave ${key} out, or give a number.`),
  ]);
}

function amount(c: Context, key: string): number | undefined {
  const text = c.req.query(key);
  if (text === undefined) return undefined;
  if (/^\d{1,9}(\.\d{1,9})?$/.test(text)) return Number(text);
  throw new Refusal([
    refused(key, `Expected ${key} of 0 or more, got "${text}".`, `Leave ${key} out, or give a number such as 12.5.`),
  ]);
}
