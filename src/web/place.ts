/**
 * Where the person is: a sheet and, on the work sheet, a step; on the numbers and weak links, which one. Kept in the address and, for
 * after a reload, on the device.
 */
export const SHEETS = ['today', 'work', 'kart', 'track', 'record', 'fit'] as const;
export type Sheet = (typeof SHEETS)[number];
/** Reached from Today, Kart, Track, Record and Fit: a seventh name does not fit beside the six on a phone. */
const BESIDE = [
  'numbers',
  'setup',
  'laps',
  'weak',
  'lives',
  'spares',
  'device',
  'devices',
  'part',
  'drawing',
  'joints',
  'box',
  'labels',
  'search',
  'type-in',
  'start',
  'build',
  'file',
] as const;
/** Every sheet there is. */
export const PLACES: readonly Place['sheet'][] = [...SHEETS, ...BESIDE];
const ABOUT = ['weak', 'lives', 'laps', 'part', 'box', 'drawing', 'joints'];
export type Place = {
  readonly sheet: Sheet | (typeof BESIDE)[number];
  readonly step?: string;
  readonly number?: string;
  /** Which hazard of the weak links, which part of the lives, which page of the laps, which kart and part of a label, which
   * drawing. */
  readonly about?: string;
};

/** `#/work/take-off%20rear%20hub%20left`; anything else is the first sheet. */
export function placeFrom(hash: string): Place {
  const [, sheet = '', ...rest] = hash.replace(/^#/, '').split('/');
  const known = PLACES.find(s => s === sheet) ?? 'today';
  const more = plain(rest.join('/'));
  if (more === '') return { sheet: known };
  if (known === 'work') return { sheet: known, step: more };
  if (known === 'numbers') return { sheet: known, number: more };
  return ABOUT.some(s => s === known) ? { sheet: known, about: more } : { sheet: known };
}

export function hashOf({ sheet, step, number, about }: Place): string {
  const more = step ?? number ?? about;
  return `#/${sheet}${more === undefined ? '' : `/${encodeURIComponent(more)}`}`;
}

/** An address that a person has mangled is no reason to fail. */
function plain(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return '';
  }
}

/** What this device keeps: name, kart, place, half-typed answers. A browser that keeps nothing still works until closed. */
export type Keep = { get(key: string): string; set(key: string, value: string): void };

/** What is kept of one kart: another one has steps and entries of the same name. */
export const keepOf = (keep: Keep, kart: string): Keep => ({
  get: key => keep.get(`${key} of ${kart}`),
  set: (key, value) => keep.set(`${key} of ${kart}`, value),
});

export function keepIn(storage: Pick<Storage, 'getItem' | 'setItem' | 'removeItem'> | undefined): Keep {
  /** What the browser has no room for, or may not keep: it stands while the page is open. */
  const here = new Map<string, string>();
  return {
    get(key) {
      const kept = here.get(key);
      if (kept !== undefined) return kept;
      try {
        return storage?.getItem(nameOf(key)) ?? '';
      } catch {
        return '';
      }
    },
    set(key, value) {
      here.set(key, value);
      try {
        if (value === '') storage?.removeItem(nameOf(key));
        else storage?.setItem(nameOf(key), value);
        if (storage) here.delete(key); // what another tab makes of it counts here too
      } catch {
        // Storage full or forbidden.
      }
    },
  };
}
const nameOf = (key: string): string => `kartwright.${key}`;
