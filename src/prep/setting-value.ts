/** Settings are written as people say them, `15 mm each side`, `2 mm out`, `17/24`: the number in them, where there is one. */
import { formatQuantity, type Measure, parseQuantity } from '../quantity/index.ts';

export type Amount = {
  readonly si: number;
  readonly unit: string; // '' for a plain number
  readonly of: string; // what must agree before two are compared: the dimension and the words that follow
};

/**
 * The amount in a setting's text, undefined where it has none. Words may follow it. `in` after a length counts against
 * `out`, so that toe-out is positive; two whole numbers with a stroke are teeth, front and rear, and give rear over front.
 */
export function amountOf(text: string): Amount | undefined {
  const teeth = /^(\d{1,3})\s*[/:x×]\s*(\d{1,3})$/.exec(text.trim());
  if (teeth)
    return Number(teeth[1]) > 0 ? { si: Number(teeth[2]) / Number(teeth[1]), unit: '', of: 'teeth' } : undefined;
  const parts = text.trim().split(/\s+/);
  for (let n = parts.length; n > 0; n--) {
    const read = measured(parts.slice(0, n).join(' '));
    if (read === undefined) continue;
    const rest = parts.slice(n).join(' ').toLowerCase();
    const inward = read.dimension === 'length' && /^(toe[ -]?)?in\b/.test(rest);
    const plain = read.dimension === 'length' ? rest.replace(/^(toe[ -]?)?(in|out)\b\s*/, '') : rest;
    return { si: inward ? -read.si : read.si, unit: read.unit, of: `${read.dimension} ${plain}` };
  }
  return undefined;
}

/** A reading of toe as people say it: out above 0. `1.96 mm` is `1.96 mm out`, `-1 mm` is `1 mm in`. */
export function toeSaid(text: string): string {
  const read = parseQuantity(text);
  if (!read.ok || read.value.si === 0) return text;
  return `${text.replace(/^[+−-]\s*/, '')} ${read.value.si > 0 ? 'out' : 'in'}`;
}

function measured(text: string): Measure | undefined {
  const read = parseQuantity(text);
  if (read.ok) return read.value;
  const bare = parseQuantity(text, 'count'); // a jet, a tooth count, a peg
  return bare.ok ? bare.value : undefined;
}

/** How far and which way it was changed; no amount where the two cannot be compared. */
export type Change = { readonly way: 'more' | 'less' | 'other'; readonly by: string | null };

/** Undefined where nothing changed. */
export function changeOf(was: string | undefined, now: string | undefined): Change | undefined {
  if (was === now) return undefined;
  const [a, b] = [was, now].map(text => (text === undefined ? undefined : amountOf(text)));
  if (a === undefined || b === undefined || a.of !== b.of) return { way: 'other', by: null };
  const apart = b.si - a.si;
  if (Math.abs(apart) <= 1e-9 * Math.max(Math.abs(a.si), Math.abs(b.si))) return undefined;
  const size = `${apart > 0 ? '+' : ''}${formatQuantity(apart, b.unit)}`;
  return { way: apart > 0 ? 'more' : 'less', by: b.of === 'teeth' ? `ratio ${size}` : size };
}
