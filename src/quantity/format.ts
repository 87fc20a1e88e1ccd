import { type Dimension, findUnit, fromSi, shownAs, type Unit } from './units.ts';

/** An SI value in a unit; throws for a unit that is not in the table. With a dimension, `°C` may mean a difference. */
export const inUnit = (si: number, unit: string, dimension?: Dimension): number =>
  fromSi(si, known('inUnit', unit, dimension));

/**
 * `formatQuantity(0.14605, 'mm')` → `146.05 mm`. With `digits`, exactly that many after the point; without, as many as
 * the unit usually carries and no trailing zeros. A value that is no number reads `not known`. `g0` reads `1.5 g`, which
 * is taken back where an acceleration is asked for.
 */
export function formatQuantity(si: number, unit: string, digits?: number, dimension?: Dimension): string {
  if (!Number.isFinite(si)) return 'not known';
  const u: Unit | undefined = unit === '' ? undefined : known('formatQuantity', unit, dimension);
  const value = u === undefined ? si : fromSi(si, u);
  const fixed = value.toFixed(digits ?? u?.decimals ?? 3);
  const short = digits === undefined && fixed.includes('.') ? fixed.replace(/\.?0+$/, '') : fixed;
  const number = Number(short) === 0 ? short.replace('-', '') : short;
  if (u === undefined) return number;
  return u.symbol === '°' || u.symbol === ':1' ? `${number}${u.symbol}` : `${number} ${shownAs(u)}`;
}

function known(from: string, unit: string, dimension: Dimension | undefined): Unit {
  const found = findUnit(unit, dimension);
  if (found === undefined)
    throw new Error(
      `${from}: unit must be one of the table${dimension === undefined ? '' : ` for ${dimension}`}, got "${unit}"`,
    );
  return found;
}
