/** From what was typed to the payload of a fact. What is wrong is left for the app to say, with everything else. */
import { type App, type Problem, sentence } from '../app/index.ts';
import { type Dimension, inUnit, parseQuantity } from '../quantity/index.ts';
import type { Option, Typed, Value } from './kinds.ts';
import { typedTime } from './when.ts';
import type { World } from './world.ts';

export type Given = { readonly option: Option; readonly value: string | true };
export type Ready =
  | { readonly ok: true; readonly payload: Record<string, unknown> }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** @param subject the word after the kind; for a set-up, all the words */
export async function payloadOf(
  kind: string,
  typed: Typed,
  subject: readonly string[],
  given: readonly Given[],
  hands: { readonly world: World; readonly app: App },
): Promise<Ready> {
  const payload: Record<string, unknown> = { kind };
  const problems: Problem[] = [];
  const put = (key: string, value: Put): void => {
    if (value.ok) payload[key] = value.value;
    else problems.push(value.problem);
  };
  if (typed.subject && subject.length > 0) {
    const { key, is } = typed.subject;
    const [word = ''] = subject;
    if (key === 'changes') put(key, changesOf(subject));
    else if (kind === 'treads probed') put(key, treadsOf(subject));
    else if (is === 'list') put(key, { ok: true, value: listOf(word) });
    else if (typeof is === 'object') put(key, await valueFrom(is, word, key, hands));
    else if (kind === 'kart filed') put(key, await textOf(word, hands.world));
    else put(key, is === 'file' ? await fileOf(word, hands) : { ok: true, value: word });
  }
  for (const { option, value } of given) {
    if (option.means !== undefined) {
      const before = payload[option.key];
      if (before !== undefined && before !== option.means)
        problems.push(
          problem(option.flag, `one of the two, got "${before}" and "${option.means}"`, 'Leave one of them out.'),
        );
      payload[option.key] = option.means;
    } else if (kind === 'weather' && typeof value === 'string' && value.includes('±')) putLimited(option, value);
    else
      put(
        option.key,
        value === true ? { ok: true, value: true } : await valueFrom(option.is, value, option.flag, hands),
      );
  }
  /** `21 °C ± 0.5 °C`: what was read, and how far the instrument may be off. */
  function putLimited({ key, is, flag }: Option, text: string): void {
    const [read = '', off = ''] = text.split('±');
    if (typeof is !== 'object') {
      put(key, { ok: true, value: text });
      return;
    }
    const apart = is.quantity === 'temperature' ? 'temperature-difference' : is.quantity;
    const [size, half] = [numbered(read, is.quantity, is.in, flag), numbered(off, apart, is.in, flag)];
    put(key, size);
    if (!half.ok) problems.push(half.problem);
    else payload.within = { ...(payload.within as object | undefined), [key]: half.value };
  }
  gatherReading(payload);
  return problems.length > 0 ? { ok: false, problems } : { ok: true, payload };
}

type Put = { readonly ok: true; readonly value: unknown } | { readonly ok: false; readonly problem: Problem };

async function valueFrom(is: Value, text: string, flag: string, hands: { world: World; app: App }): Promise<Put> {
  if (typeof is === 'object') return numbered(text, is.quantity, is.in, flag);
  switch (is) {
    case 'number':
      return numberOf(text, flag);
    case 'time':
      return { ok: true, value: typedTime(text) };
    case 'file':
      return fileOf(text, hands);
    case 'impact': {
      const [corner = '', severity = ''] = text.split(',').map(part => part.trim());
      return { ok: true, value: { corner, severity } };
    }
    case 'list':
      return { ok: true, value: listOf(text) };
    default:
      return { ok: true, value: text };
  }
}

const listOf = (text: string): readonly string[] =>
  text
    .split(',')
    .map(one => one.trim())
    .filter(one => one !== '');

/** A quantity as a number in the unit the fact keeps it in; '' keeps it as it is. */
function numbered(text: string, dimension: Dimension, unit: string, flag: string): Put {
  const read = parseQuantity(text.trim(), dimension);
  if (read.ok) return { ok: true, value: unit === '' ? read.value.si : inUnit(read.value.si, unit, dimension) };
  return { ok: false, problem: problem(flag, `${read.expected}, got ${read.got}`, read.remedy, 'reading') };
}

function numberOf(text: string, flag: string): Put {
  if (/^[+-]?(\d+(\.\d*)?|\.\d+)$/.test(text.trim())) return { ok: true, value: Number(text) };
  return { ok: false, problem: problem(flag, `a number, got "${text}"`, 'Write it in digits, like 12 or 12.5.') };
}

async function fileOf(path: string, { world, app }: { world: World; app: App }): Promise<Put> {
  const bytes = await world.readBytes(path);
  if (!bytes) return { ok: false, problem: noFile(path) };
  const type = MEDIA[path.toLowerCase().split('.').at(-1) ?? ''] ?? 'application/octet-stream';
  return { ok: true, value: await app.putFile(bytes, type) };
}

async function textOf(path: string, world: World): Promise<Put> {
  const text = await world.readFile(path);
  return text === undefined ? { ok: false, problem: noFile(path) } : { ok: true, value: text };
}

const MEDIA: Readonly<Record<string, string>> = {
  jpg: 'image/jpeg',
  jpeg: 'image/jpeg',
  png: 'image/png',
  webp: 'image/webp',
  csv: 'text/csv',
  gpx: 'application/gpx+xml',
};

function changesOf(words: readonly string[]): Put {
  const pairs = words.map(word => [word.slice(0, word.indexOf('=')).trim(), word.slice(word.indexOf('=') + 1).trim()]);
  const bad = words.find(word => word.indexOf('=') < 1);
  return bad === undefined
    ? { ok: true, value: Object.fromEntries(pairs) }
    : { ok: false, problem: problem('set-up', `name=value, got "${bad}"`, 'Write it like "rear sprocket=25".') };
}

/** `rear left=62/66/60 °C`: toward the kart, middle, away from it. */
function treadsOf(words: readonly string[]): Put {
  const treads: Record<string, Record<string, number>> = {};
  for (const word of words) {
    const [, tyre = '', figures = '', unit = ''] = /^\s*([a-z ]+?)\s*=\s*([\d.,/ -]+?)\s*(°?[CF])\s*$/.exec(word) ?? [];
    const read = figures.split('/').map(figure => parseQuantity(`${figure.trim()} ${unit}`, 'temperature'));
    const [inside, middle, outside] = read.map(one =>
      one.ok ? Number(inUnit(one.value.si, '°C', 'temperature').toFixed(2)) : Number.NaN,
    );
    if (read.length !== 3 || read.some(one => !one.ok))
      return {
        ok: false,
        problem: problem(
          'treads-probed',
          `a tyre and three temperatures, got "${word}"`,
          'Write it like "rear left=62/66/60 °C": toward the kart, middle, away from it.',
        ),
      };
    treads[tyre] = { inside: inside ?? Number.NaN, middle: middle ?? Number.NaN, outside: outside ?? Number.NaN };
  }
  return { ok: true, value: treads };
}

/** The reading, its instrument and its resolution are three options and one thing. */
function gatherReading(payload: Record<string, unknown>): void {
  const { reading, instrument, resolution } = payload;
  delete payload.instrument;
  delete payload.resolution;
  if (reading === undefined) return;
  payload.reading = { text: reading, ...(instrument ? { instrument } : {}), ...(resolution ? { resolution } : {}) };
}

export const noFile = (path: string): Problem =>
  problem(path, 'a file that can be read, and there is none', 'Check the path.', 'unknown file');

const problem = (where: string, expected: string, remedy: string, code: Problem['code'] = 'wrong shape'): Problem => ({
  code,
  where,
  message: `Expected ${expected}.`,
  remedy: sentence(remedy),
});
