/** Where the person is: a sheet and, on the work sheet, a step. Kept in the address and, for after a reload, on the device. */
export const SHEETS = ['today', 'work', 'kart', 'record', 'fit'] as const;
export type Sheet = (typeof SHEETS)[number];
export type Place = { readonly sheet: Sheet; readonly step?: string };

/** `#/work/take-off%20rear%20hub%20left`; anything else is the first sheet. */
export function placeFrom(hash: string): Place {
  const [, sheet = '', ...rest] = hash.replace(/^#/, '').split('/');
  const known = SHEETS.find(s => s === sheet) ?? 'today';
  const step = plain(rest.join('/'));
  return known === 'work' && step !== '' ? { sheet: known, step } : { sheet: known };
}

export const hashOf = (place: Place): string =>
  `#/${place.sheet}${place.step === undefined ? '' : `/${encodeURIComponent(place.step)}`}`;

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

export function keepIn(storage: Pick<Storage, 'getItem' | 'setItem' | 'removeItem'> | undefined): Keep {
  const here = new Map<string, string>();
  const name = (key: string): string => `kartwright.${key}`;
  return {
    get(key) {
      try {
        return storage?.getItem(name(key)) ?? here.get(key) ?? '';
      } catch {
        return here.get(key) ?? '';
      }
    },
    set(key, value) {
      here.set(key, value);
      try {
        if (value === '') storage?.removeItem(name(key));
        else storage?.setItem(name(key), value);
      } catch {
        // Storage full or forbidden: `here` has it while the page is open.
      }
    },
  };
}
